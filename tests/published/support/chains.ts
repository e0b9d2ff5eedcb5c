import { arrangeChain, type Chain } from '../../../shared/optics/arrangement.ts';
import type { ChainPart, LensPart } from '../../../shared/optics/parts.ts';

/** Parts that are known to make a chain. */
export function chainOf(...parts: readonly ChainPart[]): Chain {
  const arranged = arrangeChain(parts);
  if (!arranged.ok) throw new Error(`no chain: ${JSON.stringify(arranged.fault)}`);
  return arranged.chain;
}

/** A lens that keeps its focal length while it focuses down to `closest`, and so moves as a whole. */
export function unitFocusing(focalMm: number, closest: number): LensPart {
  const fromSensorMm = focalMm * (2 + closest + 1 / closest);
  return { kind: 'lens', focalMm, closest: { fromSensorMm, magnification: closest } };
}
