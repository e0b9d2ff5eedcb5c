/** What a line without a key may be. */
import { markKind } from './merge-marks.ts';
import type { Oddity } from './split-state.ts';

const isSpaceOrEnd = (text: string, at: number, end: number): boolean =>
  at >= end || text[at] === ' ' || text[at] === '\t';

/** List items and closing brackets may stand as far left as the key that they belong to. */
export const continues = (text: string, at: number, end: number): boolean =>
  text[at] === ']' || text[at] === '}' || (text[at] === '-' && isSpaceOrEnd(text, at + 1, end));

export const isComplexKey = (text: string, at: number, end: number): boolean =>
  (text[at] === '?' || text[at] === ':') && isSpaceOrEnd(text, at + 1, end);

/** A bare word: a name or section whose colon is not typed yet. */
export function wordAt(text: string, at: number, end: number): string | null {
  const first = text.charCodeAt(at);
  if (!(first >= 0x61 && first <= 0x7a)) return null;
  return /^([a-z][a-z0-9-]*)[ \t]*$/.exec(text.slice(at, Math.min(end, at + 200)))?.[1] ?? null;
}

/** Lines at the margin that belong to no document: merge markers, `---`, `...`, `%YAML`. */
export function markerAt(text: string, at: number, end: number): Oddity | null {
  const first = text[at] as string;
  if (first === '%') return 'directive';
  if (!'-.<=>|'.includes(first)) return null;
  if (markKind(text, at, end)) return 'conflict-marker';
  const three = text.slice(at, at + 3);
  return (three === '---' || three === '...') && isSpaceOrEnd(text, at + 3, end)
    ? 'document-marker'
    : null;
}
