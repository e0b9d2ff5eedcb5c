/**
 * Exposure values at ISO 100 (EV): one more is twice the light.
 *
 * Source: APEX (ANSI PH2.12); constants of ISO 2720, from memory: K for luminance, C for illuminance
 * with a flat receiver.
 */

/** K, reflected-light constant: N²/t = L·S/K, L in cd/m². */
const REFLECTED_CONSTANT = 12.5;

/** C, incident-light constant of a flat receiver: N²/t = E·S/C, E in lx. */
const INCIDENT_CONSTANT = 250;

/** The settings of an exposure. */
export interface Settings {
  /** f-number as it works at the sensor: the effective one. */
  readonly fNumber: number;
  /** t, s. */
  readonly timeS: number;
  /** S, arithmetic ISO speed. */
  readonly iso: number;
}

/**
 * What settings ask for: EV = log2(N²/t) − log2(S/100). All inputs > 0.
 * Source: APEX, Av + Tv = Bv + Sv, brought to ISO 100.
 */
export function evOfSettings({ fNumber, timeS, iso }: Settings): number {
  return Math.log2((fNumber * fNumber) / timeS) - Math.log2(iso / 100);
}

/** EV of a surface of luminance L (cd/m², > 0): log2(L·100/K). */
export function evOfLuminance(cdPerM2: number, k = REFLECTED_CONSTANT): number {
  return Math.log2((cdPerM2 * 100) / k);
}

/** Luminance (cd/m²) that an EV stands for: 2^EV·K/100. */
export function luminanceOfEv(ev: number): number {
  return (2 ** ev * REFLECTED_CONSTANT) / 100;
}

/** EV of an illuminance E (lx, > 0) on a diffuse subject: log2(E·100/C). */
export function evOfIlluminance(lux: number, c = INCIDENT_CONSTANT): number {
  return Math.log2((lux * 100) / c);
}

/** Illuminance (lx) that an EV stands for: 2^EV·C/100. */
export function illuminanceOfEv(ev: number, c = INCIDENT_CONSTANT): number {
  return (2 ** ev * c) / 100;
}

/** EV of several lights on the same diffuse subject: their light adds. None at all: −Infinity. */
export function evTogether(evs: readonly number[]): number {
  return Math.log2(evs.reduce((light, ev) => light + 2 ** ev, 0));
}
