/** What the sequence parameter set of H.265 says of the picture (ITU-T H.265, 7.3.2.2 and 7.3.3). */
import type { ClipPicture } from '../../../shared/clips/facts.ts';
import { Bits, unitsIn } from './bits.ts';
import { CHROMA } from './h264.ts';

const SEQUENCE_PARAMETERS = 33;

/** Shape of pixels and colours come from the library, which reads them in this coding. */
export function hevcPicture(description: Uint8Array | null, first: Uint8Array): ClipPicture {
  const units = description && description[0] === 1 ? unitsOf(description) : unitsIn(first);
  const unit = units.find(([head = 0]) => ((head >> 1) & 63) === SEQUENCE_PARAMETERS);
  if (!unit) return {};
  const bits = new Bits(unit.subarray(2));
  bits.skip(4);
  const layers = bits.read(3);
  bits.skip(1 + 8 + 32);
  bits.skip(1);
  // Frames that are made of fields say so here; the flag before it says "progressive".
  const isInterlaced = bits.read(1) === 1;
  bits.skip(2 + 43 + 1 + 8);
  skipLayers(bits, layers);
  bits.unsigned();
  const format = bits.unsigned();
  if (format === 3) bits.skip(1);
  bits.unsigned();
  bits.unsigned();
  if (bits.read(1) === 1) for (let side = 0; side < 4; side++) bits.unsigned();
  const bitDepth = 8 + bits.unsigned();
  const chroma = CHROMA[format];
  return { bitDepth, ...(chroma && { chroma }), isInterlaced };
}

function skipLayers(bits: Bits, layers: number): void {
  const present = Array.from({ length: layers }, () => [bits.read(1), bits.read(1)] as const);
  if (layers > 0) bits.skip(2 * (8 - layers));
  for (const [profile, level] of present) bits.skip(profile * 88 + level * 8);
}

/** Units of a configuration record (ISO/IEC 14496-15, 8.3.3.1.2). */
function unitsOf(record: Uint8Array): readonly Uint8Array[] {
  const units: Uint8Array[] = [];
  let at = 23;
  for (let kinds = record[22] ?? 0; kinds > 0; kinds--) {
    const count = (record[at + 1] ?? 0) * 256 + (record[at + 2] ?? 0);
    at += 3;
    for (let index = 0; index < count && at + 2 <= record.length; index++) {
      const length = record[at]! * 256 + record[at + 1]!;
      units.push(record.subarray(at + 2, at + 2 + length));
      at += 2 + length;
    }
  }
  return units;
}
