/** "Settle this shot": what would be changed and why, before anything is. */
import { type CodeAction, CodeActionKind, type WorkspaceEdit } from 'vscode-languageserver';
import type { Core } from '../../shared/api/facade.ts';
import type { FileId } from '../../shared/plan/place.ts';
import { plainLines } from '../../shared/report/document/terminal.ts';
import { settingWords, settledBlocks, settledTitle } from '../../shared/report/settle-text.ts';
import { message } from '../../shared/words/message.ts';
import type { ClientFeatures } from '../client-features.ts';
import type { Documents } from '../workspace/documents.ts';
import { workspaceEdit } from './workspace-edit.ts';

export interface SettleParams {
  readonly textDocument: { readonly uri: string };
  readonly shot: string;
}

/** Answer to `lamella/settle`. */
export interface SettleAnswer {
  readonly title: string;
  /** Changes with their reasons, or what stands in the way: a line each. */
  readonly lines: readonly string[];
  /** Left out where there is nothing to change. */
  readonly edit?: WorkspaceEdit;
}

export function settleAnswer(
  core: Core,
  client: ClientFeatures,
  documents: Documents,
  file: FileId,
  shot: string,
): SettleAnswer | null {
  const settled = core.settle(file, shot);
  if (settled === null) return null;
  return {
    title: settledTitle(settled),
    lines: plainLines(settledBlocks(settled)),
    ...(settled.edits.length > 0 && { edit: workspaceEdit(settled.edits, client, documents) }),
  };
}

/** Whether anything about a shot is there to be settled: cheap, so that it can be asked often. */
const isUnsettled = (core: Core, file: FileId, shot: string): boolean =>
  core
    .findings(file)
    .some(
      (finding) =>
        finding.shot === shot && (finding.severity === 'error' || finding.severity === 'warning'),
    );

/** How the shot at a line is settled: by a command that shows it first, where the client has one. */
export function settleAction(
  core: Core,
  client: ClientFeatures,
  documents: Documents,
  file: FileId,
  position: { readonly line: number; readonly character: number },
): CodeAction[] {
  const shot = core.shotAt(file, position);
  if (shot === null || !isUnsettled(core, file, shot)) return [];
  const title = message`Settle ${shot} by its settings`;
  if (client.showsSettling)
    return [
      {
        title: `${title} …`,
        kind: CodeActionKind.RefactorRewrite,
        command: {
          title,
          command: 'lamella.settleShot',
          arguments: [{ uri: documents.uri(file), shot }],
        },
      },
    ];
  const settled = core.settle(file, shot);
  if (!settled || settled.edits.length === 0) return [];
  const changes = settled.changes.map(
    ({ setting, from, to }) => message`${settingWords(setting)} ${from} to ${to}`,
  );
  return [
    {
      title: `${title}: ${changes.join(', ')}`,
      kind: CodeActionKind.RefactorRewrite,
      edit: workspaceEdit(settled.edits, client, documents),
    },
  ];
}
