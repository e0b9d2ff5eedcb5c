/** A filled-in sheet for the plan in the editor: what it changes is shown before anything is. */
import { diffLines } from 'diff';
import type { WorkspaceEdit } from 'vscode-languageserver';
import type { LocatedEdit } from '../../shared/api/located.ts';
import { propose, proposedWords } from '../../shared/bring-back/propose.ts';
import { readBack } from '../../shared/bring-back/read-back.ts';
import { type FileId, fileName } from '../../shared/plan/place.ts';
import { inertLine } from '../../shared/report/inert.ts';
import { message } from '../../shared/words/message.ts';
import { patchOf } from '../patch.ts';
import type { Session } from '../session.ts';
import { workspaceEdit } from './workspace-edit.ts';

export interface BringBackParams {
  readonly textDocument: { readonly uri: string };
  /** The text of the sheet or of a review. */
  readonly day: string;
  /** Also what the day shows of body and subjects; left out: no. */
  readonly propose?: boolean;
}

/** Answer to `lamella/bringBack`. */
export type BringBackAnswer =
  | { readonly refused: string }
  | {
      /** What was brought and left, and the diff, as Markdown. */
      readonly markdown: string;
      /** Left out where there is nothing to change. */
      readonly edit?: WorkspaceEdit;
      /** Something could be proposed, and was not asked for. */
      readonly couldPropose?: true;
    };

export function bringBackAnswer(
  { core, client, documents }: Session,
  file: FileId,
  { day: given, propose: isAsked }: BringBackParams,
): BringBackAnswer {
  const read = readBack(typeof given === 'string' ? given : '');
  if (!read.ok)
    return { refused: message`The text can't be read: ${inertLine(read.whys.join('; '))}.` };
  const before = core.text(file) ?? '';
  const name = fileName(file);
  const brought = read.lay(before, name);
  if (brought === null)
    return { refused: message`${name} has errors in its text. Fix them first.` };
  const proposed = read.day && propose(read.day, brought.text);
  const asked = isAsked === true ? proposed : null;
  const text = asked?.text ?? brought.text;
  const { done, kept, left } = brought;
  const told = [...done, ...kept, ...left];
  if (asked) told.push(...asked.done.map(proposedWords), ...asked.kept, ...asked.left);
  const isNothing = text === before;
  if (isNothing) told.push(message`Nothing to bring back.`);
  const blocks = [fenced('text', told.map(inertLine).join('\n'))];
  for (const [from, to] of [
    [before, brought.text],
    [brought.text, text],
  ] as const)
    if (from !== to) blocks.push(fenced('diff', patchOf(name, from, to)));
  const couldPropose = asked === null && proposed !== null && proposed.text !== brought.text;
  return {
    markdown: blocks.join('\n'),
    ...(!isNothing && { edit: workspaceEdit(lineEdits(file, before, text), client, documents) }),
    ...(couldPropose && { couldPropose }),
  };
}

/** Text that is shown as it is, whatever is in it. */
function fenced(language: string, text: string): string {
  const longest = Math.max(0, ...[...text.matchAll(/`+/g)].map(([run]) => run.length));
  const fence = '`'.repeat(Math.max(3, longest + 1));
  return `${fence}${language}\n${text.replace(/\n$/, '')}\n${fence}\n`;
}

/** The changed lines alone: what stands between them keeps its marks and folds. */
function lineEdits(file: FileId, before: string, after: string): readonly LocatedEdit[] {
  // A lone CR ends a line of the editor's, and none of the comparison's.
  if (/\r(?!\n)/.test(before)) {
    const end = { line: before.split(/\r\n|\r|\n/).length, character: 0 };
    return [{ file, range: { start: { line: 0, character: 0 }, end }, text: after }];
  }
  const edits: LocatedEdit[] = [];
  let line = 0;
  let open: { readonly from: number; text: string } | null = null;
  const close = (): void => {
    if (open === null) return;
    const at = (row: number) => ({ line: row, character: 0 });
    edits.push({ file, range: { start: at(open.from), end: at(line) }, text: open.text });
    open = null;
  };
  for (const { value, added, removed, count } of diffLines(before, after)) {
    if (!added && !removed) {
      close();
      line += count;
      continue;
    }
    open ??= { from: line, text: '' };
    if (added) open.text += value;
    else line += count;
  }
  close();
  return edits;
}
