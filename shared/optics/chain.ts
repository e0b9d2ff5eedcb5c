import type { Chain } from './arrangement.ts';
import { presentFocalMm, presentGapMm } from './focal-length.ts';
import type { MissingInput } from './parts.ts';
import { followedBy, thinLens, travel } from './ray-matrix.ts';

/** What a chain does at one setting of its ring. Lengths in mm; undefined: see `missing`. */
export interface ChainTrace {
  /** m0, the lens's own magnification by its ring: 0 at infinity. */
  readonly ringMagnification: number;
  /** f at this setting of the ring. */
  readonly focalMm: number;
  /** m1, the lens's magnification of what it sees, with everything behind it. */
  readonly lensMagnification: number;
  /** M_c, magnification by the converters as they stand here. */
  readonly converterMagnification: number;
  /** m, subject to sensor; 0: focused at infinity; undefined too where nothing real is in focus. */
  readonly magnification: number | undefined;
  /** Where the subject must be: a real place, infinity, or nowhere in front of the rig. */
  readonly focus: 'real' | 'infinity' | 'nowhere' | undefined;
  /** N_eff / N. */
  readonly fNumberRatio: number;
  /** 2·log2(N_eff / N), without filters and glass. */
  readonly lightLossStops: number;
  /** W, subject to the frontmost rim, filters and close-up lenses counted; negative where the subject would be inside the rig. */
  readonly workingDistanceMm: number | undefined;
  readonly subjectToSensorMm: number | undefined;
  /**
   * u, subject to entrance pupil (as seen by the subject, through the close-up lenses). Negative where a
   * close-up lens throws the pupil's image out beyond the subject.
   */
  readonly pupilDistanceMm: number | undefined;
  /** e, the entrance pupil's depth behind the frontmost rim. */
  readonly pupilDepthMm: number | undefined;
  /** D·N: the entrance pupil's diameter D, as seen by the subject, is this over the marked f-number N. */
  readonly pupilFocalMm: number | undefined;
  /** Sensor to the frontmost rim. */
  readonly rimFromSensorMm: number | undefined;
  /** How much of that stands before the lens's own rim; undefined: what stands there is not known. */
  readonly frontMm: number | undefined;
  /** True where the lens's pupil ratio was taken as 1 for want of a known one. */
  readonly pupilRatioAssumed: boolean;
  /** For each figure that is undefined for want of an input: which. */
  readonly missing: Readonly<Partial<Record<UnknownFigure, readonly MissingInput[]>>>;
}

export type UnknownFigure =
  | 'magnification'
  | 'workingDistanceMm'
  | 'subjectToSensorMm'
  | 'pupilDistanceMm'
  | 'pupilDepthMm'
  | 'pupilFocalMm'
  | 'rimFromSensorMm';

/** Below this a magnification is rounding error of a chain focused at infinity. */
const FOCUSED_AT_INFINITY = 1e-12;

/**
 * Traces a chain at a setting of its ring (m0 ≥ 0; a lens without `closest` only has 0).
 *
 * The axial ray that leaves the sensor with slope 1 is followed toward the subject by ray-transfer
 * matrices; its height b and slope d give every figure:
 * m1 = −d/M_c after the lens, m = −d after the close-up lenses, subject at −b/d ahead of the last element,
 * N_eff = N·b(entrance pupil)/f, since a ray to the pupil's edge D/2 = f/(2N) leaves at slope D/(2b).
 * For a lens without close-up these come to N_eff = N·(1 + m1/p)·M_c and u = f·(1/m1 + 1/p).
 * A close-up lens stands at the lens's rim and images the entrance pupil; it takes no light. By its own
 * length and that of filters the frontmost rim comes nearer to the subject, and nothing else changes.
 *
 * Pupil ratio p: exit over entrance pupil diameter. It puts the entrance pupil f·(1 − 1/p) ahead of the
 * front principal plane and the exit pupil f·(1 − p) behind the rear one. Between the two planes, a gap
 * apart, rays keep their height.
 *
 * Valid paraxially; the iris follows the present f.
 * Source: ray-transfer matrices as in ray-matrix.ts; Lagrange's invariant for the cone at the sensor.
 */
export function traceChain(chain: Chain, ringMagnification: number): ChainTrace {
  const inside = throughLens(chain, ringMagnification);
  const outside = toSubject(chain, inside);
  const frontMm = chain.frontMm ?? Number.NaN;
  const lensRimFromSensorMm = lensRim(chain, inside);
  const figures = {
    magnification: outside.magnification,
    workingDistanceMm: outside.fromLensRimMm - frontMm,
    subjectToSensorMm: subjectFromSensor(chain, inside, outside),
    pupilDistanceMm: outside.pupilDistanceMm,
    pupilDepthMm: outside.pupilBehindLensRimMm + frontMm,
    pupilFocalMm: outside.pupilFocalMm,
    rimFromSensorMm: lensRimFromSensorMm + frontMm,
  };
  const nowhere = outside.magnification < 0;
  const subject = (figure: number) => (nowhere ? undefined : known(figure));
  return {
    ringMagnification,
    focalMm: inside.focalMm,
    lensMagnification: inside.lensMagnification,
    converterMagnification: chain.converterMagnification,
    magnification: subject(figures.magnification),
    focus: focusOf(outside.magnification),
    fNumberRatio: inside.fNumberRatio,
    lightLossStops: 2 * Math.log2(inside.fNumberRatio),
    workingDistanceMm: subject(figures.workingDistanceMm),
    subjectToSensorMm: subject(figures.subjectToSensorMm),
    pupilDistanceMm: subject(figures.pupilDistanceMm),
    pupilDepthMm: known(figures.pupilDepthMm),
    pupilFocalMm: known(figures.pupilFocalMm),
    rimFromSensorMm: known(figures.rimFromSensorMm),
    frontMm: chain.frontMm,
    pupilRatioAssumed: chain.lens.pupilRatio === undefined,
    missing: missingFor(chain, figures),
  };
}

/** What a ruler and a meter can tell of a chain. Lengths in mm; NaN where `traceChain` has none. */
interface Measurable {
  readonly magnification: number;
  readonly subjectToSensorMm: number;
  readonly workingDistanceMm: number;
  readonly lightLossStops: number;
}

/** These figures of `traceChain` alone, for those who trace a chain thousands of times. */
export function measurableAt(chain: Chain, ringMagnification: number): Measurable {
  const inside = throughLens(chain, ringMagnification);
  const outside = toSubject(chain, inside);
  const isNowhere = outside.magnification < 0;
  const nothing = Number.NaN;
  return {
    magnification: isNowhere ? nothing : outside.magnification,
    subjectToSensorMm: isNowhere ? nothing : subjectFromSensor(chain, inside, outside),
    workingDistanceMm: isNowhere ? nothing : outside.fromLensRimMm - (chain.frontMm ?? Number.NaN),
    lightLossStops: 2 * Math.log2(inside.fNumberRatio),
  };
}

/** The total magnification m alone, for those who look for a setting; NaN where `magnification` is undefined. */
export function magnificationAt(chain: Chain, ringMagnification: number): number {
  const { magnification } = toSubject(chain, throughLens(chain, ringMagnification));
  return magnification < 0 ? Number.NaN : magnification;
}

type Inside = ReturnType<typeof throughLens>;
type Outside = ReturnType<typeof toSubject>;

/** Sensor to the lens's own rim, mm. */
const lensRim = ({ datumMm = Number.NaN }: Chain, inside: Inside): number =>
  datumMm + inside.frontPrincipalMm + inside.rimAheadMm;

const subjectFromSensor = (chain: Chain, inside: Inside, outside: Outside): number =>
  chain.closeUpPerMm > 0
    ? lensRim(chain, inside) + outside.fromLensRimMm
    : (chain.datumMm ?? Number.NaN) + inside.frontPrincipalMm + outside.fromPrincipalMm;

/** The axial ray from the sensor through the lens. Here and below what is not known is NaN, which sums carry. */
function throughLens(chain: Chain, ringMagnification: number) {
  const { lens, behind, converterMagnification } = chain;
  const focalMm = presentFocalMm(lens, ringMagnification);
  const pupilRatio = lens.pupilRatio ?? 1;
  const principalAheadMm = focalMm * (1 + ringMagnification);
  const frontPrincipalMm = principalAheadMm + presentGapMm(lens, ringMagnification);
  // N·f of now over that of infinity: what an iris that keeps its size works at.
  const opened = (focalMm / lens.focalMm) ** (lens.irisKeepsSize ?? 0);
  const ray = followedBy(followedBy(behind, travel(principalAheadMm)), thinLens(1 / focalMm));
  const lensMagnification = snapped(-ray.d / converterMagnification);
  const slope = -lensMagnification * converterMagnification;
  const pupilAheadMm = focalMm * (1 - 1 / pupilRatio);
  const turned = lens.closest === undefined ? 0 : ringMagnification / lens.closest.magnification;
  const barrelMm = (lens.lengthMm ?? Number.NaN) + (lens.growsMm ?? 0) * turned;
  return {
    focalMm,
    lensMagnification,
    fNumberRatio: ((ray.b + slope * pupilAheadMm) / focalMm) * opened,
    opened,
    heightMm: ray.b,
    slope,
    /** Ahead of the datum. */
    frontPrincipalMm,
    /** Ahead of the front principal plane, both. */
    pupilAheadMm,
    rimAheadMm: (chain.flangeMm ?? Number.NaN) + barrelMm - frontPrincipalMm,
  };
}

/** On from the lens, through any close-up lenses at the rim, to where the ray meets the axis: the subject. */
function toSubject({ closeUpPerMm }: Chain, inside: Inside) {
  const { heightMm, slope, pupilAheadMm, rimAheadMm } = inside;
  const pupilBehindRimMm = rimAheadMm - pupilAheadMm;
  if (closeUpPerMm === 0) {
    const magnification = -slope;
    const fromPrincipalMm = ahead(heightMm, magnification);
    return {
      magnification,
      fromPrincipalMm,
      fromLensRimMm: fromPrincipalMm - rimAheadMm,
      pupilDistanceMm: fromPrincipalMm - pupilAheadMm,
      pupilBehindLensRimMm: pupilBehindRimMm,
      pupilFocalMm: inside.focalMm / inside.opened,
    };
  }
  // Collimated between lens and close-up, how far apart they are makes no difference to the image.
  const heightAtRimMm = slope === 0 ? heightMm : heightMm + slope * rimAheadMm;
  const magnification = snapped(closeUpPerMm * heightAtRimMm - slope);
  const fromLensRimMm = ahead(heightAtRimMm, magnification);
  const pupilScale = 1 - pupilBehindRimMm * closeUpPerMm;
  return {
    magnification,
    fromPrincipalMm: rimAheadMm + fromLensRimMm,
    fromLensRimMm,
    pupilDistanceMm: fromLensRimMm + pupilBehindRimMm / pupilScale,
    pupilBehindLensRimMm: pupilBehindRimMm / pupilScale,
    pupilFocalMm: inside.focalMm / inside.opened / Math.abs(pupilScale),
  };
}

/** Distance at which a ray of this height and slope −m meets the axis. */
function ahead(heightMm: number, magnification: number): number {
  return magnification === 0 ? Number.POSITIVE_INFINITY : heightMm / magnification;
}

function missingFor(chain: Chain, figures: Readonly<Record<UnknownFigure, number>>) {
  const toRim = chain.missing.filter(({ part }) => part === 0 || part === chain.lensIndex);
  const toSensor = chain.missing.filter((input) => !toRim.includes(input));
  const missing: Partial<Record<UnknownFigure, readonly MissingInput[]>> = {};
  for (const [figure, value] of Object.entries(figures) as [UnknownFigure, number][]) {
    if (!Number.isNaN(value)) continue;
    if (figure === 'rimFromSensorMm') missing[figure] = chain.missing;
    else if (figure !== 'subjectToSensorMm') missing[figure] = toRim;
    else missing[figure] = chain.closeUpPerMm > 0 ? chain.missing : toSensor;
  }
  return missing;
}

function focusOf(magnification: number): ChainTrace['focus'] {
  if (Number.isNaN(magnification)) return undefined;
  if (magnification === 0) return 'infinity';
  return magnification > 0 ? 'real' : 'nowhere';
}

function snapped(magnification: number): number {
  return Math.abs(magnification) < FOCUSED_AT_INFINITY ? 0 : magnification;
}

function known(figure: number): number | undefined {
  return Number.isNaN(figure) ? undefined : figure;
}
