/** What the descriptor of an MXF file says of the picture (SMPTE ST 377-1, annex G). */
import { primariesOf, transferOf } from '../../../shared/clips/colour.ts';
import type { ClipChroma, ClipFacts, ClipPicture } from '../../../shared/clips/facts.ts';
import { rational } from '../../../shared/quantity/rational.ts';
import { keyAt, type MetadataSet } from './klv.ts';

const TAG = {
  coding: 0x3201,
  container: 0x3004,
  storedHeight: 0x3202,
  storedWidth: 0x3203,
  displayHeight: 0x3208,
  displayWidth: 0x3209,
  layout: 0x320c,
  aspect: 0x320e,
  transfer: 0x3210,
  primaries: 0x3219,
  depth: 0x3301,
  across: 0x3302,
  down: 0x3308,
};
/** Layouts: each field on its own, one field alone, both in turn. */
const FIELDS = new Set([1, 2, 3]);
/** In these two the height is that of a field. */
const HALVES = new Set([1, 4]);

const wordIn = ({ values }: MetadataSet, tag: number): number => {
  const value = values.get(tag);
  return value && value.byteLength >= 4 ? value.getUint32(0) : 0;
};

const layoutOf = ({ values }: MetadataSet): number => {
  const value = values.get(TAG.layout);
  return value && value.byteLength > 0 ? value.getUint8(0) : 0;
};

/** What is shown, where it says that; codings store whole blocks. */
export function pictureSize(set: MetadataSet): ClipFacts['size'] {
  const width = wordIn(set, TAG.displayWidth) || wordIn(set, TAG.storedWidth);
  const height = wordIn(set, TAG.displayHeight) || wordIn(set, TAG.storedHeight);
  return { width, height: HALVES.has(layoutOf(set)) ? height * 2 : height };
}

export function mxfPicture(
  set: MetadataSet,
  { width, height }: ClipFacts['size'],
): Pick<ClipFacts, 'codec' | 'picture'> {
  const aspect = set.values.get(TAG.aspect);
  const [across, down] =
    aspect && aspect.byteLength >= 8 ? [aspect.getUint32(0), aspect.getUint32(4)] : [0, 0];
  const bitDepth = wordIn(set, TAG.depth);
  const chroma = chromaOf(wordIn(set, TAG.across), wordIn(set, TAG.down));
  return {
    codec: codecOf(labelIn(set, TAG.coding), labelIn(set, TAG.container)),
    picture: {
      ...(bitDepth > 0 && { bitDepth }),
      ...(chroma && { chroma }),
      isInterlaced: FIELDS.has(layoutOf(set)),
      ...(across > 0 &&
        down > 0 &&
        width > 0 &&
        height > 0 && { pixelAspect: rational(across * height, down * width) }),
      ...coloursIn(set),
    },
  };
}

const chromaOf = (across: number, down: number): ClipChroma | null =>
  across === 1
    ? '4:4:4'
    : across === 4
      ? '4:1:1'
      : across === 2
        ? down === 2
          ? '4:2:0'
          : '4:2:2'
        : null;

const labelIn = ({ values }: MetadataSet, tag: number): string => {
  const value = values.get(tag);
  return value && value.byteLength >= 16 ? keyAt(value, 0) : '';
};

/** The last part of the labels of SMPTE ST 2067-21 and RP 224, as codes of ITU-T H.273. */
const TRANSFERS: Readonly<Record<string, number>> = {
  '02': 1,
  '03': 7,
  '06': 8,
  '09': 14,
  '0a': 16,
  '0b': 18,
};
const PRIMARIES: Readonly<Record<string, number>> = {
  '01': 6,
  '02': 5,
  '03': 1,
  '04': 9,
  '06': 12,
};

function coloursIn(set: MetadataSet): Pick<ClipPicture, 'transfer' | 'primaries'> {
  const code = (tag: number, label: string, codes: Readonly<Record<string, number>>): number => {
    const said = labelIn(set, tag);
    return said.slice(16, 26) === label ? (codes[said.slice(26, 28)] ?? 0) : 0;
  };
  const transfer = transferOf(code(TAG.transfer, '0401010101', TRANSFERS));
  const primaries = primariesOf(code(TAG.primaries, '0401010103', PRIMARIES));
  return { ...(transfer && { transfer }), ...(primaries && { primaries }) };
}

/** Labels of codings begin alike, and differ in what follows. */
const CODINGS: readonly (readonly [codec: string, coding: RegExp, container: RegExp])[] = [
  ['h264', /^040102020[12]3/, /^0d01030102(?:0f|10)/],
  ['mpeg2', /^04010202010[1-9]/, /^0d0103010204/],
  ['mpeg4', /^040102020120/, /^$/],
  ['dv', /^0401020202/, /^0d0103010202/],
  ['jpeg2000', /^040102020301/, /^0d010301020c/],
  ['prores', /^040102020306/, /^0d010301021c/],
  ['dnxhd', /^0401020271/, /^0d0103010211/],
];

/** @returns the label itself where nobody here knows it */
function codecOf(coding: string, container: string): string {
  const [own, around] = [coding.slice(16), container.slice(16)];
  const known =
    CODINGS.find(([, label]) => label.test(own)) ??
    CODINGS.find(([, , label]) => label.test(around));
  return known?.[0] ?? (own || around || 'not known');
}
