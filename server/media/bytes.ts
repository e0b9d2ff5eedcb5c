/** A file read piece by piece, for what little of a clip is read by hand. */
import type { FileHandle } from 'node:fs/promises';

/** @returns as many bytes as there are from `at` on, at most `length` */
export async function readAt(file: FileHandle, at: number, length: number): Promise<DataView> {
  const buffer = new Uint8Array(length);
  const { bytesRead } = await file.read(buffer, 0, length, at);
  return new DataView(buffer.buffer, 0, bytesRead);
}

/** Four characters, as containers name their parts; "" past the end. */
export function codeAt(view: DataView, at: number): string {
  if (at + 4 > view.byteLength) return '';
  return String.fromCharCode(...[0, 1, 2, 3].map((offset) => view.getUint8(at + offset)));
}
