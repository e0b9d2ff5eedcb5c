/**
 * The edit as OpenTimelineIO and as a shot list. Read back here by a reader of its own that knows
 * OpenTimelineIO's published JSON schema (opentimelineio.readthedocs.io, file format and schema
 * documentation; sample files of github.com/AcademySoftwareFoundation/OpenTimelineIO): which keys a
 * schema has, and that a track is as long as its clips, dissolves taking no time.
 */
import { describe, expect, it } from 'vitest';
import type { TimelineFormat, TimelineOptions } from '../../shared/api/timeline.ts';
import type { ClipFacts, ClipReading } from '../../shared/clips/facts.ts';
import { rational } from '../../shared/quantity/rational.ts';
import { MUSIC, withEdit } from '../support/edits.ts';
import { coreWith, PLAN } from '../support/plans.ts';
import type { OtioItem } from '../support/timelines/otio.ts';

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
  'Gap.1': ['metadata', 'name', 'source_range', 'effects', 'markers', 'enabled'],
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

interface Marker {
  readonly name: string;
  readonly marked_range: { readonly start_time: { readonly value: number } };
}

interface File {
  readonly name: string;
  readonly global_start_time: { readonly value: number; readonly rate: number };
  readonly tracks: { readonly children: readonly OtioItem[] };
}

function readBack(text: string) {
  const file = JSON.parse(text) as File;
  checkSchemas(file);
  const [video, music, ...others] = file.tracks.children;
  expect(others).toEqual([]);
  const clips = video!.children.filter(({ OTIO_SCHEMA }) => OTIO_SCHEMA === 'Clip.2');
  return { file, clips, music, media: clips.map(mediaOf) };
}

const mediaOf = ({ media_references: all, active_media_reference_key: key }: OtioItem) => all[key];

const schemas = (items: readonly OtioItem[]) => items.map(({ OTIO_SCHEMA }) => OTIO_SCHEMA);

const exported = (text: string, format: TimelineFormat = 'otio', options?: TimelineOptions) =>
  coreWith(text).timeline(PLAN, format, options);

function made(text: string, format: TimelineFormat = 'otio', options?: TimelineOptions) {
  const file = exported(text, format, options);
  if (!file.ok) throw new Error(file.why);
  return file;
}

const otioOf = (text: string, options?: TimelineOptions) =>
  readBack(made(text, 'otio', options).text);

const facts = (more: Partial<ClipFacts> = {}): ClipReading => ({
  state: 'read',
  facts: {
    ...{ bytes: 1, size: { width: 1920, height: 1080 }, rotation: 0, codec: 'h264', bitsPerS: 1 },
    ...{ rate: { kind: 'constant', rate: rational(50) }, durationS: 12 },
    ...{ shutterS: null, iso: null, whiteBalance: null, created: null },
    ...more,
  },
});

const CUTS = [
  'one: { shot: skin, from: 2 s, duration: 2 bars }',
  'two: { shot: frost, duration: 3 beats, speed: 100 to 25 %, transition: dissolve 13 frames, grade: cold, reframe: 1.1x }',
  'three: { shot: skin, duration: 1 bar, speed: 50 % }',
];

const KEPT = `
clips:
  skin:
    - { file: "media/day 1/0002.mp4", verdict: keep }
`;
const KEPT_FILE = 'media/day 1/0002.mp4';

describe('OpenTimelineIO', () => {
  it('has the cuts where the plan has them, a ramp as a run of clips', () => {
    const { clips, file } = otioOf(withEdit(CUTS));
    const edit = coreWith(withEdit(CUTS)).editFigures(PLAN)!;
    const lengths = new Map<string, number>();
    for (const { name, source_range: range } of clips)
      lengths.set(name, (lengths.get(name) ?? 0) + range!.duration.value);
    expect([...lengths]).toEqual(edit.cuts.map(({ cut, durationFrames }) => [cut, durationFrames]));
    expect(clips.filter(({ name }) => name === 'two').length).toBeGreaterThan(1);
    expect(clips.find(({ name }) => name === 'two')).toMatchObject({
      metadata: {
        lamella: { ramp: { from: 1, to: 0.25, frames: 50, piece: 1 }, grade: 'cold', reframe: 1.1 },
      },
    });
    expect(clips.find(({ name }) => name === 'three')?.effects).toMatchObject([
      { OTIO_SCHEMA: 'LinearTimeWarp.1', time_scalar: 0.5 },
    ]);
    expect(file.name).toBe('Winter Window');
  });

  it('counts each clip in its own frames, from its own timecode, as long as it is', () => {
    const readings = new Map([
      [
        KEPT_FILE,
        facts({ startTimecode: { frame: 90_000, rate: rational(25), dropFrame: false } }),
      ],
    ]);
    const { media, clips } = otioOf(withEdit(CUTS) + KEPT, { readings });
    // An hour at 25 counted frames a second is 180,000 of the clip's 50; it is 12 s long.
    expect(media[0]).toMatchObject({
      OTIO_SCHEMA: 'ExternalReference.1',
      target_url: 'media/day%201/0002.mp4',
      available_range: {
        start_time: { value: 180_000, rate: 50 },
        duration: { value: 600, rate: 50 },
      },
    });
    expect(clips[0]?.source_range).toMatchObject({
      start_time: { value: 180_100, rate: 50 },
      duration: { value: 133, rate: 25 },
    });
  });

  it('says nothing of a length that nobody read, and which take it means where none is listed', () => {
    const { media } = otioOf(withEdit(CUTS) + KEPT);
    expect(media[0]).toMatchObject({ available_range: null });
    expect(media[1]).toMatchObject({ OTIO_SCHEMA: 'MissingReference.1', name: 'frost, take 1' });
  });

  it('has the music as a track, with beats and bars by their number', () => {
    const { music } = otioOf(withEdit(CUTS));
    expect(music).toMatchObject({ kind: 'Audio' });
    const [song] = music!.children as readonly (OtioItem & { markers: readonly Marker[] })[];
    expect(song).toMatchObject({
      metadata: { lamella: { tempoBpm: 90, firstBeatS: 0, beatsPerBar: 4 } },
      source_range: { duration: { value: 250 } },
    });
    const marks = song!.markers.map((mark) => [mark.name, mark.marked_range.start_time.value]);
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

  it('starts at the timecode that is asked for, and at no other', () => {
    const { file } = otioOf(withEdit(CUTS), { startTimecode: '01:00:00:00' });
    expect(file.global_start_time).toMatchObject({ value: 90_000, rate: 25 });
    expect(exported(withEdit(CUTS), 'otio', { startTimecode: '01:00:00;00' })).toEqual({
      ok: false,
      why: '01:00:00;00 is not a timecode at 25 fps',
    });
  });

  it('puts a ramp into a stack where a dissolve crosses its pieces', () => {
    const text = withEdit([
      'one: { shot: skin, from: 2 s, duration: 2 bars }',
      'two: { shot: frost, from: 5 s, duration: 40 frames, speed: 400 to 20 %, transition: dissolve 40 frames }',
    ]);
    const { file } = otioOf(text);
    expect(schemas(file.tracks.children[0]!.children)).toEqual([
      'Clip.2',
      'Transition.1',
      'Stack.1',
    ]);
  });

  it('leaves empty what a clip lacks, and says so', () => {
    const readings = new Map([[KEPT_FILE, facts({ durationS: 4 })]]);
    const text = withEdit(['one: { shot: skin, from: 2 s, duration: 3 s }']) + KEPT;
    const { file } = otioOf(text, { readings });
    expect(schemas(file.tracks.children[0]!.children)).toEqual(['Clip.2', 'Gap.1']);
    expect(made(text, 'otio', { readings }).notes).toEqual([
      'The last 25 frames of one are left empty; 0002.mp4 ends before.',
    ]);
  });

  it('holds a still', () => {
    const text = `${withEdit([
      'one: { shot: skin, duration: 3 s }',
      'two: { shot: frost, duration: 3 s, transition: dissolve 12 frames }',
      'three: { shot: skin, duration: 3 s, transition: dissolve 12 frames }',
    ])}
clips:
  skin: [{ file: stacked.tif, verdict: keep }]
`;
    const { clips } = otioOf(text);
    expect(clips).toHaveLength(3);
    for (const format of ['otio', 'fcpxml', 'edl'] as const)
      expect(made(text, format).notes.join(), format).not.toContain('dissolve');
    // A frame of source at a speed of 0 (common practice for freeze frames in lists of this form).
    const list = made(text, 'edl');
    expect(list.text.split('\r\n')).toEqual(
      expect.arrayContaining([
        '001  AX       V     C        00:00:00:00 00:00:00:01 00:00:00:00 00:00:02:19',
        'M2   AX       000.0                00:00:00:00',
      ]),
    );
    expect(list.notes).toContain(
      'stacked.tif is one frame of its source in this list, held at a speed of 0.',
    );
    expect(clips[0]).toMatchObject({
      source_range: { start_time: { value: 0 }, duration: { value: 75 } },
      effects: [{ OTIO_SCHEMA: 'FreezeFrame.1', time_scalar: 0 }],
    });
  });

  it('says why there is none', () => {
    expect(exported(withEdit([]))).toEqual({ ok: false, why: 'the plan has no edit with cuts' });
    expect(exported(withEdit(['one: { shot: skin }']))).toEqual({
      ok: false,
      why: "the cuts can't be placed yet: needs `duration` of one",
    });
  });

  it('of music faster than anything is written without its beats, and soon', () => {
    const { music } = otioOf(
      withEdit(['one: { shot: skin, duration: 4000 s }'], ['music: { tempo: 900000000 bpm }']),
    );
    expect(music?.children[0]).toMatchObject({ markers: [] });
  });
});

describe('what a file has otherwise than the plan', () => {
  const notes = (cuts: readonly string[]) => made(withEdit(cuts)).notes;

  it.each([
    ['nothing', ['one: { shot: frost, duration: 4 s }', 'two: { shot: skin, duration: 4 s }'], []],
    [
      'a dissolve from nothing',
      ['one: { shot: frost, duration: 4 s, transition: dissolve 12 frames }'],
      ['The dissolve into one is left out; nothing comes before it.'],
    ],
    [
      'a clip from its first frame',
      [
        'one: { shot: frost, duration: 4 s }',
        'two: { shot: skin, from: 0.08 s, duration: 4 s, transition: dissolve 12 frames }',
      ],
      // Two frames of the clip before the cut, and as many and the odd one after it.
      [
        'The dissolve into two is 5 frames long instead of 12 frames; its clip has no more before the in point.',
      ],
    ],
    [
      'two dissolves on one short cut',
      [
        'one: { shot: frost, from: 2 s, duration: 4 s }',
        'two: { shot: skin, from: 2 s, duration: 8 frames, transition: dissolve 12 frames }',
        'three: { shot: frost, from: 10 s, duration: 4 s, transition: dissolve 12 frames }',
      ],
      [
        'The dissolve into three is 5 frames long instead of 12 frames; the previous cut is too short.',
      ],
    ],
    [
      'a cut of no frames',
      ['one: { shot: frost, duration: 4 s }', 'two: { shot: skin, duration: 0.01 s }'],
      ['two shows no frame and is left out.'],
    ],
  ] as const)('is said of %s', (_, cuts, said) => {
    expect(notes(cuts)).toEqual(said);
  });
});

describe('the shot list', () => {
  it('has a line a cut, by RFC 4180', () => {
    expect(made(withEdit(CUTS), 'csv').text.split('\r\n')).toEqual([
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
    const { text: list } = made(text, 'csv');
    expect(list).toContain('"\'=HYPERLINK(""x""), and more"');
  });

  // A formula begins with one of these in spreadsheets (OWASP, CSV injection), in full width too.
  it.each([
    ['＝1+1', "'＝1+1"],
    ['＋1', "'＋1"],
    ['＠SUM', "'＠SUM"],
    [' =1+1', "' =1+1"],
    ['a;=1+1', "a;'=1+1"],
    ['a; @x', "a;' @x"],
    ['-1', "'-1"],
    ['a = b', 'a = b'],
  ])('makes %s inert', (about, cell) => {
    const { text } = made(
      withEdit([`one: { about: "${about}", shot: skin, duration: 1 s }`]),
      'csv',
    );
    const last = text.split('\r\n')[1]!.split(',').at(-1)!;
    expect(last.replace(/^"(.*)"$/, '$1')).toBe(cell);
  });

  it('begins with a byte order mark where it is asked for, and at the timecode', () => {
    const { text } = made(withEdit(CUTS), 'csv', { bom: true, startTimecode: '10:00:00:00' });
    expect(text.startsWith('\ufeffnumber,')).toBe(true);
    expect(text).toContain('1,one,skin,10:00:00:00,10:00:05:08,');
  });
});

it('is written soon, however long the ramps and dissolves are', () => {
  const text = withEdit(
    [
      'one: { shot: skin, from: 900000 s, duration: 20000000 frames, speed: 100 to 25 % }',
      'two: { shot: frost, from: 900000 s, duration: 20000000 frames, speed: 33.3 %, transition: dissolve 10000000 frames }',
    ],
    [],
  );
  const core = coreWith(text);
  for (const format of ['otio', 'fcpxml', 'edl', 'csv'] as const)
    expect(core.timeline(PLAN, format).ok, format).toBe(true);
});

it('an EDL has no line that a text of the plan has made', () => {
  const line = '\\r\\n002  AX       V     C        00:00:00:00 00:00:01:00 00:00:00:00 00:00:01:00';
  const text = `${withEdit(
    [`one: { about: "x${line}\\u2028y\\u001b[31m", shot: skin, duration: 1 s, reframe: 1.1x }`],
    undefined,
    { title: `"t${line}"` },
  )}
clips:
  skin: [{ file: "a${line}.mov", verdict: keep }]
`;
  const [title, fcm, ...lines] = made(text, 'edl').text.split('\r\n');
  expect(title).toMatch(/^TITLE: t {2}002 {2}AX/);
  expect(title!.length).toBeLessThanOrEqual('TITLE: '.length + 70);
  expect(fcm).toBe('FCM: NON-DROP FRAME');
  expect(lines.filter((each) => each !== '' && !each.startsWith('* '))).toEqual([
    '001  AX       V     C        00:00:00:00 00:00:01:00 00:00:00:00 00:00:01:00',
  ]);
  expect(lines.join('')).toContain('\\u{2028}y\\u{1b}[31m');
});
