/** "Solve this shot": what would be changed and why, before anything is. */
import { type CodeAction, CodeActionKind, type WorkspaceEdit } from 'vscode-languageserver';
import type { Core } from '../../shared/api/facade.ts';
import type { FileId } from '../../shared/plan/place.ts';
import { plainLines } from '../../shared/report/document/terminal.ts';
import { settingWords, solvedBlocks, solvedTitle } from '../../shared/report/solve-text.ts';
import { message } from '../../shared/words/message.ts';
import type { ClientFeatures } from '../client-features.ts';
import type { Documents } from '../workspace/documents.ts';
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
}

export function solveAnswer(
  core: Core,
  client: ClientFeatures,
  documents: Documents,
  file: FileId,
  shot: string,
): SolveAnswer | null {
  const solved = core.solve(file, shot);
  if (solved === null) return null;
  return {
    title: solvedTitle(solved),
    lines: plainLines(solvedBlocks(solved)),
    ...(solved.edits.length > 0 && { edit: workspaceEdit(solved.edits, client, documents) }),
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
export function solveAction(
  core: Core,
  client: ClientFeatures,
  documents: Documents,
  file: FileId,
  position: { readonly line: number; readonly character: number },
): CodeAction[] {
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
  const solved = core.solve(file, shot);
  if (!solved || solved.edits.length === 0) return [];
  const changes = solved.changes.map(
    ({ setting, from, to }) => message`${settingWords(setting)} ${from} to ${to}`,
  );
  return [
    {
      title: `${title}: ${changes.join(', ')}`,
      kind: CodeActionKind.RefactorRewrite,
      edit: workspaceEdit(solved.edits, client, documents),
    },
  ];
}
