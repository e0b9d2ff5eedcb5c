import { evOfSettings, type Settings } from './ev.ts';

/**
 * EV of the scene that an exposure is right for: what its settings ask for plus what the glass and the
 * filters in the way take. `lossStops` ≥ 0, 0 for a hand-held meter. The same whether it is asked of a
 * shot or gathered from a reading.
 * Source: a loss of one stop needs twice the light.
 */
export function evAskedFor(settings: Settings, lossStops: number): number {
  return evOfSettings(settings) + lossStops;
}

/**
 * f-number at which a reading through the bare lens worked: as marked at infinity focus, N·(1 + m/p) where
 * the reading says its magnification m. p pupil ratio.
 * Source: N_eff of a lens alone, as in optics/chain.ts.
 */
export function bareLensFNumber(fNumber: number, magnification = 0, pupilRatio = 1): number {
  return fNumber * (1 + magnification / pupilRatio);
}

/**
 * How far an exposure is off, stops; positive is too much light: what the scene gives less what the
 * shot's settings and losses ask for. Both EV at ISO 100.
 */
export function exposureErrorStops(sceneEv: number, askedEv: number): number {
  return sceneEv - askedEv;
}

/** ISO that closes what an exposure is off by at ISO 100 (stops; positive is too much light): 100·2^−e. */
export function isoClosing(errorAt100: number): number {
  return 100 * 2 ** -errorAt100;
}
