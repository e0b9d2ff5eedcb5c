import {
  type CancellationToken,
  type CodeAction,
  CodeActionKind,
  type CodeActionParams,
  CodeActionTriggerKind,
} from 'vscode-languageserver';
import type { OfferedFix } from '../../shared/api/facade.ts';
import type { FileId } from '../../shared/plan/place.ts';
import { inertLine } from '../../shared/report/inert.ts';
import { titleWithPrice } from '../../shared/say/fix-title.ts';
import { message } from '../../shared/words/message.ts';
import { SOURCE } from '../diagnostics/to-lsp.ts';
import type { Session } from '../session.ts';
import { FIX_ALL, fixAll } from './fix-all.ts';
import { solveAction } from './solve.ts';
import { workspaceEdit } from './workspace-edit.ts';

export async function actions(
  session: Pick<Session, 'core' | 'client' | 'documents' | 'standBack'>,
  file: FileId,
  { range, context }: CodeActionParams,
  token: CancellationToken,
): Promise<CodeAction[] | null> {
  const { core, client, documents } = session;
  const wants = (kind: string): boolean =>
    context.only === undefined || context.only.some((only) => covers(only, kind));
  // Asked for by hand: what it takes to look is not for every move of the cursor.
  const isInvoked = context.triggerKind !== CodeActionTriggerKind.Automatic;
  // First, for it takes turns in which the text may change: all the rest is of one text.
  const isSolved = wants(CodeActionKind.RefactorRewrite) && (client.showsSolving || isInvoked);
  const solving = isSolved ? await solveAction(session, file, range.start, token) : [];
  if (token.isCancellationRequested) return null;
  const found: CodeAction[] = [];
  if (wants(CodeActionKind.QuickFix)) {
    const offered = core.fixesIn(file, range);
    for (const fix of offered)
      found.push({
        title: inertLine(titleWithPrice(fix.title, fix.sideEffects)),
        kind: CodeActionKind.QuickFix,
        edit: workspaceEdit(fix.edits, client, documents),
        diagnostics: context.diagnostics.filter(
          ({ source, code, range: at }) =>
            source === SOURCE && code === fix.finding.rule && sameRange(at, fix.finding.range),
        ),
        ...(client.preferredActions && isOnlyWay(fix, offered) && { isPreferred: true }),
      });
  }
  found.push(...solving);
  // Only where it is asked for: nobody expects the whole file to change from a single value.
  if (context.only?.some((only) => covers(only, FIX_ALL))) {
    const edits = fixAll(core, file);
    if (edits.length > 0)
      found.push({
        title: message`Fix all problems with one safe fix`,
        kind: FIX_ALL,
        edit: workspaceEdit(edits, client, documents),
      });
  }
  return found;
}

/** Kinds are paths: `source` covers `source.fixAll.lamella`. */
const covers = (asked: string, kind: string): boolean =>
  asked === '' || asked === kind || kind.startsWith(`${asked}.`);

const isOnlyWay = (fix: OfferedFix, offered: readonly OfferedFix[]): boolean =>
  fix.sideEffects === undefined &&
  offered.every((other) => other === fix || other.finding !== fix.finding);

type At = OfferedFix['finding']['range'];

const sameRange = (a: At, b: At): boolean =>
  a.start.line === b.start.line &&
  a.start.character === b.start.character &&
  a.end.line === b.end.line &&
  a.end.character === b.end.character;
