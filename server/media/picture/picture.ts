/** How the pictures of a clip are stored, by what its container says, else by their coding. */
import { EncodedPacketSink, type InputVideoTrack } from 'mediabunny';
import type { ClipFacts, ClipPicture } from '../../../shared/clips/facts.ts';
import { rational } from '../../../shared/quantity/rational.ts';
import { codedPicture } from './coded.ts';

/** @param container what the container says itself */
export async function pictureOf(
  track: InputVideoTrack,
  { codec, size }: Pick<ClipFacts, 'codec' | 'size'>,
  container: ClipPicture,
): Promise<ClipPicture> {
  const coded = await codedIn(track, codec, size.height);
  const { isInterlaced = false } = container;
  return {
    ...(await libraryPicture(track)),
    ...coded,
    ...container,
    // Either may know of the fields alone.
    ...((isInterlaced || coded.isInterlaced) && { isInterlaced: true }),
  };
}

/** Its names are those of WebCodecs, where two differ from ours. */
const ALSO: Readonly<Record<string, string>> = {
  smpte432: 'p3-d65',
  'iec61966-2-1': 'srgb',
};

async function libraryPicture(track: InputVideoTrack): Promise<ClipPicture> {
  const { primaries, transfer } = await track.getColorSpace();
  const { num, den } = await track.getPixelAspectRatio();
  const said = (name: string): string => ALSO[name] ?? name;
  return {
    ...(num > 0 && den > 0 && { pixelAspect: rational(num, den) }),
    ...(primaries && { primaries: said(primaries) }),
    ...(transfer && { transfer: transfer === 'smpte170m' ? 'bt709' : said(transfer) }),
  };
}

async function codedIn(
  track: InputVideoTrack,
  codec: string,
  height: number,
): Promise<ClipPicture> {
  const packet = await new EncodedPacketSink(track).getFirstPacket();
  if (!packet) return {};
  const config = await track.getDecoderConfig().catch(() => null);
  const record = config?.description ? bytesOf(config.description) : null;
  const coded = codedPicture(codec, record, packet.data, height);
  return config && Object.keys(coded).length === 0 ? webPicture(config.codec) : coded;
}

const bytesOf = (source: ArrayBufferLike | ArrayBufferView): Uint8Array =>
  ArrayBuffer.isView(source)
    ? new Uint8Array(source.buffer, source.byteOffset, source.byteLength)
    : new Uint8Array(source);

const WEB_CHROMA = { '00': '4:2:0', '01': '4:2:0', '02': '4:2:2', '03': '4:4:4' } as const;

/** VP9 and AV1, by their names: "vp09.00.10.08.01…", "av01.0.04M.10.0.110…" (RFC 6381). */
function webPicture(name: string): ClipPicture {
  const [family, , , depth = '', fourth = '', fifth = ''] = name.split('.');
  const bitDepth = Number(depth);
  if (!(bitDepth >= 8 && bitDepth <= 16)) return {};
  const chroma =
    family === 'vp09'
      ? WEB_CHROMA[fourth as keyof typeof WEB_CHROMA]
      : family === 'av01'
        ? av1Chroma(fourth, fifth)
        : undefined;
  return { bitDepth, ...(chroma && { chroma }), isInterlaced: false };
}

/** AV1 in ISOBMFF, 5: monochrome, then whether either axis is halved. */
function av1Chroma(mono: string, halved: string): ClipPicture['chroma'] {
  if (mono === '1') return '4:0:0';
  if (halved === '') return '4:2:0';
  return halved.startsWith('11') ? '4:2:0' : halved.startsWith('1') ? '4:2:2' : '4:4:4';
}
