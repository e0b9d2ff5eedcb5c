/** What pages that are written as files have in common. */

/** Pixels across: as sharp as the column of a printed page needs a picture without fine detail. */
export const FRAME_WIDTH = 320;

/**
 * As the policy of a page names its style and its script: SHA-256, by what Node and a browser's worker
 * both have.
 */
export async function hashOf(text: string): Promise<string> {
  const digest = await crypto.subtle.digest('SHA-256', new TextEncoder().encode(text));
  return `sha256-${btoa(String.fromCharCode(...new Uint8Array(digest)))}`;
}
