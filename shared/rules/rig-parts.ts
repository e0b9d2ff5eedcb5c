/**
 * Parts of a rig that don't form an optical chain. The finding is at the rig, whatever shots use
 * it.
 */

import type { PartsLayout } from '../figures/parts.ts';
import { arrangeChain } from '../optics/arrangement.ts';
import type { ChainFault } from '../optics/parts.ts';
import type { Place } from '../plan/place.ts';
import type { ShapeProblem } from '../plan/problem.ts';

export function rigProblems(parts: PartsLayout, at: Place): readonly ShapeProblem[] {
  if (!parts.chainParts.known || !parts.parts.known) return [];
  const arranged = arrangeChain(parts.chainParts.value);
  if (arranged.ok || arranged.fault.kind === 'needs') return [];
  const { fault } = arranged;
  const index = 'part' in fault ? fault.part : undefined;
  const part = index === undefined ? undefined : parts.parts.value[index];
  return [
    {
      rule: 'wrong-value',
      code: CODE_OF[fault.kind],
      at: part?.at ?? at,
      args: part ? { part: part.name } : {},
      fixes: [],
    },
  ];
}

const CODE_OF: Record<Exclude<ChainFault['kind'], 'needs'>, string> = {
  'no-body': 'no-body',
  'no-lens': 'no-lens',
  'out-of-place': 'part-out-of-place',
  impossible: 'part-impossible',
};
