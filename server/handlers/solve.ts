/** "Solve this shot": what would be changed and why, before anything is. */
import {
  type CancellationToken,
  type CodeAction,
  CodeActionKind,
  type TextEdit,
  type WorkspaceEdit,
} from 'vscode-languageserver';
import type { Core } from '../../shared/api/facade.ts';
import type { SolvedFinding, SolvedShot } from '../../shared/api/solved.ts';
import type { FileId } from '../../shared/plan/place.ts';
import { plainLines } from '../../shared/report/document/terminal.ts';
import { settingWords, solvedBlocks, solvedTitle } from '../../shared/report/solve-text.ts';
import { message } from '../../shared/words/message.ts';
import type { Session } from '../session.ts';
import { inSlices } from '../slices.ts';
import { workspaceEdit } from './workspace-edit.ts';

export interface SolveParams {
  readonly textDocument: { readonly uri: string };
  readonly shot: string;
}

/** Answer to `lamella/solve`. */
export interface SolveAnswer {
  readonly title: string;
  /** Changes with their reasons, or what stands in the way: a line each. */
  readonly lines: readonly string[];
  /** Left out where there is nothing to change. */
  readonly edit?: WorkspaceEdit;
  /** The same change by change, for a preview; left out where there is nothing to change. */
  readonly changes?: readonly SolvingChange[];
  /** Version of the plan that all edits were made for. */
  readonly version: number | null;
}

/** One change, as its reader ticks it. */
export interface SolvingChange {
  readonly setting: string;
  readonly from: string;
  readonly to: string;
  /** Findings that return without it. */
  readonly because: readonly SolvedFinding[];
  /** In the plan itself. */
  readonly edits: readonly TextEdit[];
}

type Asked = Pick<Session, 'core' | 'client' | 'documents' | 'standBack'>;

/** null: it was cancelled, or no shot that can be read. */
async function solved(
  { core, standBack }: Asked,
  file: FileId,
  shot: string,
  token: CancellationToken,
): Promise<SolvedShot | null> {
  const making = core.startSolving(file, shot);
  const made = await inSlices((until) => making.work(until), token, standBack);
  return made?.answer ?? null;
}

export async function solveAnswer(
  session: Asked,
  file: FileId,
  shot: string,
  token: CancellationToken,
): Promise<SolveAnswer | null> {
  const found = await solved(session, file, shot, token);
  if (found === null) return null;
  const { client, documents } = session;
  return {
    title: solvedTitle(found),
    lines: plainLines(solvedBlocks(found)),
    version: documents.version(file),
    ...(found.edits.length > 0 && {
      edit: workspaceEdit(found.edits, client, documents),
      changes: found.changes.map(({ setting, from, to, because, edits }) => ({
        setting: settingWords(setting),
        from,
        to,
        because,
        // The settings of a shot stand in it, and the shot in its plan.
        edits: edits.map(({ range, text }) => ({ range, newText: text })),
      })),
    }),
  };
}

/** Whether anything about a shot is there to be solved: cheap, so that it can be asked often. */
const isUnsolved = (core: Core, file: FileId, shot: string): boolean =>
  core
    .findings(file)
    .some(
      (finding) =>
        finding.shot === shot && (finding.severity === 'error' || finding.severity === 'warning'),
    );

/** How the shot at a line is solved: by a command that shows it first, where the client has one. */
export async function solveAction(
  session: Asked,
  file: FileId,
  position: { readonly line: number; readonly character: number },
  token: CancellationToken,
): Promise<CodeAction[]> {
  const { core, client, documents } = session;
  const shot = core.shotAt(file, position);
  if (shot === null || !isUnsolved(core, file, shot)) return [];
  const title = message`Solve ${shot} by changing its settings`;
  if (client.showsSolving)
    return [
      {
        title: `${title} …`,
        kind: CodeActionKind.RefactorRewrite,
        command: {
          title,
          command: 'lamella.solveShot',
          arguments: [{ uri: documents.uri(file), shot }],
        },
      },
    ];
  const found = await solved(session, file, shot, token);
  if (!found || found.edits.length === 0) return [];
  const changes = found.changes.map(
    ({ setting, from, to }) => message`${settingWords(setting)} ${from} to ${to}`,
  );
  return [
    {
      title: `${title}: ${changes.join(', ')}`,
      kind: CodeActionKind.RefactorRewrite,
      edit: workspaceEdit(found.edits, client, documents),
    },
  ];
}
