/**
 * The edit as OpenTimelineIO writes it (its published JSON schema, version 0.15 and later): one video
 * track of clips and dissolves, beats as markers on it.
 *
 * Ranges of clips are as long as the cut is in the edit, in frames of the delivery, and a time warp
 * says how fast the clip is read: readers add such ranges up. OpenTimelineIO has no ramp; a ramp is
 * a warp of its mean speed, which uses the same source to the frame, and keeps both speeds in its
 * metadata. A finished stack is a clip of one frame that a freeze holds.
 */
import type { CutFigures, EditFigures } from '../figures/edit-figures.ts';
import { beatsBefore } from '../timeline/beats.ts';
import {
  type Exact,
  exact,
  fromRational,
  nearestWhole,
  over,
  plus,
  times,
  toNumber,
  ZERO,
} from '../timeline/exact.ts';
import { print } from './json.ts';

/** More beats than a reader of the file would want; none are written beyond. */
const MOST_MARKERS = 10_000;

const OURS = 'lamella';

type Schema = Readonly<Record<string, unknown>> & { readonly OTIO_SCHEMA: string };

/** @returns null where a cut has no place, so that nothing could be laid out */
export function otio(edit: EditFigures, title: string): string | null {
  const { rate, cuts } = edit;
  if (!rate.known || !edit.totalFrames.known) return null;
  const fps = fromRational(rate.value);
  const time = (value: Exact): Schema => ({
    OTIO_SCHEMA: 'RationalTime.1',
    rate: toNumber(fps),
    value: toNumber(value),
  });
  const range = (start: Exact, duration: Exact): Schema => ({
    OTIO_SCHEMA: 'TimeRange.1',
    start_time: time(start),
    duration: time(duration),
  });
  const inFrames = (seconds: Exact): Exact => times(seconds, fps);
  const item = (schema: string, name: string, more: Readonly<Record<string, unknown>>): Schema => ({
    OTIO_SCHEMA: schema,
    metadata: {},
    name,
    ...more,
  });
  const children = cuts.flatMap((cut) => [
    ...dissolve(cut, item, time),
    clip(cut, { item, range, inFrames }),
  ]);
  const track = item('Track.1', 'cuts', {
    ...PLAIN,
    kind: 'Video',
    markers: beats(edit, fps).map(({ frame, name }) =>
      item('Marker.2', name, { color: 'GREEN', comment: '', marked_range: range(frame, ZERO) }),
    ),
    children,
  });
  return print(
    item('Timeline.1', title, {
      // By it the command line knows what it may replace: `server/files/own-output.ts`.
      metadata: { [OURS]: { made: 'timeline' } },
      global_start_time: time(ZERO),
      tracks: item('Stack.1', 'tracks', { ...PLAIN, children: [track] }),
    }),
  );
}

const PLAIN = { source_range: null, effects: [], markers: [], enabled: true } as const;

type Item = (schema: string, name: string, more: Readonly<Record<string, unknown>>) => Schema;

function dissolve(
  { join, name }: CutFigures,
  item: Item,
  time: (frames: Exact) => Schema,
): readonly Schema[] {
  if (!join.known || join.value.before + join.value.after === 0) return [];
  return [
    item('Transition.1', `dissolve into ${name}`, {
      transition_type: 'SMPTE_Dissolve',
      in_offset: time(exact(join.value.before)),
      out_offset: time(exact(join.value.after)),
    }),
  ];
}

interface Makers {
  readonly item: Item;
  readonly range: (start: Exact, duration: Exact) => Schema;
  readonly inFrames: (seconds: Exact) => Exact;
}

function clip(cut: CutFigures, { item, range, inFrames }: Makers): Schema {
  const { track, laid, fields, name, shot, clipFile, clipS, uncoveredFrames } = cut;
  const frames = track.known ? track.value.endFrame - track.value.startFrame : 0;
  const start = laid.known ? inFrames(laid.value.start) : ZERO;
  const isHeld = cut.footage?.isHeld === true;
  // A picture has one frame.
  const available = isHeld
    ? range(ZERO, exact(1))
    : clipS.known
      ? range(ZERO, inFrames(clipS.value))
      : null;
  const take = laid.known && !isHeld ? `${shot}, take ${laid.value.clip + 1}` : (shot ?? name);
  const written = {
    shot,
    ...(uncoveredFrames.known && { uncoveredFrames: uncoveredFrames.value }),
    ...(fields?.reframe.state === 'known' && { reframe: fields.reframe.value }),
    ...(fields?.grade.state === 'known' && { grade: fields.grade.value }),
  };
  return item('Clip.2', name, {
    ...PLAIN,
    metadata: { [OURS]: written },
    source_range: range(start, exact(frames)),
    effects: warp(cut, item),
    media_references: {
      DEFAULT_MEDIA: clipFile
        ? item('ExternalReference.1', take, {
            available_range: available,
            target_url: urlOf(clipFile),
          })
        : item('MissingReference.1', take, { available_range: available }),
    },
    active_media_reference_key: 'DEFAULT_MEDIA',
  });
}

const urlOf = (path: string): string => path.split(/[/\\]/).map(encodeURIComponent).join('/');

function warp({ speed, footage }: CutFigures, item: Item): readonly Schema[] {
  if (footage?.isHeld)
    return [
      item('FreezeFrame.1', 'hold', { effect_name: 'FreezeFrame', enabled: true, time_scalar: 0 }),
    ];
  if (!speed.known) return [];
  const { from, to } = speed.value;
  const mean = toNumber(over(plus(from, to), exact(2)));
  const isRamp = from.n * to.d !== to.n * from.d;
  if (!isRamp && mean === 1) return [];
  return [
    item('LinearTimeWarp.1', isRamp ? 'ramp' : 'speed', {
      effect_name: 'LinearTimeWarp',
      enabled: true,
      time_scalar: mean,
      ...(isRamp && {
        metadata: { [OURS]: { ramp: { from: toNumber(from), to: toNumber(to) } } },
      }),
    }),
  ];
}

/** Beats of the music by frame; the first of a bar says so. */
function beats(
  { music, totalFrames }: EditFigures,
  fps: Exact,
): readonly { readonly frame: Exact; readonly name: string }[] {
  if (!music.known || !totalFrames.known) return [];
  const { bar = 1 } = music.value;
  return beatsBefore(music.value, fps, totalFrames.value, MOST_MARKERS)
    .map(({ frame, isBar }, index) => ({
      frame: exact(nearestWhole(frame)),
      name: isBar ? `bar ${index / bar + 1}` : `beat ${index + 1}`,
    }))
    .filter(({ frame }) => toNumber(frame) < totalFrames.value);
}
