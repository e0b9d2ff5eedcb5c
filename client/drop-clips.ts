/** Clips that are dropped onto the `clips` of a shot are written there, by paths from the plan. */
import {
  type CancellationToken,
  type DataTransfer,
  type Disposable,
  DocumentDropEdit,
  type DocumentDropEditProvider,
  languages,
  type Position,
  type TextDocument,
  Uri,
  WorkspaceEdit,
  window,
} from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import type { DropClipsAnswer } from '../server/handlers/drop-clips.ts';
import { LANGUAGE, planSchemes } from './documents.ts';

/** Video that bodies record; pictures of a stack or a time-lapse. */
const CLIP =
  /\.(?:mp4|m4v|mov|mkv|webm|avi|mxf|mts|m2ts|m2t|ts|jpe?g|png|tiff?|dng|heic|heif|avif)$/i;

export const takesClips = (client: BaseLanguageClient): Disposable => {
  const selector = planSchemes().map((scheme) => ({ language: LANGUAGE, scheme }));
  return languages.registerDocumentDropEditProvider(selector, new ClipDrops(client));
};

class ClipDrops implements DocumentDropEditProvider {
  readonly #client: BaseLanguageClient;

  constructor(client: BaseLanguageClient) {
    this.#client = client;
  }

  /** undefined: no clips, the editor does what it does with other files. */
  async provideDocumentDropEdits(
    document: TextDocument,
    position: Position,
    dropped: DataTransfer,
    token: CancellationToken,
  ): Promise<DocumentDropEdit | undefined> {
    const list = await dropped.get('text/uri-list')?.asString();
    const clips = urisOf(list ?? '').filter((uri) => CLIP.test(uri.path));
    if (clips.length === 0) return undefined;
    const { code2ProtocolConverter: code, protocol2CodeConverter: protocol } = this.#client;
    const answer = await this.#client.sendRequest<DropClipsAnswer | null>(
      'lamella/dropClips',
      {
        textDocument: { uri: code.asUri(document.uri) },
        position: code.asPosition(position),
        uris: clips.map((uri) => code.asUri(uri)),
      },
      token,
    );
    if (!answer) return undefined;
    if (answer.why !== undefined) void window.showInformationMessage(answer.why);
    // Also without edits: a path anywhere else in a plan would be an error.
    const drop = new DocumentDropEdit('');
    drop.additionalEdit = new WorkspaceEdit();
    drop.additionalEdit.set(document.uri, await protocol.asTextEdits([...answer.edits]));
    return drop;
  }
}

/** A line each; those that begin with # are comments (RFC 2483, section 5). */
const urisOf = (list: string): readonly Uri[] =>
  list
    .split(/\r?\n/)
    .filter((line) => line !== '' && !line.startsWith('#'))
    .flatMap((line) => {
      try {
        return [Uri.parse(line, true)];
      } catch {
        return [];
      }
    });
