/** Whether a Matroska or WebM file goes as far as it says. Elements by RFC 8794 and RFC 9559. */
import type { FileHandle } from 'node:fs/promises';
import { readAt } from './bytes.ts';

const EBML = 0x1a45dfa3;
const SEGMENT = 0x18538067;

interface ElementHead {
  readonly id: number;
  /** null: not known, as a live recording leaves it. */
  readonly size: number | null;
  /** Bytes of id and size together. */
  readonly length: number;
}

/** @returns true where its segment ends past the end of the file */
export async function isMatroskaCutOff(file: FileHandle, bytes: number): Promise<boolean> {
  const header = await elementAt(file, 0);
  if (header?.id !== EBML || header.size === null) return false;
  const at = header.length + header.size;
  const segment = await elementAt(file, at);
  if (segment?.id !== SEGMENT || segment.size === null) return false;
  return at + segment.length + segment.size > bytes;
}

async function elementAt(file: FileHandle, at: number): Promise<ElementHead | null> {
  const view = await readAt(file, at, 12);
  const idLength = widthAt(view, 0);
  if (idLength === null || idLength > 4) return null;
  const sizeLength = widthAt(view, idLength);
  if (sizeLength === null || idLength + sizeLength > view.byteLength) return null;
  let id = 0;
  for (let index = 0; index < idLength; index++) id = id * 256 + view.getUint8(index);
  // The first bit that is set says how many bytes there are, and is no part of the number.
  let size = view.getUint8(idLength) - 2 ** (8 - sizeLength);
  for (let index = 1; index < sizeLength; index++)
    size = size * 256 + view.getUint8(idLength + index);
  const isUnknown = size === 2 ** (7 * sizeLength) - 1;
  return { id, size: isUnknown ? null : size, length: idLength + sizeLength };
}

/** Bytes of the number that begins there; null where none does. */
function widthAt(view: DataView, at: number): number | null {
  if (at >= view.byteLength) return null;
  const first = view.getUint8(at);
  return first === 0 ? null : Math.clz32(first) - 23;
}
