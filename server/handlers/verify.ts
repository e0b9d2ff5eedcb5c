/** The clips of a plan, verified for an editor: a page to read, and findings where the clips stand. */
import type { CancellationToken, Diagnostic, WorkDoneProgressParams } from 'vscode-languageserver';
import type { FileId } from '../../shared/plan/place.ts';
import { markdownText } from '../../shared/report/document/markdown.ts';
import { verifyDocument } from '../../shared/report/verify.ts';
import { Say } from '../../shared/say/say.ts';
import { message } from '../../shared/words/message.ts';
import type { Host } from '../host.ts';
import type { VerifyOptions } from '../media/verify-clips.ts';
import type { Session } from '../session.ts';

export interface VerifyParams extends WorkDoneProgressParams {
  readonly textDocument: { readonly uri: string };
}

/** Answer to `lamella/verify`; `unavailable`: why no clip can be read here, for people. */
export type VerifiedInEditor =
  | { readonly unavailable: string }
  | {
      readonly markdown: string;
      readonly diagnostics: readonly Diagnostic[];
      readonly stopped: boolean;
    };

export async function verifyInEditor(
  { core, diagnostics, roots, settings }: Session,
  host: Host,
  file: FileId,
  token: CancellationToken,
  progress: VerifyOptions['progress'],
): Promise<VerifiedInEditor> {
  const unavailable = message`Clips are read from a disk: in an editor on the desktop, or by \`lamella verify\` on the command line.`;
  if (!host.verifyClips) return { unavailable };
  const stop = new AbortController();
  const unheard = token.onCancellationRequested(() => stop.abort());
  try {
    const verified = await host.verifyClips(core, file, roots.of(file), stop.signal, progress);
    if (verified === null) return { unavailable };
    const findings = core.verify(file, verified.readings);
    const cuts = core.cutCoverage(file, verified.readings);
    return {
      markdown: markdownText(
        verifyDocument({ ...verified, cuts }, new Say(() => settings.lengths), findings),
      ),
      diagnostics: diagnostics.make(findings),
      stopped: verified.stopped,
    };
  } finally {
    unheard.dispose();
  }
}
