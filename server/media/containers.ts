/** What a file is that isn't read here: so that nobody copies it again in vain. */
import type { FileHandle } from 'node:fs/promises';
import { codeAt, readAt } from './bytes.ts';

/** By their first bytes; the names are those of the published formats. */
export function otherContainer(head: DataView): string | null {
  const first = head.byteLength >= 4 ? head.getUint32(0) : 0;
  if (first === 0x3026b275) return 'ASF';
  if (first === 0x000001ba) return 'MPEG-PS';
  if (codeAt(head, 0) === 'OggS') return 'Ogg';
  if (codeAt(head, 0).startsWith('FLV')) return 'FLV';
  if (codeAt(head, 0) === 'RIFF') return `RIFF ${codeAt(head, 8)}`.trim();
  return null;
}

const SYNC = 0x47;
/** Packets of a disc or a camera have four bytes more, in front. */
const LAYOUTS = [
  { size: 188, offset: 0 },
  { size: 192, offset: 4 },
];
const LOOKED_AT = 192 * 4000;
const PROGRAMS = 0;

/** Kinds of pictures by ISO/IEC 13818-1, table 2-34. */
const KINDS: Readonly<Record<number, string>> = {
  1: 'mpeg1',
  2: 'mpeg2',
  16: 'mpeg4',
  27: 'h264',
  33: 'jpeg2000',
  36: 'hevc',
  51: 'vvc',
};

/** The coding of the pictures of a transport stream, by its program map; null: it has none. */
export async function streamCoding(file: FileHandle): Promise<string | null> {
  const view = await readAt(file, 0, LOOKED_AT);
  const layout = LAYOUTS.find(
    ({ size, offset }) =>
      view.byteLength > offset + size &&
      view.getUint8(offset) === SYNC &&
      view.getUint8(offset + size) === SYNC,
  );
  if (!layout) return null;
  let map: number | null = null;
  for (let at = layout.offset; at + 188 <= view.byteLength; at += layout.size) {
    const section = sectionAt(view, at);
    if (!section) continue;
    if (section.id === PROGRAMS && map === null) map = firstMap(view, section.at);
    if (section.id === map && map !== null) return pictureIn(view, section.at, at + 188);
  }
  return null;
}

/** A table that begins in a packet: where, and whose. */
function sectionAt(
  view: DataView,
  at: number,
): { readonly id: number; readonly at: number } | null {
  const head = view.getUint16(at + 1);
  if ((head & 0x4000) === 0) return null;
  const control = view.getUint8(at + 3);
  const adapted = (control & 0x20) !== 0 ? 1 + view.getUint8(at + 4) : 0;
  if (adapted > 180) return null;
  const payload = at + 4 + adapted;
  const section = payload + 1 + view.getUint8(payload);
  return section + 16 <= at + 188 ? { id: head & 0x1fff, at: section } : null;
}

/** Program 0 is the network, and no program. */
function firstMap(view: DataView, section: number): number | null {
  const program = view.getUint16(section + 8);
  const at = program === 0 ? section + 12 : section + 8;
  return at + 4 <= view.byteLength ? view.getUint16(at + 2) & 0x1fff : null;
}

function pictureIn(view: DataView, section: number, end: number): string | null {
  const last = Math.min(end, section + 3 + (view.getUint16(section + 1) & 0xfff) - 4);
  let at = section + 12 + (view.getUint16(section + 10) & 0xfff);
  while (at + 5 <= last) {
    const kind = KINDS[view.getUint8(at)];
    if (kind !== undefined) return kind;
    at += 5 + (view.getUint16(at + 3) & 0xfff);
  }
  return null;
}
