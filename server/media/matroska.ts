/**
 * What the library doesn't say of a Matroska or WebM file: whether it goes as far as it says, and
 * whether its pictures are fields. Elements by RFC 8794 and RFC 9559.
 */
import type { FileHandle } from 'node:fs/promises';
import type { ClipPicture } from '../../shared/clips/facts.ts';
import { readAt } from './bytes.ts';

const EBML = 0x1a45dfa3;
const SEGMENT = 0x18538067;
const CLUSTER = 0x1f43b675;
const TRACKS = 0x1654ae6b;
const TRACK_ENTRY = 0xae;
const TRACK_NUMBER = 0xd7;
const VIDEO = 0xe0;
/** 1: the pictures are fields, 2: they are not. `FieldOrder` means nothing without it. */
const FLAG_INTERLACED = 0x9a;

/** Elements before the first frames: a few, however the file was written. */
const MOST_ELEMENTS = 100;
/** Descriptions of tracks are small; more is broken. */
const MOST_TRACK_BYTES = 1 << 20;

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

/** @param number of the track */
export async function matroskaPicture(file: FileHandle, number: number): Promise<ClipPicture> {
  const entries = childrenOf(await tracksOf(file)).filter(({ id }) => id === TRACK_ENTRY);
  for (const { content } of entries) {
    const fields = childrenOf(content);
    if (unsigned(fields.find(({ id }) => id === TRACK_NUMBER)) !== number) continue;
    const video = fields.find(({ id }) => id === VIDEO);
    const flag = video && childrenOf(video.content).find(({ id }) => id === FLAG_INTERLACED);
    const value = unsigned(flag);
    return value === 1 || value === 2 ? { isInterlaced: value === 1 } : {};
  }
  return {};
}

const NOTHING = new DataView(new ArrayBuffer(0));

/** What the element with the tracks holds; nothing where it doesn't come before the frames. */
async function tracksOf(file: FileHandle): Promise<DataView> {
  const header = await elementAt(file, 0);
  if (header?.id !== EBML || header.size === null) return NOTHING;
  let at = header.length + header.size;
  const segment = await elementAt(file, at);
  if (segment?.id !== SEGMENT) return NOTHING;
  at += segment.length;
  for (let count = 0; count < MOST_ELEMENTS; count++) {
    const next = await elementAt(file, at);
    if (!next || next.size === null || next.id === CLUSTER) return NOTHING;
    if (next.id === TRACKS)
      return readAt(file, at + next.length, Math.min(next.size, MOST_TRACK_BYTES));
    at += next.length + next.size;
  }
  return NOTHING;
}

interface Child {
  readonly id: number;
  readonly content: DataView;
}

/** As many as are whole. */
function childrenOf(view: DataView): readonly Child[] {
  const children: Child[] = [];
  for (let at = 0; at < view.byteLength; ) {
    const head = headIn(new DataView(view.buffer, view.byteOffset + at, view.byteLength - at));
    if (!head || head.size === null || at + head.length + head.size > view.byteLength) break;
    const start = view.byteOffset + at + head.length;
    children.push({ id: head.id, content: new DataView(view.buffer, start, head.size) });
    at += head.length + head.size;
  }
  return children;
}

/** A number of any length; null: there is none. */
function unsigned(child: Child | undefined): number | null {
  if (!child) return null;
  let value = 0;
  for (let at = 0; at < child.content.byteLength; at++)
    value = value * 256 + child.content.getUint8(at);
  return value;
}

const elementAt = async (file: FileHandle, at: number): Promise<ElementHead | null> =>
  headIn(await readAt(file, at, 12));

function headIn(view: DataView): ElementHead | null {
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
