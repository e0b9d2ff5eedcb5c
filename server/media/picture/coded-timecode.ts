/**
 * The timecode that a picture carries itself, which transport streams have no other place for: the
 * message on the timing of a picture (ITU-T H.264, D.1.3), the message with its time (ITU-T H.265,
 * D.2.27).
 */
import type { ClipTimecode } from '../../../shared/clips/facts.ts';
import { writtenTimecode } from '../../../shared/clips/timecode.ts';
import type { Rational } from '../../../shared/quantity/rational.ts';
import { Bits, NoMoreBits, unitsIn } from './bits.ts';
import { timingLayout } from './h264.ts';

const MESSAGES_H264 = 6;
const MESSAGES_HEVC = 39;
const PICTURE_TIMING = 1;
const TIME_CODE = 136;
/** Numbers 0 and 1 of each minute are left out, but in every tenth. */
const DROPS_NUMBERS = 4;
/** A single frame up to three of it; greater ones are reserved. */
const LAST_STRUCTURE = 8;

/**
 * @param first the first frame, with start codes
 * @param rate of the clip
 */
export function codedTimecode(
  codec: string,
  first: Uint8Array,
  rate: Rational,
): ClipTimecode | null {
  try {
    const time = codec === 'h264' ? h264Time(first) : codec === 'hevc' ? hevcTime(first) : null;
    return time === null ? null : writtenTimecode(time, rate);
  } catch (cause) {
    if (cause instanceof NoMoreBits) return null;
    throw cause;
  }
}

function h264Time(first: Uint8Array): string | null {
  const units = unitsIn(first);
  const layout = timingLayout(units);
  if (!layout?.hasTimes) return null;
  const message = messageIn(
    units,
    ([head = 0]) => (head & 31) === MESSAGES_H264,
    1,
    PICTURE_TIMING,
  );
  if (!message) return null;
  message.skip(layout.delayBits);
  if (message.read(4) > LAST_STRUCTURE || message.read(1) === 0) return null;
  message.skip(2);
  return timeIn(message, 8);
}

function hevcTime(first: Uint8Array): string | null {
  const isMessages = ([head = 0]: Uint8Array): boolean => ((head >> 1) & 63) === MESSAGES_HEVC;
  const message = messageIn(unitsIn(first), isMessages, 2, TIME_CODE);
  if (!message || message.read(2) === 0 || message.read(1) === 0) return null;
  return timeIn(message, 9);
}

/** @returns as written; null where it isn't whole */
function timeIn(bits: Bits, frameBits: number): string | null {
  bits.skip(1);
  const drops = bits.read(5) === DROPS_NUMBERS;
  const isWhole = bits.read(1) === 1;
  bits.skip(1);
  const hasDropped = bits.read(1) === 1;
  const frame = bits.read(frameBits);
  if (!isWhole) return null;
  const [second, minute, hour] = [bits.read(6), bits.read(6), bits.read(5)];
  const two = (value: number): string => String(value).padStart(2, '0');
  return `${two(hour)}:${two(minute)}:${two(second)}${drops || hasDropped ? ';' : ':'}${two(frame)}`;
}

/** A message of a kind, at its first bit (supplemental enhancement information, 7.3.2.3.1). */
function messageIn(
  units: readonly Uint8Array[],
  isMessages: (unit: Uint8Array) => boolean,
  headBytes: number,
  kind: number,
): Bits | null {
  for (const unit of units.filter(isMessages)) {
    const bits = new Bits(unit.subarray(headBytes));
    const number = (): number => {
      let value = 0;
      for (;;) {
        const byte = bits.read(8);
        value += byte;
        if (byte !== 255) return value;
      }
    };
    while (bits.hasMore) {
      const [is, bytes] = [number(), number()];
      if (is === kind) return bits;
      bits.skip(8 * bytes);
    }
  }
  return null;
}
