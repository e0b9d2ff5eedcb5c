/** The clips of a plan, checked for an editor: a page to read, and findings where the clips stand. */
import type { CancellationToken, Diagnostic, WorkDoneProgressParams } from 'vscode-languageserver';
import type { FileId } from '../../shared/plan/place.ts';
import { clipsDocument } from '../../shared/report/clips.ts';
import { markdownText } from '../../shared/report/document/markdown.ts';
import { Say } from '../../shared/say/say.ts';
import { message } from '../../shared/words/message.ts';
import type { Host } from '../host.ts';
import type { CheckOptions } from '../media/check-clips.ts';
import type { Session } from '../session.ts';
import { thumbnailLines } from './thumbnails.ts';

export interface ClipsParams extends WorkDoneProgressParams {
  readonly textDocument: { readonly uri: string };
  /** Look at the pictures too. */
  readonly look?: boolean;
}

/** Answer to `lamella/clips`; `unavailable`: why no clip can be read here, for people. */
export type ClipsInEditor =
  | { readonly unavailable: string }
  | {
      readonly markdown: string;
      readonly diagnostics: readonly Diagnostic[];
      readonly stopped: boolean;
    };

export async function clipsInEditor(
  { core, diagnostics, roots, settings }: Session,
  host: Host,
  file: FileId,
  look: boolean,
  token: CancellationToken,
  progress: CheckOptions['progress'],
): Promise<ClipsInEditor> {
  const unavailable = message`Clips can only be read from a disk. Use a desktop editor, or \`lamella clips\` on the command line.`;
  if (!host.checkClips) return { unavailable };
  const stop = new AbortController();
  const unheard = token.onCancellationRequested(() => stop.abort());
  try {
    const checked = await host.checkClips(core, file, roots.of(file), look, stop.signal, progress);
    if (checked === null) return { unavailable };
    const findings = core.checkClips(file, checked.readings);
    const cuts = core.cutCoverage(file, checked.readings);
    const page = clipsDocument({ ...checked, cuts }, new Say(() => settings.lengths), findings);
    const noFfmpeg = message`ffmpeg is not on the path, so no pictures are looked at.`;
    return {
      markdown: [
        markdownText(page),
        ...(checked.looking === 'no-ffmpeg' ? [noFfmpeg] : []),
        ...thumbnailLines(checked.thumbnails),
      ].join('\n\n'),
      diagnostics: diagnostics.make(findings),
      stopped: checked.stopped,
    };
  } finally {
    unheard.dispose();
  }
}
