/** The rate of a clip, and the frames that are missing from it. */
import { EncodedPacketSink, type InputVideoTrack } from 'mediabunny';
import type { ClipGap, ClipRate } from '../../shared/clips/facts.ts';
import { gapsIn } from '../../shared/clips/gaps.ts';
import { exactRate } from '../../shared/clips/rate.ts';
import type { IsoVideo } from './iso-media.ts';

/** Frames that the rate is judged by: two minutes and more. Without an index each has to be read. */
const JUDGED_FRAMES = 6000;

interface JudgedRate {
  /** null: too few frames to tell. */
  readonly rate: ClipRate | null;
  readonly gaps: readonly ClipGap[];
}

/** @param iso where the file has a table of its frames: all of them are judged for gaps */
export async function rateOf(track: InputVideoTrack, iso: IsoVideo | null): Promise<JudgedRate> {
  const metrics = await track.computeFrameRateMetrics({ targetPacketCount: JUDGED_FRAMES });
  if (metrics.probedPacketCount < 2) return { rate: null, gaps: [] };
  const { underlyingFrameRate, frameRateIsConstant } = metrics;
  const exact = underlyingFrameRate === null ? null : exactRate(underlyingFrameRate);
  if (exact && underlyingFrameRate !== null) {
    const starts = await startsOf(track, iso, frameRateIsConstant);
    const gaps = starts && gapsIn(starts, underlyingFrameRate);
    if (gaps) return { rate: { kind: 'constant', rate: exact }, gaps };
    if (!starts && frameRateIsConstant)
      return { rate: { kind: 'constant', rate: exact }, gaps: [] };
  }
  const { minFrameRate: lowest, maxFrameRate: highest, averageFrameRate: mean } = metrics;
  return { rate: { kind: 'variable', lowest, highest, mean }, gaps: [] };
}

/** When its frames are shown, s, ascending; null: nothing more is known than the library found. */
async function startsOf(
  track: InputVideoTrack,
  iso: IsoVideo | null,
  isConstant: boolean,
): Promise<Float64Array | null> {
  if (iso?.times && iso.track.timescale > 0)
    return iso.times.starts.map((start) => start / iso.track.timescale);
  if (isConstant) return null;
  const starts: number[] = [];
  const packets = new EncodedPacketSink(track).packets(undefined, undefined, {
    metadataOnly: true,
  });
  for await (const { timestamp } of packets) {
    starts.push(timestamp);
    if (starts.length >= JUDGED_FRAMES) break;
  }
  return Float64Array.from(starts).sort();
}
