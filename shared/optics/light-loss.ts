import { arrangeChain, type Chain } from './arrangement.ts';
import { traceChain } from './chain.ts';
import type { ChainPart } from './parts.ts';

/** Light that one part takes, in stops; `part` is an index into the chain's parts. */
interface PartLoss {
  readonly part: number;
  readonly stops: number;
}

/**
 * Light lost part by part, in stops, without filters and glass; the sum is 2·log2(N_eff/N).
 *
 * The rig is put together from the lens backward and each part is charged with what it adds: the lens
 * with its ring's own extension, 2·log2(1 + m0/p); a converter with 2·log2 of its factor; tubes with the
 * rest. Tubes next to each other share theirs by length, so that their order among themselves changes
 * nothing. Close-up lenses cost nothing and stand with 0. Source: N_eff of each partial chain.
 */
export function lossByPart(chain: Chain, ringMagnification: number): readonly PartLoss[] {
  const { parts, lensIndex } = chain;
  const stops = parts.map(() => 0);
  let before = 0;
  let last = lensIndex;
  while (last > 0) {
    let first = last;
    while (parts[last]?.kind === 'tube' && parts[first - 1]?.kind === 'tube') first--;
    const after = lossOf(parts.slice(first), ringMagnification);
    const group = parts.slice(first, last + 1).map(lengthOf);
    const whole = group.reduce((sum, length) => sum + length, 0);
    for (const [index, length] of group.entries()) {
      const share = group.length === 1 ? 1 : whole > 0 ? length / whole : 0;
      stops[first + index] = (after - before) * share;
    }
    before = after;
    last = first - 1;
  }
  return stops.map((lost, part) => ({ part, stops: lost }));
}

function lossOf(parts: readonly ChainPart[], ringMagnification: number): number {
  const arranged = arrangeChain([{ kind: 'body' }, ...parts]);
  // Part of a chain that was sound as a whole is sound.
  if (!arranged.ok) throw new Error(`unsound chain: ${arranged.fault.kind}`);
  return traceChain(arranged.chain, ringMagnification).lightLossStops;
}

function lengthOf(part: ChainPart): number {
  return part.kind === 'tube' ? part.lengthMm : 0;
}
