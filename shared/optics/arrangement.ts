import {
  type ChainFault,
  type ChainPart,
  type ConverterPart,
  impossibleInput,
  type LensPart,
  type MissingInput,
} from './parts.ts';
import { followedBy, nothing, type RayMatrix, thinLens, travel } from './ray-matrix.ts';

/** A rig whose parts stand in a possible order, ready to be traced at any setting of the ring. */
export interface Chain {
  readonly parts: readonly ChainPart[];
  readonly lens: LensPart;
  readonly lensIndex: number;
  /**
   * Sensor to the lens's datum, the plane one flange distance behind its mount face: where the sensor
   * would be if the lens stood alone on the body. No figure but the rim's place needs the flange itself.
   */
  readonly behind: RayMatrix;
  /** Sensor to datum along the axis, mm; undefined when a converter's length is not known. */
  readonly datumMm: number | undefined;
  /** M_c: magnification by all the converters as they stand here; the product of those in `converters`. */
  readonly converterMagnification: number;
  readonly converters: readonly { readonly part: number; readonly magnification: number }[];
  /** Power of all close-up lenses together, 1/mm. */
  readonly closeUpPerMm: number;
  /**
   * By how much close-up lenses and filters move the front rim ahead of the lens's own, mm; undefined
   * where a filter is not known. No figure but those of the rim's place needs it.
   */
  readonly frontMm: number | undefined;
  readonly flangeMm: number | undefined;
  readonly missing: readonly MissingInput[];
}

type Arranged =
  | { readonly ok: true; readonly chain: Chain }
  | { readonly ok: false; readonly fault: ChainFault };

/** The chain with filters before it that are so long together, mm ≥ 0; undefined: not known. */
export const behindFilters = (chain: Chain, lengthMm: number | undefined): Chain =>
  lengthMm === 0
    ? chain
    : {
        ...chain,
        frontMm:
          lengthMm === undefined || chain.frontMm === undefined
            ? undefined
            : chain.frontMm + lengthMm,
      };

/**
 * With no tube behind a converter its magnification is the nominal one whatever its length, so any
 * positive length gives the same image; only the distance from the sensor then stays unknown.
 */
const STAND_IN_LENGTH_MM = 50;

/**
 * A converter as a thin lens: where it stands ahead of the datum of what it is mounted on (mm) and its
 * power (1/mm, negative).
 *
 * Factor M > 1, length L (mm) on flange F: it takes the image that would fall F behind its front face
 * to F + L behind it, M times as large. That fixes the lens x = F − L/(M−1) behind the front face, with
 * virtual object distance L/(M−1), image distance M·L/(M−1) and power −(M−1)²/(M·L). Measured from the
 * datum (F behind the rear mount) the flange drops out. Source: the thin-lens equation for those two
 * distances. A real converter's principal planes are apart; that matters with tubes behind it.
 */
export function converterLens(factor: number, lengthMm: number): { atMm: number; perMm: number } {
  return {
    atMm: (factor * lengthMm) / (factor - 1),
    perMm: -((factor - 1) ** 2) / (factor * lengthMm),
  };
}

/** Puts parts, listed from the sensor toward the subject, into a chain; or says why they make none. */
export function arrangeChain(parts: readonly ChainPart[]): Arranged {
  const fault = firstFault(parts);
  if (fault !== undefined) return { ok: false, fault };
  const lensIndex = parts.findIndex((part) => part.kind === 'lens');
  const lens = parts[lensIndex] as LensPart;

  const missing: MissingInput[] = [];
  const converters: { part: number; magnification: number }[] = [];
  let behind = nothing;
  let datumMm: number | undefined = 0;
  let tubed = false;
  let flangeMm: number | undefined;
  let closeUpPerMm = 0;
  let frontMm = 0;
  for (const [index, part] of parts.entries()) {
    if (part.kind === 'body') flangeMm = part.flangeMm;
    if (part.kind === 'close-up') {
      closeUpPerMm += part.powerDpt / 1000;
      frontMm += part.lengthMm ?? 0;
    }
    if (part.kind === 'tube') {
      behind = followedBy(behind, travel(part.lengthMm));
      if (datumMm !== undefined) datumMm += part.lengthMm;
      tubed ||= part.lengthMm > 0;
    }
    if (part.kind === 'converter') {
      if (part.lengthMm === undefined) {
        if (tubed) return { ok: false, fault: { kind: 'needs', part: index, input: 'lengthMm' } };
        missing.push({ part: index, input: 'lengthMm' });
        datumMm = undefined;
      } else if (datumMm !== undefined) datumMm += part.lengthMm;
      const slopeBefore = behind.d;
      behind = followedBy(behind, converterMatrix(part));
      converters.push({ part: index, magnification: behind.d / slopeBefore });
    }
  }
  if (flangeMm === undefined) missing.push({ part: 0, input: 'flangeMm' });
  if (lens.lengthMm === undefined) missing.push({ part: lensIndex, input: 'lengthMm' });
  return {
    ok: true,
    chain: {
      parts,
      lens,
      lensIndex,
      behind,
      datumMm,
      converterMagnification: behind.d,
      converters,
      closeUpPerMm,
      frontMm,
      flangeMm,
      missing,
    },
  };
}

/** From the datum of the converter's rear mount to the datum of its front mount. */
function converterMatrix(part: ConverterPart): RayMatrix {
  const lengthMm = part.lengthMm ?? STAND_IN_LENGTH_MM;
  const { atMm, perMm } = converterLens(part.factor, lengthMm);
  return followedBy(followedBy(travel(atMm), thinLens(perMm)), travel(lengthMm - atMm));
}

function firstFault(parts: readonly ChainPart[]): ChainFault | undefined {
  if (!parts.some((part) => part.kind === 'body')) return { kind: 'no-body' };
  let lensSeen = false;
  for (const [index, part] of parts.entries()) {
    const inPlace =
      part.kind === 'body' ? index === 0 : index > 0 && (part.kind === 'close-up') === lensSeen;
    if (!inPlace) return { kind: 'out-of-place', part: index };
    const input = impossibleInput(part);
    if (input !== undefined) return { kind: 'impossible', part: index, input };
    lensSeen ||= part.kind === 'lens';
  }
  return lensSeen ? undefined : { kind: 'no-lens' };
}
