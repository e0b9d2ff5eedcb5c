/** A shot's frame as an editor shows it: drawn in slices, so that nothing that arrives waits for it. */
import type { CancellationToken } from 'vscode-languageserver';
import type { Core } from '../../shared/api/facade.ts';
import type { DrawnFrame, PageFrame } from '../../shared/api/frame.ts';
import type { FileId } from '../../shared/plan/place.ts';
import { type Between, inSlices } from '../slices.ts';

export interface FrameParams {
  readonly textDocument: { readonly uri: string };
  readonly shot: string;
  /** In pixels; left out: 480. */
  readonly width?: number;
}

const USUAL_WIDTH = 480;
const MOST_WIDTH = 1920;

/** null: no such shot, nothing to draw, or it was cancelled. */
export async function frameInSlices(
  core: Core,
  file: FileId,
  shot: string,
  width: number,
  token: CancellationToken,
  between?: Between,
): Promise<DrawnFrame | null> {
  const making = core.startFrame(file, shot, width);
  return making && inSlices((until) => making.work(until), token, between);
}

/** Answer to `lamella/frame`: the picture as a page shows it; null as above. */
export async function shotFrame(
  core: Core,
  file: FileId,
  { shot, width = USUAL_WIDTH }: FrameParams,
  token: CancellationToken,
  between?: Between,
): Promise<PageFrame | null> {
  const pixels = Math.max(1, Math.min(MOST_WIDTH, Math.round(Number(width)) || USUAL_WIDTH));
  const drawn = await frameInSlices(core, file, String(shot), pixels, token, between);
  return drawn?.ok ? pageFrame(drawn) : null;
}

export const pageFrame = ({
  png,
  width,
  height,
  caption,
}: Extract<DrawnFrame, { ok: true }>): PageFrame => ({
  width,
  height,
  caption,
  src: `data:image/png;base64,${base64(png)}`,
});

/** `btoa` takes a character a byte, and there is one in Node and in a browser's worker. */
const base64 = (bytes: Uint8Array): string =>
  btoa(bytes.reduce((text, byte) => text + String.fromCharCode(byte), ''));
