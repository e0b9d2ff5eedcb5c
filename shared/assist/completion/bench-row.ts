/** A row of a lens's bench that is worth measuring next, with what will be read about. */
import { nameOf } from '../../plan/entry-id.ts';
import { significant } from '../../say/say.ts';
import { measureAdvice } from '../measure.ts';
import type { Where } from './where.ts';

/** Any marked f-number does: how far light falls off is the same at all of them. */
const MARKED = 8;

/**
 * What is worked out now stands where the number goes, to be written over by what the ruler says;
 * null: no shot would be surer for a row.
 */
export function benchRowAt({ context, file, place }: Where): string | null {
  const [advice] = measureAdvice(context, file, nameOf('lenses', place.entry));
  const next = advice?.next;
  if (!next) return null;
  const value =
    next.measure === 'effective-f-number'
      ? `${significant(MARKED * 2 ** (next.expected / 2))}, marked: f/${MARKED}`
      : `${significant(next.expected)} mm`;
  return `{ with: [${next.with.join(', ')}], ring: ${next.ring}, ${next.measure}: ${value} }`;
}
