/**
 * AVI, which the library doesn't read: the headers alone, which say all that is asked. RIFF chunks
 * as in "Multimedia Programming Interface and Data Specifications 1.0" (1991), the lists and headers
 * of the AVI RIFF file reference, and OpenDML 1.02 for files past 1 GB.
 */
import type { FileHandle } from 'node:fs/promises';
import { codecFamily } from '../../shared/clips/codec.ts';
import type { ClipFacts, ClipPicture } from '../../shared/clips/facts.ts';
import { writtenTimecode } from '../../shared/clips/timecode.ts';
import { rational, toNumber } from '../../shared/quantity/rational.ts';
import { later } from '../../shared/words/message.ts';
import { codeAt, readAt } from './bytes.ts';
import { codedPicture } from './picture/coded.ts';
import { Unreadable } from './unreadable.ts';

/** Headers come first and are small; a list of them that claims more is broken. */
const MOST_HEADER_BYTES = 1 << 20;

export const isAvi = (head: DataView): boolean =>
  codeAt(head, 0) === 'RIFF' && codeAt(head, 8) === 'AVI ';

interface Chunk {
  readonly id: string;
  /** Of a list: what it is a list of. */
  readonly of: string;
  readonly start: number;
  readonly size: number;
}

/** Chunks of `view` between two offsets, each padded to a whole word. */
function* chunksIn(view: DataView, start: number, end: number): Generator<Chunk> {
  for (let at = start; at + 8 <= end; ) {
    const id = codeAt(view, at);
    const size = view.getUint32(at + 4, true);
    yield { id, of: id === 'LIST' ? codeAt(view, at + 8) : '', start: at + 8, size };
    at += 8 + size + (size % 2);
  }
}

type AviFacts = Pick<
  ClipFacts,
  'size' | 'codec' | 'durationS' | 'rate' | 'picture' | 'startTimecode'
>;

export async function aviFacts(file: FileHandle, bytes: number): Promise<AviFacts> {
  const head = await readAt(file, 0, Math.min(bytes, MOST_HEADER_BYTES));
  const claimed = head.getUint32(4, true) + 8;
  const [list] = chunksIn(head, 12, head.byteLength);
  if (list?.of !== 'hdrl') throw new Unreadable(later`its header is broken`);
  const end = Math.min(list.start + list.size, head.byteLength);
  const headers = [...chunksIn(head, list.start + 4, end)];
  const stream = headers
    .filter(({ of }) => of === 'strl')
    .map((strl) => streamIn(head, strl, end))
    .find((one) => one !== null);
  if (!stream) throw new Unreadable(later`it contains no video`);
  if (claimed > bytes) throw new Unreadable(later`it is cut off: its end is missing`);
  const total = headers
    .filter(({ of }) => of === 'odml')
    .flatMap((odml) => [...chunksIn(head, odml.start + 4, Math.min(odml.start + odml.size, end))])
    .find(({ id }) => id === 'dmlh');
  // A file of several parts says in the first how many frames there are in all.
  const frames = Math.max(
    stream.frames,
    total && total.start + 4 <= end ? head.getUint32(total.start, true) : 0,
  );
  if (frames === 0) throw new Unreadable(later`it contains no frames`);
  const rate = rational(stream.rate, stream.scale);
  const codec = codecFamily(stream.code) ?? stream.code.trim();
  const coded = codedPicture(codec, null, firstFrame(head), stream.size.height);
  const startTimecode = writtenTimecode(timecodeIn(head), rate);
  return {
    size: stream.size,
    codec,
    ...(startTimecode && { startTimecode }),
    picture: { ...coded, ...stream.picture },
    rate: { kind: 'constant', rate },
    durationS: frames / toNumber(rate),
  };
}

/** `ISMP` of the list of information (RIFF tags, digitization time as SMPTE timecode); "": none. */
function timecodeIn(head: DataView): string {
  for (const list of chunksIn(head, 12, head.byteLength)) {
    if (list.of !== 'INFO') continue;
    const end = Math.min(list.start + list.size, head.byteLength);
    for (const { id, start, size } of chunksIn(head, list.start + 4, end))
      if (id === 'ISMP' && start + size <= end && size < 32)
        return Buffer.from(head.buffer, start, size).toString('latin1').replace(/\0+$/, '').trim();
  }
  return '';
}

/** As much of it as lies in the bytes that were read. */
function firstFrame(head: DataView): Uint8Array {
  for (const list of chunksIn(head, 12, head.byteLength)) {
    if (list.of !== 'movi') continue;
    for (const { id, start, size } of chunksIn(head, list.start + 4, head.byteLength))
      if (/^\d\dd[bc]$/.test(id) && size > 0)
        return new Uint8Array(head.buffer, start, Math.min(size, head.byteLength - start));
  }
  return new Uint8Array(0);
}

interface Stream {
  readonly picture: ClipPicture;
  readonly code: string;
  readonly rate: number;
  readonly scale: number;
  readonly frames: number;
  readonly size: { readonly width: number; readonly height: number };
}

/** A stream of pictures; null: another kind, or one whose headers are not whole. */
function streamIn(view: DataView, strl: Chunk, end: number): Stream | null {
  const inside = [...chunksIn(view, strl.start + 4, Math.min(strl.start + strl.size, end))];
  const header = inside.find(({ id, start }) => id === 'strh' && start + 36 <= end);
  const format = inside.find(({ id, start }) => id === 'strf' && start + 20 <= end);
  if (!header || !format || codeAt(view, header.start) !== 'vids') return null;
  const scale = view.getUint32(header.start + 20, true);
  const rate = view.getUint32(header.start + 24, true);
  if (scale === 0 || rate === 0) return null;
  const properties = inside.find(({ id, start }) => id === 'vprp' && start + 36 <= end);
  const width = view.getInt32(format.start + 4, true);
  // Negative: the picture is stored from the top.
  const height = Math.abs(view.getInt32(format.start + 8, true));
  return {
    picture: properties ? propertiesAt(view, properties.start, width, height) : {},
    code: codeAt(view, format.start + 16),
    rate,
    scale,
    frames: view.getUint32(header.start + 32, true),
    size: { width, height },
  };
}

/** OpenDML 1.02, 4.0 (video properties header): the shape of the frame, and its fields. */
function propertiesAt(view: DataView, at: number, width: number, height: number): ClipPicture {
  const aspect = view.getUint32(at + 20, true);
  const [across, down] = [aspect >>> 16, aspect & 0xffff];
  const isInterlaced = view.getUint32(at + 32, true) === 2;
  return {
    ...(isInterlaced && { isInterlaced }),
    ...(across > 0 &&
      down > 0 &&
      width > 0 &&
      height > 0 && { pixelAspect: rational(across * height, down * width) }),
  };
}
