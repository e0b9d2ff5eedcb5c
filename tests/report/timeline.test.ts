/**
 * The edit as OpenTimelineIO and as a shot list. Read back here by a reader of its own that knows
 * OpenTimelineIO's published JSON schema (opentimelineio.readthedocs.io, file format and schema
 * documentation; sample files of github.com/AcademySoftwareFoundation/OpenTimelineIO): which keys a
 * schema has, and that a track is as long as its clips, dissolves taking no time.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MUSIC, withEdit } from '../support/edits.ts';
import { coreWith, PLAN } from '../support/plans.ts';

/** Keys by schema, as published sample files write them. */
const KEYS: Readonly<Record<string, readonly string[]>> = {
  'Timeline.1': ['metadata', 'name', 'global_start_time', 'tracks'],
  'Stack.1': ['metadata', 'name', 'source_range', 'effects', 'markers', 'enabled', 'children'],
  'Track.1': [
    'metadata',
    'name',
    'source_range',
    'effects',
    'markers',
    'enabled',
    'children',
    'kind',
  ],
  'Clip.2': [
    'metadata',
    'name',
    'source_range',
    'effects',
    'markers',
    'enabled',
    'media_references',
    'active_media_reference_key',
  ],
  'Transition.1': ['metadata', 'name', 'in_offset', 'out_offset', 'transition_type'],
  'LinearTimeWarp.1': ['metadata', 'name', 'effect_name', 'time_scalar', 'enabled'],
  'FreezeFrame.1': ['metadata', 'name', 'effect_name', 'time_scalar', 'enabled'],
  'Marker.2': ['metadata', 'name', 'color', 'comment', 'marked_range'],
  'ExternalReference.1': ['metadata', 'name', 'available_range', 'target_url'],
  'MissingReference.1': ['metadata', 'name', 'available_range'],
  'RationalTime.1': ['rate', 'value'],
  'TimeRange.1': ['start_time', 'duration'],
};

type Json = Readonly<Record<string, unknown>>;

const isRecord = (value: unknown): value is Json =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** Every object of the file that names its schema has that schema's keys and no others. */
function checkSchemas(value: unknown): void {
  if (Array.isArray(value)) for (const item of value) checkSchemas(item);
  if (!isRecord(value)) return;
  const schema = value.OTIO_SCHEMA;
  if (typeof schema === 'string') {
    expect(Object.keys(KEYS), schema).toContain(schema);
    const keys = Object.keys(value).filter((key) => key !== 'OTIO_SCHEMA');
    expect(keys.sort(), schema).toEqual([...KEYS[schema]!].sort());
  }
  for (const [key, inner] of Object.entries(value)) if (key !== 'metadata') checkSchemas(inner);
}

interface Time {
  readonly value: number;
  readonly rate: number;
}

interface Child {
  readonly OTIO_SCHEMA: string;
  readonly name: string;
  readonly in_offset: Time;
  readonly out_offset: Time;
  readonly source_range: { readonly start_time: Time; readonly duration: Time };
  readonly effects: readonly (Json & { readonly time_scalar: number })[];
  readonly media_references: Readonly<Record<string, Json>>;
  readonly active_media_reference_key: string;
}

interface Marker {
  readonly name: string;
  readonly marked_range: { readonly start_time: Time };
}

interface ReadClip {
  readonly name: string;
  readonly start: number;
  readonly frames: number;
  /** Seconds of source, by the warp. */
  readonly sourceS: number;
  readonly from: number;
  readonly media: Json;
  readonly effects: readonly Json[];
}

function readBack(text: string) {
  const file = JSON.parse(text);
  checkSchemas(file);
  const [track, ...others] = file.tracks.children;
  expect(others).toEqual([]);
  let start = 0;
  const clips: ReadClip[] = [];
  const dissolves: { readonly at: number; readonly before: number; readonly after: number }[] = [];
  (track.children as readonly Child[]).forEach((child, index) => {
    if (child.OTIO_SCHEMA === 'Transition.1') {
      // A transition stands between two clips.
      expect(track.children[index + 1]?.OTIO_SCHEMA).toBe('Clip.2');
      const { in_offset: before, out_offset: after } = child;
      dissolves.push({ at: start, before: before.value, after: after.value });
      return;
    }
    const { name, source_range: range, effects } = child;
    const scalar = effects[0]?.time_scalar ?? 1;
    clips.push({
      name,
      start,
      frames: range.duration.value,
      sourceS: (range.duration.value / range.duration.rate) * scalar,
      from: range.start_time.value / range.start_time.rate,
      media: child.media_references[child.active_media_reference_key]!,
      effects,
    });
    start += range.duration.value;
  });
  return { file, track, clips, dissolves, frames: start };
}

const exported = (text: string, format: 'otio' | 'csv' = 'otio') =>
  coreWith(text).timeline(PLAN, format);

const otioOf = (text: string) => {
  const made = exported(text);
  if (!made.ok) throw new Error(made.why);
  return readBack(made.text);
};

const CUTS = [
  'one: { shot: skin, from: 2 s, duration: 2 bars }',
  'two: { shot: frost, duration: 3 beats, speed: 100 to 25 %, transition: dissolve 13 frames, grade: cold, reframe: 1.1x }',
  'three: { shot: skin, duration: 1 bar, speed: 50 % }',
];

describe('OpenTimelineIO', () => {
  it('has the cuts where the plan has them', () => {
    const { clips, dissolves, frames, file } = otioOf(withEdit(CUTS));
    const edit = coreWith(withEdit(CUTS)).editFigures(PLAN)!;
    expect(clips.map(({ name, start, frames: each }) => [name, start, each])).toEqual(
      edit.cuts.map(({ cut, startFrame, durationFrames }) => [cut, startFrame, durationFrames]),
    );
    expect(frames).toBe(edit.totalFrames);
    expect(dissolves).toEqual([{ at: 133, before: 6, after: 7 }]);
    expect(file.name).toBe('Winter Window');
  });

  it('reads the clips as far as the plan does, ramps by their mean speed', () => {
    const { clips } = otioOf(withEdit(CUTS));
    const edit = coreWith(withEdit(CUTS)).editFigures(PLAN)!;
    clips.forEach(({ from, sourceS }, index) => {
      expect(from).toBeCloseTo(edit.cuts[index]!.sourceStartS!, 9);
      // To half a frame at either end, which laying cuts on frames may move.
      expect(Math.abs(sourceS - edit.cuts[index]!.sourceS!)).toBeLessThanOrEqual(1 / 25);
    });
    expect(clips[1]?.effects[0]).toMatchObject({
      time_scalar: 0.625,
      metadata: { lamella: { ramp: { from: 1, to: 0.25 } } },
    });
    expect(clips[0]?.effects).toEqual([]);
    expect(clips[2]?.effects[0]).toMatchObject({ time_scalar: 0.5 });
  });

  it('refers to the clips that are kept, and says which take it means where none is listed', () => {
    const text = `${withEdit(CUTS)}
clips:
  skin:
    - { file: "media/day 1/0002.mp4", verdict: keep }
`;
    const { clips } = otioOf(text);
    expect(clips[0]?.media).toMatchObject({
      OTIO_SCHEMA: 'ExternalReference.1',
      target_url: 'media/day%201/0002.mp4',
      available_range: { duration: { value: 500, rate: 25 } },
    });
    expect(clips[1]?.media).toMatchObject({
      OTIO_SCHEMA: 'MissingReference.1',
      name: 'frost, take 1',
    });
  });

  it('marks the beats, and bars by their number', () => {
    const { track } = otioOf(withEdit(CUTS));
    const marks = (track.markers as readonly Marker[]).map((mark) => [
      mark.name,
      mark.marked_range.start_time.value,
    ]);
    // 90 bpm at 25 fps: 16 2/3 frames.
    expect(marks.slice(0, 6)).toEqual([
      ['bar 1', 0],
      ['beat 2', 17],
      ['beat 3', 33],
      ['beat 4', 50],
      ['bar 2', 67],
      ['beat 6', 83],
    ]);
    expect(marks).toHaveLength(15);
  });

  it('adds up to the plan’s own length, whatever is cut at whatever rate', () => {
    const cut = fc.record({
      shot: fc.constantFrom('frost', 'skin'),
      duration: fc.constantFrom('1 s', '2 bars', '3 beats', '7 frames', '31 s', '0.3 s'),
      speed: fc.constantFrom('100 %', '50 %', '20 to 400 %', '33.3 %'),
      join: fc.constantFrom('cut', 'dissolve 12 frames', 'dissolve 1 beat'),
    });
    fc.assert(
      fc.property(
        fc.array(cut, { minLength: 1, maxLength: 12 }),
        fc.constantFrom('25 fps', '29.97 fps', '23.976 fps', '60 fps'),
        (cuts, rate) => {
          const text = withEdit(
            cuts.map(
              (one, index) =>
                `c${index}: { shot: ${one.shot}, duration: ${one.duration}, speed: ${one.speed}, join: ${one.join} }`,
            ),
            ['music: { tempo: 117.55 bpm, bar: 3 beats }'],
            { 'deliver/rate': rate },
          );
          const edit = coreWith(text).editFigures(PLAN)!;
          const { frames, clips } = otioOf(text);
          expect(frames).toBe(edit.totalFrames);
          expect(clips.every((one) => one.frames >= 0)).toBe(true);
        },
      ),
      { numRuns: 40 },
    );
  });

  it('says why there is none', () => {
    expect(exported(withEdit([]))).toEqual({ ok: false, why: 'the plan has no edit with cuts' });
    expect(exported(withEdit(['one: { shot: skin }']))).toEqual({
      ok: false,
      why: "the cuts can't be placed yet: needs `duration` of one",
    });
  });

  it('of music faster than anything is written without its beats, and soon', () => {
    const { track } = otioOf(
      withEdit(['one: { shot: skin, duration: 4000 s }'], ['music: { tempo: 900000000 bpm }']),
    );
    expect(track.markers).toEqual([]);
  });
});

describe('the shot list', () => {
  it('has a line a cut, by RFC 4180', () => {
    const made = exported(withEdit(CUTS), 'csv');
    expect(made.ok && made.text.split('\r\n')).toEqual([
      'number,cut,shot,start timecode,end timecode,start frame,frames,begins with,speed,clip,source start s,source end s,frames uncovered,enlarged,grade,remark',
      '1,one,skin,00:00:00:00,00:00:05:08,0,133,cut,100%,take 1,2,7.333333,0,,,',
      '2,two,frost,00:00:05:08,00:00:07:08,133,50,dissolve 13 frames,100 to 25%,take 1,0.24,1.49,0,1.1,cold,',
      '3,three,skin,00:00:07:08,00:00:10:00,183,67,cut,50%,take 1,7.613333,8.946667,0,,,',
      '',
    ]);
  });

  it('holds nothing that a spreadsheet would act on', () => {
    const text = withEdit(
      ['one: { about: "=HYPERLINK(\\"x\\"), and more", shot: skin, duration: 1 s }'],
      [MUSIC],
    );
    const made = exported(text, 'csv');
    expect(made.ok && made.text).toContain('"\'=HYPERLINK(""x""), and more"');
  });
});
