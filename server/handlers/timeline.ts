/** The edit of a plan as a file, for a client that knows where it is to go. */

import type { CancellationToken } from 'vscode-languageserver';
import {
  TIMELINE_FORMATS,
  type TimelineFile,
  type TimelineFormat,
} from '../../shared/api/timeline.ts';
import type { FileId } from '../../shared/plan/place.ts';
import type { Host } from '../host.ts';
import type { Session } from '../session.ts';

export interface TimelineParams {
  readonly textDocument: { readonly uri: string };
  /** One of `TIMELINE_FORMATS`; anything else is asked for as OpenTimelineIO. */
  readonly format: string;
  /** URL of the file that is to be written; left out: beside the plan. */
  readonly target?: string;
  /** Folder of the clips on the editing computer; left out or empty: references from the file. */
  readonly media?: string;
  /** Timecode of the first frame; left out or empty: 00:00:00:00. */
  readonly startTimecode?: string;
}

export async function timelineFile(
  { core, roots }: Session,
  host: Host,
  file: FileId,
  { format, target, media = '', startTimecode = '' }: TimelineParams,
  token: CancellationToken,
): Promise<TimelineFile> {
  const known = TIMELINE_FORMATS.find((one) => one === format);
  const chosen: TimelineFormat = known ?? 'otio';
  const stop = new AbortController();
  const unheard = token.onCancellationRequested(() => stop.abort());
  try {
    // A shot list has the times of the plan, and nothing of the files.
    const clips =
      chosen === 'csv'
        ? null
        : await host.editClips?.(core, file, { root: roots.of(file), media }, stop.signal);
    return core.timeline(file, chosen, {
      ...clips,
      ...(target !== undefined && { target }),
      ...(media !== '' && { media }),
      ...(startTimecode !== '' && { startTimecode }),
    });
  } finally {
    unheard.dispose();
  }
}
