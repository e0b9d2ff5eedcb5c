/** One clip from the disk, opened for reading and nothing else. */
import { type FileHandle, open } from 'node:fs/promises';
import {
  EncodedPacketSink,
  FilePathSource,
  Input,
  type InputVideoTrack,
  Logging,
  LogLevel,
  MATROSKA,
  MP4,
  MPEG_TS,
  QTFF,
  WEBM,
} from 'mediabunny';
import { codecFamily } from '../../shared/clips/codec.ts';
import type { ClipFacts, ClipReading, ClipTimecode } from '../../shared/clips/facts.ts';
import { settingsFrom } from '../../shared/clips/tags.ts';
import { writtenTimecode } from '../../shared/clips/timecode.ts';
import { toNumber } from '../../shared/quantity/rational.ts';
import { meanBitsPerS } from '../../shared/recording/bytes.ts';
import { later, message } from '../../shared/words/message.ts';
import { reasonOf } from '../files/read-plan.ts';
import { aviFacts, isAvi } from './avi.ts';
import { readAt } from './bytes.ts';
import { otherContainer, streamCoding } from './containers.ts';
import { isoMediaFacts } from './iso-media.ts';
import { isMatroskaCutOff, matroskaPicture } from './matroska.ts';
import { isMxf, mxfFacts } from './mxf/mxf.ts';
import { codedTimecode } from './picture/coded-timecode.ts';
import { isoPicture } from './picture/iso-picture.ts';
import { pictureOf } from './picture/picture.ts';
import { rateOf } from './rate-of.ts';
import { pictureFacts, pictureKind } from './still-picture.ts';
import { Unreadable } from './unreadable.ts';

/** What goes wrong is said by us, once, and not on the console. */
Logging.level = LogLevel.Silent;

const FORMATS = [MP4, QTFF, MATROSKA, WEBM, MPEG_TS];

/** @param file absolute path of a regular file */
export async function readClip(file: string): Promise<ClipReading> {
  let handle: FileHandle;
  try {
    handle = await open(file, 'r');
  } catch (cause) {
    const { why, detail } = reasonOf(cause);
    return why === 'not-found'
      ? { state: 'not-found' }
      : { state: 'unreadable', why: detail, fault: 'refused' };
  }
  try {
    return { state: 'read', facts: await factsOf(handle, file) };
  } catch (cause) {
    if (cause instanceof Unreadable)
      return { state: 'unreadable', why: cause.message, fault: cause.fault };
    // What the library says of its own insides helps nobody who holds a camera.
    return { state: 'unreadable', why: later`its contents are broken`, fault: 'damaged' };
  } finally {
    await handle.close();
  }
}

async function factsOf(handle: FileHandle, file: string): Promise<ClipFacts> {
  const { size: bytes } = await handle.stat();
  if (bytes === 0) throw new Unreadable(later`it is empty`);
  const head = await readAt(handle, 0, 12);
  if (isAvi(head)) return plainFacts(bytes, await aviFacts(handle, bytes));
  if (isMxf(head)) return plainFacts(bytes, await mxfFacts(handle, bytes));
  const still = pictureKind(head);
  if (still) {
    const facts = await pictureFacts(handle, bytes, still);
    return { bytes, rotation: 0, bitsPerS: 0, ...settingsFrom({}, null), ...facts };
  }
  const other = otherContainer(head);
  if (other !== null)
    throw new Unreadable(message`its container, ${other}, is not supported`, 'unsupported');
  const input = new Input({ formats: FORMATS, source: new FilePathSource(file) });
  try {
    return await fromInput(input, handle, bytes);
  } finally {
    input.dispose();
  }
}

/** Of what is read here without the library: none of it carries settings that are known. */
function plainFacts(
  bytes: number,
  facts: Awaited<ReturnType<typeof aviFacts | typeof mxfFacts>>,
): ClipFacts {
  const bitsPerS = meanBitsPerS(bytes, facts.durationS);
  return { bytes, rotation: 0, bitsPerS, ...settingsFrom({}, null), ...facts };
}

async function fromInput(input: Input, handle: FileHandle, bytes: number): Promise<ClipFacts> {
  if (!(await input.canRead())) throw new Unreadable(later`it is not a clip in a supported format`);
  const format = await input.getFormat();
  const isIsoMedia = format === MP4 || format === QTFF;
  const boxes = isIsoMedia ? await isoMediaFacts(handle, bytes) : null;
  if (boxes && !boxes.hasIndex)
    throw new Unreadable(
      later`it is cut off: the index of its frames, which comes last, is missing`,
    );
  if (boxes?.isCutOff) throw new Unreadable(later`it is cut off: its end is missing`);
  const isMatroska = format === MATROSKA || format === WEBM;
  if (isMatroska && (await isMatroskaCutOff(handle, bytes)))
    throw new Unreadable(later`it is cut off: its end is missing`);
  const track = await input.getPrimaryVideoTrack();
  if (!track) throw await whyNoTrack(handle, format === MPEG_TS);
  const edit = boxes?.video?.edit ?? null;
  const durationS = edit && edit.shownS > 0 ? edit.shownS : await durationOf(track);
  const { rate, gaps } = await rateOf(track, boxes?.video ?? null);
  const rateFps = rate === null ? null : rate.kind === 'constant' ? toNumber(rate.rate) : rate.mean;
  const tags = (await input.getMetadataTags()).raw ?? {};
  const settings = settingsFrom(tags, rateFps);
  const [size, codec] = [await sizeOf(track), await codecOf(track)];
  const startTimecode =
    boxes?.video?.timecode ??
    taggedTimecode(tags, rate) ??
    (format === MPEG_TS ? await timecodeInStream(track, codec, rate) : null);
  const container = boxes?.video
    ? isoPicture(boxes.video.track)
    : isMatroska
      ? await matroskaPicture(handle, track.id)
      : {};
  return {
    bytes,
    size,
    rotation: await track.getRotation(),
    rate,
    codec,
    durationS,
    bitsPerS: meanBitsPerS(bytes, durationS),
    ...settings,
    created: settings.created ?? boxes?.created ?? null,
    ...(startTimecode && { startTimecode }),
    ...(edit && { edit }),
    ...(gaps.length > 0 && { gaps }),
    picture: await pictureOf(track, { codec, size }, container),
  };
}

/** Matroska has no track of timecode, but a tag of that name (RFC 9559's registry of tags). */
function taggedTimecode(
  tags: Readonly<Record<string, unknown>>,
  rate: ClipFacts['rate'],
): ClipTimecode | null {
  const { TIMECODE: written } = tags;
  return typeof written === 'string' && rate?.kind === 'constant'
    ? writtenTimecode(written, rate.rate)
    : null;
}

async function timecodeInStream(
  track: InputVideoTrack,
  codec: string,
  rate: ClipFacts['rate'],
): Promise<ClipTimecode | null> {
  const packet = await new EncodedPacketSink(track).getFirstPacket();
  return packet && rate?.kind === 'constant' ? codedTimecode(codec, packet.data, rate.rate) : null;
}

/** Copying helps against none of it. */
async function whyNoTrack(handle: FileHandle, isStream: boolean): Promise<Unreadable> {
  const coding = isStream ? await streamCoding(handle) : null;
  return coding === null
    ? new Unreadable(later`it contains no video`, 'unsupported')
    : new Unreadable(
        message`its encoding, ${coding}, is not supported in this container`,
        'unsupported',
      );
}

async function durationOf(track: InputVideoTrack): Promise<number> {
  const first = await new EncodedPacketSink(track).getFirstPacket({ metadataOnly: true });
  if (!first) throw new Unreadable(later`it contains no frames`);
  const durationS = (await track.computeDuration()) - (await track.getFirstTimestamp());
  if (!(durationS > 0)) throw new Unreadable(later`it contains no frames`);
  return durationS;
}

const sizeOf = async (track: InputVideoTrack): Promise<ClipFacts['size']> => ({
  width: await track.getCodedWidth(),
  height: await track.getCodedHeight(),
});

/** As the library names it, else by the container's own code. */
async function codecOf(track: InputVideoTrack): Promise<string> {
  const named = await track.getCodec();
  const code = await track.getInternalCodecId();
  const written = named ?? (typeof code === 'string' ? code : null);
  if (written === null) return 'not known';
  return codecFamily(written) ?? written;
}
