/** Files that are dropped onto a plan, for a client that knows of drops: `lamella/dropClips`. */
import type { Position, TextEdit } from 'vscode-languageserver';
import type { FileId } from '../../shared/plan/place.ts';
import { canonicalUri } from '../canonical-uri.ts';
import type { Session } from '../session.ts';

export interface DropClipsParams {
  readonly textDocument: { readonly uri: string };
  readonly position: Position;
  readonly uris: readonly string[];
}

export interface DropClipsAnswer {
  /** In the plan; none: nothing may be written there. */
  readonly edits: readonly TextEdit[];
  /** Why some or all are left out. */
  readonly why?: string;
}

export function dropClipsAnswer(
  { core }: Session,
  file: FileId,
  { position, uris }: DropClipsParams,
): DropClipsAnswer {
  const { edits, why } = core.dropClips(file, position, uris.map(canonicalUri));
  return {
    edits: edits.map(({ range, text }) => ({ range, newText: text })),
    ...(why !== undefined && { why }),
  };
}
