/** The layout of a file, of some of its lines, and of a line that was just begun, as edits. */
import type { LocatedEdit, Position } from '../api/located.ts';
import { type FormatLines, formatEdits } from '../format/format.ts';
import { columnBelow } from '../format/on-type.ts';
import type { FormatOptions } from '../format/rows.ts';
import type { FileId } from '../plan/place.ts';
import type { Context } from '../workspace/context.ts';

export function formatFile(
  { store }: Context,
  file: FileId,
  options: FormatOptions,
  lines?: FormatLines,
): readonly LocatedEdit[] {
  const text = store.text(file);
  return text ? formatEdits(text.chunks, options, lines).map((edit) => ({ file, ...edit })) : [];
}

/** @param line reads a line of the file, without its break */
export function formatNewLine(
  file: FileId,
  { line: index }: Position,
  line: (index: number) => string,
): readonly LocatedEdit[] {
  const column = index > 0 ? columnBelow(line(index - 1)) : null;
  if (column === null) return [];
  const blanks = /^[ \t]*/.exec(line(index))?.[0] ?? '';
  const text = ' '.repeat(column);
  const range = {
    start: { line: index, character: 0 },
    end: { line: index, character: blanks.length },
  };
  return blanks === text ? [] : [{ file, range, text }];
}
