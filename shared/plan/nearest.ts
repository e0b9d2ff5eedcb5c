/** The word that was probably meant, among those that would be right. */
import { editDistance } from '../quantity/edit-distance.ts';

/** In small letters with hyphens, as the language writes its words. */
export const plain = (word: string): string => word.toLowerCase().replace(/[\s_]+/g, '-');

/** At most a third of the letters off (one in short words); undefined where nothing is near. */
export function nearest(word: string, candidates: Iterable<string>): string | undefined {
  const meant = plain(word);
  let best: string | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const candidate of candidates) {
    const word = plain(candidate);
    const most = Math.max(1, Math.floor(Math.min(meant.length, candidate.length) / 3));
    // A distance is never less than the letters that one has more.
    if (Math.abs(meant.length - word.length) > most) continue;
    const off = editDistance(meant, word);
    if (off <= most && off < least) {
      best = candidate;
      least = off;
    }
  }
  return best;
}

/** A text as a name: small letters, digits and hyphens; undefined where none is left. */
export function asName(text: string): string | undefined {
  const name = text
    .normalize('NFKD')
    .toLowerCase()
    .replace(/\p{M}/gu, '')
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^[-0-9]+|-+$/g, '')
    .slice(0, 64);
  return name === '' ? undefined : name;
}
