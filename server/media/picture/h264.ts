/** What the sequence parameter set of H.264 says of the picture (ITU-T H.264, 7.3.2.1.1 and E.1.1). */
import { primariesOf, transferOf } from '../../../shared/clips/colour.ts';
import type { ClipChroma, ClipPicture } from '../../../shared/clips/facts.ts';
import { rational } from '../../../shared/quantity/rational.ts';
import { Bits, unitsIn } from './bits.ts';

const SEQUENCE_PARAMETERS = 7;
export const CHROMA: readonly ClipChroma[] = ['4:0:0', '4:2:0', '4:2:2', '4:4:4'];
/** Profiles whose set says chroma and depth; all others are 4:2:0 of 8 bits. */
const HIGH = new Set([100, 110, 122, 244, 44, 83, 86, 118, 128, 138, 139, 134, 135]);
/** Table E-1, from 1 on. */
const ASPECTS = [
  ...[
    [1, 1],
    [12, 11],
    [10, 11],
    [16, 11],
    [40, 33],
    [24, 11],
    [20, 11],
    [32, 11],
  ],
  ...[
    [80, 33],
    [18, 11],
    [15, 11],
    [64, 33],
    [160, 99],
    [4, 3],
    [3, 2],
    [2, 1],
  ],
] as const;
const OWN_ASPECT = 255;
/** Of a stream's buffer model. */
const MOST_BUFFERS = 32;

/**
 * @param description the configuration record of ISO/IEC 14496-15; null: the stream carries it itself
 * @param first the first frame
 */
export function h264Picture(description: Uint8Array | null, first: Uint8Array): ClipPicture {
  const record = description && description[0] === 1 && (description[5]! & 31) > 0;
  const unit = record
    ? description.subarray(8, 8 + description[6]! * 256 + description[7]!)
    : unitsIn(first).find(([head = 0]) => (head & 31) === SEQUENCE_PARAMETERS);
  return unit ? sequencePicture(unit) : {};
}

/** What a set says before its usability information, and where that begins; null: it has none. */
interface Sequence extends ClipPicture {
  readonly usability: Bits | null;
}

function sequenceIn(unit: Uint8Array): Sequence {
  const bits = new Bits(unit.subarray(1));
  const profile = bits.read(8);
  bits.skip(16);
  bits.unsigned();
  let [chroma, bitDepth]: [ClipChroma, number] = ['4:2:0', 8];
  if (HIGH.has(profile)) {
    const format = bits.unsigned();
    chroma = CHROMA[format] ?? chroma;
    if (format === 3) bits.skip(1);
    bitDepth = 8 + bits.unsigned();
    bits.unsigned();
    bits.skip(1);
    if (bits.read(1) === 1) skipScaling(bits, format === 3 ? 12 : 8);
  }
  bits.unsigned();
  const order = bits.unsigned();
  if (order === 0) bits.unsigned();
  if (order === 1) {
    bits.skip(1);
    bits.signed();
    bits.signed();
    for (let count = Math.min(255, bits.unsigned()); count > 0; count--) bits.signed();
  }
  bits.unsigned();
  bits.skip(1);
  bits.unsigned();
  bits.unsigned();
  const isInterlaced = bits.read(1) === 0;
  if (isInterlaced) bits.skip(1);
  bits.skip(1);
  if (bits.read(1) === 1) for (let side = 0; side < 4; side++) bits.unsigned();
  return { bitDepth, chroma, isInterlaced, usability: bits.read(1) === 1 ? bits : null };
}

function sequencePicture(unit: Uint8Array): ClipPicture {
  const { usability, ...picture } = sequenceIn(unit);
  return { ...picture, ...(usability && usabilityIn(usability)) };
}

/** How the messages on the timing of a picture are laid out (ITU-T H.264, E.1.1 and E.1.2). */
interface TimingLayout {
  /** Bits of the delays that come first. */
  readonly delayBits: number;
  readonly hasTimes: boolean;
  /** Bits after each time. */
  readonly offsetBits: number;
}

/** @returns null where the stream says nothing of it */
export function timingLayout(units: readonly Uint8Array[]): TimingLayout | null {
  const unit = units.find(([head = 0]) => (head & 31) === SEQUENCE_PARAMETERS);
  const bits = unit && sequenceIn(unit).usability;
  if (!bits) return null;
  usabilityIn(bits);
  if (bits.read(1) === 1) {
    bits.unsigned();
    bits.unsigned();
  }
  if (bits.read(1) === 1) bits.skip(32 + 32 + 1);
  let [delayBits, offsetBits] = [0, 24];
  const buffers = [0, 1].map(() => {
    if (bits.read(1) === 0) return false;
    const count = bits.unsigned() + 1;
    bits.skip(8);
    for (let index = 0; index < Math.min(count, MOST_BUFFERS); index++) {
      bits.unsigned();
      bits.unsigned();
      bits.skip(1);
    }
    bits.skip(5);
    delayBits = bits.read(5) + 1 + bits.read(5) + 1;
    offsetBits = bits.read(5);
    return true;
  });
  const hasBuffers = buffers.includes(true);
  if (hasBuffers) bits.skip(1);
  return { delayBits, hasTimes: bits.read(1) === 1, offsetBits: hasBuffers ? offsetBits : 24 };
}

function skipScaling(bits: Bits, lists: number): void {
  for (let list = 0; list < lists; list++) {
    if (bits.read(1) === 0) continue;
    let [last, next] = [8, 8];
    for (let index = 0; index < (list < 6 ? 16 : 64); index++) {
      if (next !== 0) next = (last + bits.signed() + 256) % 256;
      last = next === 0 ? last : next;
    }
  }
}

/** Of the usability information: the shape of pixels and the colours, which come first in it. */
function usabilityIn(bits: Bits): ClipPicture {
  let pixelAspect: ClipPicture['pixelAspect'];
  if (bits.read(1) === 1) {
    const code = bits.read(8);
    const [width, height] =
      code === OWN_ASPECT ? [bits.read(16), bits.read(16)] : (ASPECTS[code - 1] ?? [0, 0]);
    if (width > 0 && height > 0) pixelAspect = rational(width, height);
  }
  if (bits.read(1) === 1) bits.skip(1);
  const colours: { primaries?: string; transfer?: string } = {};
  if (bits.read(1) === 1) {
    bits.skip(4);
    if (bits.read(1) === 1) {
      Object.assign(colours, coloursOf(bits.read(8), bits.read(8)));
      bits.skip(8);
    }
  }
  return { ...(pixelAspect && { pixelAspect }), ...colours };
}

export function coloursOf(
  primaries: number,
  transfer: number,
): Pick<ClipPicture, 'primaries' | 'transfer'> {
  const [one, other] = [primariesOf(primaries), transferOf(transfer)];
  return { ...(one !== null && { primaries: one }), ...(other !== null && { transfer: other }) };
}
