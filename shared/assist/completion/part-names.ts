/** Parts for a place in a rig: those that make a chain there, with what the rig then reaches. */
import type { Place } from '../../plan/place.ts';
import { rigProblems } from '../../rules/rig-parts.ts';
import { reachWords } from '../../say/figures.ts';
import { message } from '../../words/message.ts';
import type { Proposal } from './item.ts';
import type { Where } from './where.ts';

export interface AmongParts {
  /** The other parts, in their order. */
  readonly beside: readonly string[];
  /** The part that would be replaced; '' where none is. */
  readonly word: string;
}

/** Of the parts `found`, those that leave the rig no more wrong than it is; what works comes first. */
export function fittingParts(
  where: Where,
  found: readonly Proposal[],
  { beside, word }: AmongParts,
): readonly Proposal[] {
  const { context, file, place } = where;
  const index = Number(place.path.at(-1));
  const reader = context.analysis.reader(file);
  const listWith = (name: string) =>
    [...beside.slice(0, index), name, ...beside.slice(index)].filter((part) => part !== '');
  const problemsOf = (names: readonly string[]): number => {
    const at: Place = { ...place, path: ['parts'] };
    const layout = reader.offer.layOut(names);
    return rigProblems({ ...layout }, at).length;
  };
  const now = problemsOf(listWith(word));
  return found
    .filter(({ text }) => !beside.includes(text))
    .flatMap((one): Proposal[] => {
      const names = listWith(one.text);
      const problems = problemsOf(names);
      if (problems > now) return [];
      const { reach } = reader.offer.layOut(names);
      const reaches = reach.known
        ? message`rig covers ${reachWords(reach.value, context.say)}`
        : '';
      const detail = [one.detail, reaches].filter(Boolean).join(' · ');
      return [{ ...one, detail, rank: one.rank + problems * 100 }];
    })
    .sort((a, b) => a.rank - b.rank);
}
