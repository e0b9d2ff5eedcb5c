/**
 * The edit as OpenTimelineIO writes it (its published JSON schema, version 0.15 and later): a video
 * track of clips, gaps and dissolves, and a track for the music with its beats.
 *
 * A range starts on a whole frame of its clip, counted at the clip's own rate from its timecode. It
 * is as long as the cut is in the edit, in frames of the edit, and a time warp says how fast the clip
 * is read: readers add such lengths up. OpenTimelineIO has no ramp, so a ramp is a run of clips of
 * constant speed. They lie in a stack of their own only where a dissolve is longer than one of them.
 */

import type { Rational } from '../../quantity/rational.ts';
import { fromRational, over, toNumber } from '../../timeline/exact.ts';
import { type Piece, piecesOf } from '../../timeline/pieces.ts';
import {
  firstFrameOf,
  type LaidCut,
  type Material,
  type Programme,
} from '../../timeline/programme.ts';
import { print } from '../json.ts';
import { beatMarks } from './beats.ts';

const OURS = 'lamella';

type Schema = Readonly<Record<string, unknown>> & { readonly OTIO_SCHEMA: string };

const PLAIN = { source_range: null, effects: [], markers: [], enabled: true } as const;

const fps = ({ n, d }: Rational): number => n / d;

const time = (value: number, rate: Rational): Schema => ({
  OTIO_SCHEMA: 'RationalTime.1',
  rate: fps(rate),
  value,
});

/** Its beginning in frames of one rate and its length in frames of another. */
const range = (
  start: number,
  startRate: Rational,
  duration: number,
  durationRate: Rational,
): Schema => ({
  OTIO_SCHEMA: 'TimeRange.1',
  start_time: time(start, startRate),
  duration: time(duration, durationRate),
});

const item = (schema: string, name: string, more: Readonly<Record<string, unknown>>): Schema => ({
  OTIO_SCHEMA: schema,
  metadata: {},
  name,
  ...more,
});

export function otio(programme: Programme): string {
  const { title, rate, start, cuts } = programme;
  const children = cuts.flatMap((cut, index) => [
    ...dissolve(cut, rate),
    ...shown(
      cut,
      cuts[index + 1]?.dissolve.before ?? 0,
      cuts[index + 1]?.dissolve.after ?? 0,
      rate,
    ),
  ]);
  const tracks = [
    item('Track.1', 'cuts', { ...PLAIN, kind: 'Video', children }),
    ...musicTrack(programme),
  ];
  return print(
    item('Timeline.1', title, {
      // By it the command line knows what it may replace: `server/files/own-output.ts`.
      metadata: { [OURS]: { made: 'timeline' } },
      global_start_time: time(start.frame, rate),
      tracks: item('Stack.1', 'tracks', { ...PLAIN, children: tracks }),
    }),
  );
}

function dissolve(
  { dissolve: { before, after }, name }: LaidCut,
  rate: Rational,
): readonly Schema[] {
  if (before + after === 0) return [];
  return [
    item('Transition.1', `dissolve into ${name}`, {
      transition_type: 'SMPTE_Dissolve',
      in_offset: time(before, rate),
      out_offset: time(after, rate),
    }),
  ];
}

/** A cut: a clip, or the pieces of its ramp, and a gap where its clip has nothing more. */
function shown(
  cut: LaidCut,
  nextBefore: number,
  nextAfter: number,
  rate: Rational,
): readonly Schema[] {
  const { covered, dissolve: own, course, endFrame, startFrame } = cut;
  const missing = endFrame - startFrame - covered;
  const gap =
    missing > 0
      ? [item('Gap.1', cut.name, { ...PLAIN, source_range: range(0, rate, missing, rate) })]
      : [];
  if (covered === 0) return gap;
  const stretch = {
    ...{ from: 0, to: covered, before: own.before, after: nextAfter },
    rate: fromRational(rate),
  };
  const pieces = piecesOf(course, stretch);
  const fits =
    pieces !== null &&
    (pieces.length === 1 ||
      (pieces[0]!.frames >= own.after && pieces.at(-1)!.frames >= nextBefore));
  const clips = fits
    ? pieces.map((piece, index) => clip(cut, piece, rate, pieces.length > 1 ? index + 1 : null))
    : [nested(cut, nextAfter, rate)];
  return [...clips, ...gap];
}

/** The pieces of a ramp, handles and all, as one thing that dissolves can cross. */
function nested(cut: LaidCut, after: number, rate: Rational): Schema {
  const { before } = cut.dissolve;
  const whole = {
    ...{ from: -before, to: cut.covered + after, before: 0, after: 0 },
    rate: fromRational(rate),
  };
  const pieces = piecesOf(cut.course, whole) ?? [];
  return item('Stack.1', cut.name, {
    ...PLAIN,
    source_range: range(before, rate, cut.covered, rate),
    children: [
      item('Track.1', cut.name, {
        ...PLAIN,
        kind: 'Video',
        children: pieces.map((piece, index) => clip(cut, piece, rate, index + 1)),
      }),
    ],
  });
}

/** @param number of the piece of a ramp; null: the cut is one piece */
function clip(cut: LaidCut, piece: Piece, rate: Rational, number: number | null): Schema {
  const { material, name } = cut;
  const first = firstFrameOf(material);
  return item('Clip.2', name, {
    ...PLAIN,
    metadata: { [OURS]: metadata(cut, number) },
    source_range: range(first + piece.start, material.rate, piece.frames, rate),
    effects: warp(cut, piece, rate),
    media_references: { DEFAULT_MEDIA: reference(material, first) },
    active_media_reference_key: 'DEFAULT_MEDIA',
  });
}

function metadata(cut: LaidCut, piece: number | null): Readonly<Record<string, unknown>> {
  const { shot, speed, reframe, grade, about, covered, startFrame, endFrame } = cut;
  const uncoveredFrames = endFrame - startFrame - covered;
  return {
    shot,
    ...(uncoveredFrames > 0 && { uncoveredFrames }),
    ...(reframe !== null && { reframe }),
    ...(grade !== null && { grade }),
    ...(about !== null && { about }),
    ...(piece !== null && {
      ramp: {
        from: toNumber(speed.from),
        to: toNumber(speed.to),
        frames: endFrame - startFrame,
        piece,
      },
    }),
  };
}

function reference(material: Material, first: number): Schema {
  const { name, url, frames, plannedFrames, rate, isStill } = material;
  const known = isStill ? 1 : url === null ? plannedFrames : frames;
  const available_range = known === null ? null : range(first, rate, known, rate);
  return url === null
    ? item('MissingReference.1', name, { available_range })
    : item('ExternalReference.1', name, { available_range, target_url: url });
}

/** As shares of real time; nothing at real time. */
function warp({ material }: LaidCut, { perFrame }: Piece, rate: Rational): readonly Schema[] {
  if (material.isStill)
    return [
      item('FreezeFrame.1', 'still', { effect_name: 'FreezeFrame', enabled: true, time_scalar: 0 }),
    ];
  const scalar = toNumber(over(perFrame, over(fromRational(material.rate), fromRational(rate))));
  if (scalar === 1) return [];
  return [
    item('LinearTimeWarp.1', 'speed', {
      effect_name: 'LinearTimeWarp',
      enabled: true,
      time_scalar: scalar,
    }),
  ];
}

/** A track as long as the edit, with the beats as its markers. */
function musicTrack(programme: Programme): readonly Schema[] {
  const { music, rate, frames } = programme;
  if (!music) return [];
  const markers = beatMarks(programme).map(({ frame, name }) =>
    item('Marker.2', name, {
      color: 'GREEN',
      comment: '',
      marked_range: range(frame, rate, 0, rate),
    }),
  );
  const { tempo, firstBeat, bar } = music;
  const song = item('Clip.2', 'music', {
    ...PLAIN,
    metadata: {
      [OURS]: {
        tempoBpm: toNumber(tempo),
        firstBeatS: toNumber(firstBeat),
        ...(bar !== undefined && { beatsPerBar: bar }),
      },
    },
    source_range: range(0, rate, frames, rate),
    markers,
    media_references: {
      DEFAULT_MEDIA: item('MissingReference.1', 'music', { available_range: null }),
    },
    active_media_reference_key: 'DEFAULT_MEDIA',
  });
  return [item('Track.1', 'music', { ...PLAIN, kind: 'Audio', children: [song] })];
}
