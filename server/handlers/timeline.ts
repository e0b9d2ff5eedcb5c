/** The edit of a plan as a file, for a client that knows where it is to go. */

import type { Core } from '../../shared/api/facade.ts';
import type { TimelineFile } from '../../shared/api/timeline.ts';
import type { FileId } from '../../shared/plan/place.ts';

export interface TimelineParams {
  readonly textDocument: { readonly uri: string };
  readonly format: 'otio' | 'csv';
}

/** Anything but a shot list is asked for as OpenTimelineIO. */
export const timelineFile = (core: Core, file: FileId, { format }: TimelineParams): TimelineFile =>
  core.timeline(file, format === 'csv' ? 'csv' : 'otio');
