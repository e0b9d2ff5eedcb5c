/** What pages that commands write have in common. */
import { createHash } from 'node:crypto';

/** Pixels across: as sharp as the column of a printed page needs a picture without fine detail. */
export const FRAME_WIDTH = 320;

/** As the policy of a page names its style and its script. */
export const hashOf = (text: string): string =>
  `sha256-${createHash('sha256').update(text).digest('base64')}`;
