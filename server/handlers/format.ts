/** A plan's layout: the whole, some lines, and the line that was just begun. */
import type { FormattingOptions, TextEdit } from 'vscode-languageserver';
import type { Core } from '../../shared/api/facade.ts';
import type { LocatedEdit, Position, Range } from '../../shared/api/located.ts';
import type { FileId } from '../../shared/plan/place.ts';
import type { Settings } from '../settings.ts';

/** What is typed before a line is indented. */
export const LINE_BREAK = '\n';

/** Blanks are never a choice: plans are indented by two spaces. `align` may come along with a request. */
const optionsOf = ({ align }: FormattingOptions, settings: Settings) => ({
  align: align === 'keep' || align === 'tidy' ? align : settings.align,
});

const textEdits = (edits: readonly LocatedEdit[]): TextEdit[] =>
  edits.map(({ range, text }) => ({ range, newText: text }));

export const format = (
  core: Core,
  settings: Settings,
  file: FileId,
  options: FormattingOptions,
): TextEdit[] => textEdits(core.format(file, optionsOf(options, settings)));

export function formatRange(
  core: Core,
  settings: Settings,
  file: FileId,
  { start, end }: Range,
  options: FormattingOptions,
): TextEdit[] {
  // A selection of whole lines ends before the next one.
  const isBefore = end.character === 0 && end.line > start.line;
  const lines = { first: start.line, last: isBefore ? end.line - 1 : end.line };
  return textEdits(core.format(file, optionsOf(options, settings), lines));
}

export const formatOnType = (core: Core, file: FileId, position: Position): TextEdit[] =>
  textEdits(core.formatNewLine(file, position));
