/**
 * A reader of OpenTimelineIO, written from its published specification (opentimelineio.readthedocs.io:
 * file format, time ranges, transitions, time warps): children of a track follow each other by the
 * lengths of their ranges; a transition takes no time, and reaches `in_offset` back and `out_offset`
 * on from where it stands; a linear time warp multiplies the time since the range's start.
 */
import {
  type ReadDissolve,
  type ReadTimeline,
  type Segment,
  type ShownAt,
  type ShownFrame,
  within,
} from './shown.ts';

interface Time {
  readonly value: number;
  readonly rate: number;
}

export interface OtioItem {
  readonly OTIO_SCHEMA: string;
  readonly name: string;
  readonly kind?: string;
  readonly children: readonly OtioItem[];
  readonly source_range: { readonly start_time: Time; readonly duration: Time } | null;
  readonly effects: readonly { readonly OTIO_SCHEMA: string; readonly time_scalar: number }[];
  readonly media_references: Readonly<Record<string, OtioReference>>;
  readonly active_media_reference_key: string;
  readonly in_offset: Time;
  readonly out_offset: Time;
}

interface OtioReference {
  readonly OTIO_SCHEMA: string;
  readonly name: string;
  readonly target_url?: string;
  readonly available_range: { readonly start_time: Time; readonly duration: Time } | null;
}

/** Times are doubles: what is within so much of a frame is on it. */
const NEAR = 1e-9;

/** A number of frames of the edit. */
function inFrames({ value, rate }: Time, fps: number): number {
  const frames = (value / rate) * fps;
  if (Math.abs(frames - Math.round(frames)) > NEAR)
    throw new Error(`${value} at ${rate}: no frame`);
  return Math.round(frames);
}

/** @param fps of the edit */
export function readOtio(text: string, fps: number): ReadTimeline {
  const timeline = JSON.parse(text) as { readonly tracks: OtioItem };
  const video = timeline.tracks.children.find(({ kind }) => kind === 'Video')!;
  return readTrack(video, fps);
}

function readTrack({ children }: OtioItem, fps: number): ReadTimeline {
  const items = children.filter((child) => child.OTIO_SCHEMA !== 'Transition.1');
  const frames: ShownAt[] = [];
  const starts = items.map((each) => {
    const start = frames.length;
    const length = inFrames(each.source_range!.duration, fps);
    for (let at = 0; at < length; at++) frames.push({ own: shownAt(each, at, fps) });
    return start;
  });
  const dissolves = children.flatMap((child, index): ReadDissolve[] => {
    if (child.OTIO_SCHEMA !== 'Transition.1') return [];
    const [before, after] = [children[index - 1], children[index + 1]];
    if (!before || !after) throw new Error('a transition at the end of its track');
    const cut = starts[items.indexOf(after)]!;
    const from = cut - inFrames(child.in_offset, fps);
    const to = cut + inFrames(child.out_offset, fps);
    // Neither reaches past the items on its sides (documentation of transitions).
    if (
      from < starts[items.indexOf(before)]! ||
      to > (starts[items.indexOf(after) + 1] ?? frames.length)
    )
      throw new Error(`${child.name} reaches past its clips`);
    for (let at = from; at < to; at++)
      frames[at] = {
        own: shownAt(after, at - cut, fps),
        out: shownAt(before, at - starts[items.indexOf(before)]!, fps),
      };
    return [{ from, to, into: after.name }];
  });
  const segments = items.flatMap((item, index) => segmentsOf(item, starts[index]!, fps));
  return { frames, dissolves, segments };
}

/** @param from frame of the edit at which it begins */
function segmentsOf(item: OtioItem, from: number, fps: number): readonly Segment[] {
  if (item.OTIO_SCHEMA === 'Gap.1') return [];
  const range = item.source_range!;
  const frames = inFrames(range.duration, fps);
  if (item.OTIO_SCHEMA === 'Stack.1') {
    const skipped = inFrames(range.start_time, fps);
    const inside = readTrack(item.children[0]!, fps).segments;
    return inside.flatMap((each) => {
      const moved = { ...each, from: each.from - skipped + from };
      return within(moved, from, from + frames) ?? [];
    });
  }
  const { clip, first, perFrame } = playing(item, fps);
  return [{ clip, from, frames, place: range.start_time.value - first, perFrame }];
}

/** What a clip is of, and how many of its frames a frame of the edit takes. */
function playing(item: OtioItem, fps: number) {
  const { start_time: start } = item.source_range!;
  const scalar = item.effects.reduce((product, { time_scalar: each }) => product * each, 1);
  const reference = item.media_references[item.active_media_reference_key]!;
  const first = reference.available_range?.start_time.value ?? 0;
  return { clip: reference.name, first, perFrame: (scalar * start.rate) / fps };
}

/** @param at frame of the edit from the item's start, negative before it */
function shownAt(item: OtioItem, at: number, fps: number): ShownFrame | null {
  switch (item.OTIO_SCHEMA) {
    case 'Gap.1':
      return null;
    case 'Stack.1': {
      const inside = readTrack(item.children[0]!, fps);
      return inside.frames[inFrames(item.source_range!.start_time, fps) + at]!.own;
    }
    case 'Clip.2': {
      const { start_time: start } = item.source_range!;
      if (!Number.isInteger(start.value)) throw new Error(`${item.name} starts within a frame`);
      const { clip, first, perFrame } = playing(item, fps);
      return { clip, frame: start.value + Math.floor(at * perFrame + NEAR) - first };
    }
    default:
      throw new Error(`no item of a track: ${item.OTIO_SCHEMA}`);
  }
}
