import type { ClosestFocus } from './focal-length.ts';

/**
 * The parts of a rig as the chain sees them, in order from the sensor toward the subject:
 * a body, then tubes and converters in any order, then one lens, then close-up lenses on its rim.
 * What is not known is left out; only the figures that need it go without.
 */
export type ChainPart = BodyPart | TubePart | ConverterPart | LensPart | CloseUpPart;

export interface BodyPart {
  readonly kind: 'body';
  /** Sensor plane to mount face, mm. Only the place of the front rim depends on it. */
  readonly flangeMm?: number | undefined;
}

export interface TubePart {
  readonly kind: 'tube';
  readonly lengthMm: number;
}

export interface ConverterPart {
  readonly kind: 'converter';
  /** Nominal factor M, over 1. */
  readonly factor: number;
  /** Mount face to mount face, mm. */
  readonly lengthMm?: number | undefined;
}

export interface LensPart {
  readonly kind: 'lens';
  /** As printed, mm. */
  readonly focalMm: number;
  readonly closest?: ClosestFocus | undefined;
  /**
   * From the rear principal plane forward to the front one with the ring at infinity, mm; negative
   * where they are crossed; left out: 0.
   */
  readonly gapMm?: number | undefined;
  /** By how much that is more at the closest setting, mm; left out: 0, as of a lens that moves as a whole. */
  readonly gapGrowsMm?: number | undefined;
  /** How far its course bends between the ends of its ring, see `FocusingLens`; left out: 0, straight. */
  readonly bend?: number | undefined;
  /** Mount face to front rim with the ring at infinity, mm. */
  readonly lengthMm?: number | undefined;
  /** How much longer it is at its closest, mm. */
  readonly growsMm?: number | undefined;
  /** Exit over entrance pupil diameter; left out: 1. */
  readonly pupilRatio?: number | undefined;
  /**
   * 0, or left out: the f-number holds as the focal length shortens up close; 1: the iris keeps its
   * size; between: something of both.
   */
  readonly irisKeepsSize?: number | undefined;
}

export interface CloseUpPart {
  readonly kind: 'close-up';
  /** Power in dioptres (1/m), over 0. */
  readonly powerDpt: number;
  /** By how much it moves the front rim forward, mm; left out: by nothing. */
  readonly lengthMm?: number | undefined;
}

/** An input that a figure waits for: `input` of `parts[part]`. */
export interface MissingInput {
  readonly part: number;
  readonly input: 'flangeMm' | 'lengthMm';
}

/** Why parts make no chain. `part` is an index into them where one part is at fault. */
export type ChainFault =
  | { readonly kind: 'no-body' }
  | { readonly kind: 'no-lens' }
  /** A part stands where it can't: a second body or lens, something behind the body, a tube ahead of the lens. */
  | { readonly kind: 'out-of-place'; readonly part: number }
  /** A number outside its range: `input` names it. */
  | { readonly kind: 'impossible'; readonly part: number; readonly input: string }
  /** Tubes stand behind a converter, so what it does depends on a length that is not known. */
  | ({ readonly kind: 'needs' } & MissingInput);

const closestGapMm = ({ gapMm = 0, gapGrowsMm = 0 }: LensPart): number => gapMm + gapGrowsMm;

/** The first number of a part that is not finite or outside its range; undefined when all are sound. */
export function impossibleInput(part: ChainPart): string | undefined {
  const over = (value: number | undefined, least: number, orEqual: boolean): boolean =>
    value === undefined ||
    (Number.isFinite(value) && (value > least || (orEqual && value === least)));
  switch (part.kind) {
    case 'body':
      return over(part.flangeMm, 0, true) ? undefined : 'flangeMm';
    case 'tube':
      return over(part.lengthMm, 0, true) ? undefined : 'lengthMm';
    case 'converter':
      if (!over(part.factor, 1, false)) return 'factor';
      return over(part.lengthMm, 0, false) ? undefined : 'lengthMm';
    case 'close-up':
      if (!over(part.powerDpt, 0, false)) return 'powerDpt';
      return over(part.lengthMm, 0, true) ? undefined : 'lengthMm';
    case 'lens':
      if (!over(part.focalMm, 0, false)) return 'focalMm';
      if (!over(part.lengthMm, 0, false)) return 'lengthMm';
      if (!over(part.growsMm, 0, true)) return 'growsMm';
      if (!over(part.pupilRatio, 0, false)) return 'pupilRatio';
      if (!Number.isFinite(part.gapMm ?? 0)) return 'gapMm';
      if (!Number.isFinite(part.gapGrowsMm ?? 0)) return 'gapGrowsMm';
      if (!Number.isFinite(part.bend ?? 0)) return 'bend';
      if (!over(part.closest?.fromSensorMm, Math.max(0, closestGapMm(part)), false))
        return 'closest.fromSensorMm';
      return over(part.closest?.magnification, 0, false) ? undefined : 'closest.magnification';
  }
}
