/**
 * MXF, which the library doesn't read: the header's metadata alone, which says all that is asked.
 * Parts, sets and tags by SMPTE ST 377-1; labels of codings by the SMPTE metadata registers.
 */
import type { FileHandle } from 'node:fs/promises';
import type { ClipFacts, ClipTimecode } from '../../../shared/clips/facts.ts';
import { type Rational, rational, toNumber } from '../../../shared/quantity/rational.ts';
import { later } from '../../../shared/words/message.ts';
import { readAt } from '../bytes.ts';
import { Unreadable } from '../unreadable.ts';
import { type MetadataSet, metadataFrom, partAt } from './klv.ts';
import { mxfPicture, pictureSize } from './mxf-picture.ts';

const PARTITION = /^060e2b34020501__0d01020101(?:02|03|04)..00$/;
const HEADER_PARTITION = /^060e2b34020501__0d0102010102..00$/;
const RANDOM_INDEX = '060e2b34020501__0d01020101110100';

const TIMELINE_TRACK = 0x3b;
const SEQUENCE = 0x0f;
const TIMECODE = 0x14;
/** Kinds of descriptors of pictures: generic, CDCI, RGBA, MPEG. */
const PICTURES = new Set([0x27, 0x28, 0x29, 0x51]);

const TAG = { sampleRate: 0x3001, containerDuration: 0x3002, duration: 0x0202, width: 0x3203 };

export const isMxf = (head: DataView): boolean =>
  head.byteLength >= 4 && head.getUint32(0) === 0x060e2b34;

type MxfFacts = Pick<
  ClipFacts,
  'size' | 'codec' | 'durationS' | 'rate' | 'picture' | 'startTimecode'
>;

export async function mxfFacts(file: FileHandle, bytes: number): Promise<MxfFacts> {
  const header = await partAt(file, 0);
  if (!header || !HEADER_PARTITION.test(header.key))
    throw new Unreadable(later`its header is broken`);
  const footerAt = await footerOf(file, header.start, bytes);
  const first = await metadataFrom(file, header);
  // A recorder writes what it only knows at the end into the footer.
  const last = footerAt === null ? [] : await footerMetadata(file, footerAt);
  const sets = last.some(({ kind }) => PICTURES.has(kind)) ? last : first;
  const descriptor = sets.find(({ kind, values }) => PICTURES.has(kind) && values.has(TAG.width));
  if (!descriptor) throw new Unreadable(later`it contains no video`, 'unsupported');
  if (footerAt === null) throw new Unreadable(later`it is cut off: its end is missing`);
  const rate = rationalIn(descriptor, TAG.sampleRate);
  if (!rate) throw new Unreadable(later`its header is broken`);
  const frames = framesOf(descriptor, sets);
  if (frames === 0) throw new Unreadable(later`it contains no frames`);
  const size = pictureSize(descriptor);
  const startTimecode = timecodeIn(sets, rate);
  return {
    size,
    rate: { kind: 'constant', rate },
    durationS: frames / toNumber(rate),
    ...mxfPicture(descriptor, size),
    ...(startTimecode && { startTimecode }),
  };
}

/** Where the footer is; null: the file ends before it. */
async function footerOf(file: FileHandle, header: number, bytes: number): Promise<number | null> {
  const view = await readAt(file, header, 32);
  if (view.byteLength < 32) return null;
  const said = Number(view.getBigUint64(24));
  if (said > 0) return said < bytes ? said : null;
  // A header that was never written again: the index of all partitions at the very end knows.
  const tail = await readAt(file, Math.max(0, bytes - 4), 4);
  const length = tail.byteLength === 4 ? tail.getUint32(0) : 0;
  const index = length > 0 && length < bytes ? await partAt(file, bytes - length) : null;
  if (index?.key !== RANDOM_INDEX) return null;
  const last = await readAt(file, index.end - 4 - 8, 8);
  return last.byteLength === 8 ? Number(last.getBigUint64(0)) : null;
}

async function footerMetadata(file: FileHandle, at: number): Promise<readonly MetadataSet[]> {
  const part = await partAt(file, at);
  return part && PARTITION.test(part.key) ? metadataFrom(file, part) : [];
}

/** As the descriptor says, else the longest sequence of the tracks that run at its rate. */
function framesOf(descriptor: MetadataSet, sets: readonly MetadataSet[]): number {
  const said = longIn(descriptor, TAG.containerDuration) ?? 0;
  if (said > 0) return said;
  return Math.max(
    0,
    ...sets
      .filter(({ kind }) => kind === SEQUENCE || kind === TIMELINE_TRACK)
      .map((set) => longIn(set, TAG.duration) ?? 0),
  );
}

/** Of the first timecode component, which is that of the clip as a whole. */
function timecodeIn(sets: readonly MetadataSet[], rate: Rational): ClipTimecode | null {
  const set = sets.find(({ kind }) => kind === TIMECODE);
  const base = set?.values.get(0x1502);
  const frame = set && longIn(set, 0x1501);
  if (!set || !base || base.byteLength < 2 || frame === null || frame === undefined) return null;
  const counted = base.getUint16(0);
  if (counted === 0) return null;
  const drop = set.values.get(0x1503);
  const isSlowed = rate.d === 1001;
  return {
    frame,
    rate: isSlowed ? rational(counted * 1000, 1001) : rational(counted),
    dropFrame: drop !== undefined && drop.byteLength > 0 && drop.getUint8(0) !== 0,
  };
}

function longIn({ values }: MetadataSet, tag: number): number | null {
  const value = values.get(tag);
  return value && value.byteLength >= 8 ? Number(value.getBigInt64(0)) : null;
}

function rationalIn({ values }: MetadataSet, tag: number): Rational | null {
  const value = values.get(tag);
  if (!value || value.byteLength < 8) return null;
  const [n, d] = [value.getUint32(0), value.getUint32(4)];
  return n > 0 && d > 0 ? rational(n, d) : null;
}
