/**
 * Random days in random plans that are edited between two times of bringing them back. What the plan
 * says is read by the package `yaml`, which knows nothing of this project.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { bringBack } from '../../shared/bring-back/bring.ts';
import type { Day, DayTake } from '../../shared/bring-back/day.ts';
import { readDay } from '../../shared/bring-back/read.ts';
import { manyRuns } from '../support/runs.ts';

const NAME = 'a.shootplan.yaml';
const SHOTS = ['drift', 'still', 'rim-light'] as const;
const CHECKS = ['lens-clean', 'focus-at-full-size', 'background-clear'] as const;

/** Free text with everything that YAML takes for marks of its own. */
const prose = fc
  .string({
    unit: fc.constantFrom(...`ab 1:#-'"\\{}[],&*!|>%@\`?~=é\n\t`),
    minLength: 1,
    maxLength: 12,
  })
  .filter((text) => text.trim() !== '');
const moment = fc
  .record({ day: fc.constantFrom('02', '03'), minute: fc.integer({ min: 10, max: 59 }) })
  .map(({ day, minute }) => `2027-03-${day}T10:${minute}:00Z`);
const clip = fc.oneof(
  { weight: 5, arbitrary: fc.integer({ min: 1, max: 3 }).map((number) => `000${number}.mp4`) },
  { weight: 1, arbitrary: prose },
);
const rarely = <T>(one: fc.Arbitrary<T>) => fc.option(one, { nil: undefined });

const settings = fc.record(
  { iso: fc.constantFrom('1600', 'auto'), aperture: fc.constantFrom('f/11', 'f/8') },
  { requiredKeys: [] },
);
const values = {
  clip: rarely(clip),
  keep: fc.constantFrom(true, false, null),
  note: rarely(prose),
  used: rarely(fc.constantFrom('40 to 52 s', '0 to 1 min')),
  set: rarely(settings),
};

const days = fc.record({
  plan: fc.constant(NAME),
  saved: moment,
  planned: fc.record(
    Object.fromEntries(
      SHOTS.map((shot) => [
        shot,
        fc.record({ aperture: fc.constantFrom('f/16', 'f/8') }, { requiredKeys: [] }),
      ]),
    ),
    { requiredKeys: [] },
  ),
  checks: fc.uniqueArray(
    fc.record({
      shot: fc.constantFrom(null, ...SHOTS),
      check: fc.constantFrom(...CHECKS),
      done: fc.boolean(),
      at: moment,
      by: rarely(prose),
      before: fc.array(
        fc.constantFrom(
          { done: false },
          { done: true, at: '2027-03-01', by: 'ab' },
          { done: true, at: '2027-03-04', by: 'someone' },
        ),
        { maxLength: 2 },
      ),
    }),
    { maxLength: 5, selector: ({ shot, check }) => `${shot} ${check}` },
  ),
  takes: fc.uniqueArray(
    fc.record({
      shot: fc.constantFrom(...SHOTS),
      take: fc.integer({ min: 1, max: 4 }),
      at: moment,
      ...values,
      before: fc.array(fc.record(values), { maxLength: 2 }),
    }),
    { maxLength: 6, selector: ({ shot, take, at }) => `${shot} ${take} ${at}` },
  ),
  measurements: fc.array(
    fc.record({
      lens: fc.constant('long-200'),
      row: fc.record({
        with: fc.subarray(['body-a', 'tube-36']),
        ring: fc.constantFrom('closest', 'infinity'),
        field: fc.constantFrom('118 mm', '74.5 mm'),
      }),
      before: fc.constantFrom([], [{ field: '120 mm' }], [{ field: '143 mm' }]),
    }),
    { maxLength: 2 },
  ),
});

/** Sections as people write them: in blocks and in braces, with and without what is filled in. */
const plans = fc
  .record({
    eol: fc.constantFrom('\n', '\r\n'),
    bench: fc.constantFrom(
      '',
      '      bench:   # ruler\n        - { with: [body-a], ring: closest, field: 143 mm }   # steel\n',
      '      bench: []   # none yet\n',
      '      bench: [{ with: [body-a], ring: closest, from-sensor: 850 mm }]   # ruler\n',
    ),
    checks: fc.constantFrom(
      '',
      '    preflight: { lens-clean: open }   # both sides\n',
      '    preflight:   # of the shot\n      lens-clean: open   # both sides\n      background-clear: { done: 2027-03-01, by: ab }\n',
    ),
    once: fc.constantFrom(
      '',
      'preflight:\n  once:\n    lens-clean: open   # all\n  every-shot: [focus-at-full-size]   # always\n',
      'preflight: { once: { background-clear: open }, every-shot: [lens-clean] }   # short\n',
    ),
    clips: fc.constantFrom(
      '',
      'clips:   # card\n  drift:   # of the shot\n    - file: media/0001.mp4   # first\n      note: soft   # so\n\n    # the second\n    - { file: 0002.mp4, verdict: maybe }   # hm\n  # others\n',
      'clips: { still: [{ file: 0003.mp4, set: { iso: 800 } }] }   # short\n',
      'clips:\n  still: []   # none yet\n  drift:   # nor here\n',
    ),
    end: fc.constantFrom('', '# the end\n'),
  })
  .map(({ eol, bench, checks, once, clips, end }) =>
    `# a plan
shootplan: 1   # version
kit:
  lenses:
    long-200:   # borrowed
      focal-length: 200 mm   # marked
${bench}shots:
  # the quick one
  drift:
    aperture: f/16   # sharp
${checks}  still: { aperture: f/8 }   # short
  rim-light:
    aperture: f/11
${once}${clips}${end}`.replaceAll('\n', eol),
  );

/** What somebody does to a plan while the day is out. */
const EDITS: readonly ((text: string) => string)[] = [
  (text) => text.replace('f/16', 'f/13'),
  (text) => text.replace('verdict: keep', 'verdict: maybe'),
  (text) => text.replace('verdict: reject', 'verdict: keep'),
  (text) => text.replace('field: 118 mm', 'field: 120 mm'),
  (text) => text.replace('aperture: f/11,', 'aperture: f/5.6,'),
  (text) => text.replace('  rim-light:', '  extra: { aperture: f/8 }\n  rim-light:'),
  (text) => text.replace('lens-clean: open', 'lens-clean: { done: 2027-03-04, by: someone }'),
  (text) => `# on top\n${text}`,
];

const commentsOf = (text: string): readonly string[] => text.match(/(?<=^|[ ]{2,})# .*$/gm) ?? [];

type Tree = { readonly [key: string]: Tree | undefined } | readonly Tree[] | string | null;

/** All that a plan says, by path, each value as text. */
function leaves(value: unknown, path = ''): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  if (typeof value !== 'object' || value === null) return found.set(path, String(value));
  for (const [key, one] of Object.entries(value))
    for (const [at, text] of leaves(one, `${path}/${key}`)) found.set(at, text);
  return found;
}

const read = (text: string): Tree => parse(text, { schema: 'failsafe', version: '1.2' }) as Tree;

const dayOf = (document: unknown): Day => {
  const made = readDay(`lamella day 1\n${JSON.stringify(document)}`);
  if (!made.ok) throw new Error(made.whys.join());
  return made.day;
};

/** The values of a take that a clip of the plan doesn't say. */
function missing(take: DayTake, clip: Readonly<Record<string, unknown>>): readonly string[] {
  const wanted: Readonly<Record<string, unknown>> = {
    file: take.clip,
    take: String(take.take),
    time: take.at,
    verdict: take.keep === null ? null : take.keep ? 'keep' : 'reject',
    note: take.note,
    used: take.used,
  };
  const set = (clip.set ?? {}) as Readonly<Record<string, unknown>>;
  const says = (key: string, own: unknown, value: unknown) =>
    value === null || own === value || (key === 'file' && String(own).endsWith(`/${value}`));
  return [
    ...Object.entries(wanted).filter(([key, value]) => !says(key, clip[key], value)),
    ...[...take.set].filter(([key, value]) => !says(key, set[key], value)),
  ].map(([key]) => key);
}

function clipsOf(tree: Tree, shot: string): readonly Readonly<Record<string, unknown>>[] {
  const clips = (tree as { clips?: Record<string, never> }).clips?.[shot];
  return Array.isArray(clips) ? clips : [];
}

/** Every text that the sheet knew of the plan, or gave of it before. */
function knownTexts({ checks, takes, measurements }: Day): ReadonlySet<string | null> {
  const verdict = (keep: boolean | null) => (keep === null ? null : keep ? 'keep' : 'reject');
  return new Set([
    ...checks.flatMap(({ before }) =>
      before.flatMap(({ at, by }) => [at?.slice(0, 10) ?? null, by]),
    ),
    ...takes.flatMap(({ before }) =>
      before.flatMap(({ clip: file, keep, note, used, set }) => [
        ...[file, verdict(keep), note, used, ...set.values()],
      ]),
    ),
    ...measurements.flatMap(({ before }) => before.flatMap((one) => [...one.values()])),
  ]);
}

/** Settings of the sheet that a take is not said to have had. */
function forgotten(day: Day, { shot, set }: DayTake, clip: object, tree: Tree): readonly string[] {
  const own = ('set' in clip ? clip.set : {}) as Readonly<Record<string, unknown>>;
  const { shots } = tree as { shots: Readonly<Record<string, Readonly<Record<string, unknown>>>> };
  return [...(day.planned.get(shot) ?? [])].flatMap(([key, text]) =>
    set.has(key) || own[key] !== undefined || shots[shot]?.[key] === text ? [] : [key],
  );
}

/** What holds wherever a day is laid into a plan. */
function hold(day: Day, before: string): string {
  const brought = bringBack(day, before, NAME);
  if (!brought) throw new Error(`not read:\n${before}`);
  const { text, done, kept, left } = brought;
  const told = [...kept, ...left];
  const known = knownTexts(day);
  expect(commentsOf(text)).toEqual(commentsOf(before));
  const [old, now] = [leaves(read(before)), leaves(read(text))];
  for (const [path, value] of old) {
    const isFilled = value === 'open' || value === '' || value === 'null';
    if (isFilled || now.get(path) === value) continue;
    // Changed: the sheet knew the value, and the change is told.
    expect([known.has(value), path, text]).toEqual([true, path, text]);
    const isTold = done.some((line) => / instead of |: open again\.$/.test(line));
    expect([isTold, path, done]).toEqual([true, path, done]);
  }
  const tree = read(text);
  for (const take of day.takes) {
    const of = `Take ${take.take} of ${take.shot}: `;
    const isThere = clipsOf(tree, take.shot).some(
      (clip) =>
        missing(take, clip).every((key) =>
          told.some((line) => line.startsWith(`${of}\`${key}\``)),
        ) && forgotten(day, take, clip, tree).length === 0,
    );
    expect(isThere, `${of}${text}`).toBe(true);
  }
  for (const shot of SHOTS) {
    const keys = clipsOf(tree, shot).flatMap(({ take, time }) => (time ? `${take} ${time}` : []));
    expect(new Set(keys).size).toBe(keys.length);
    const most = clipsOf(read(before), shot).length;
    const own = day.takes.filter((take) => take.shot === shot).length;
    expect(clipsOf(tree, shot).length).toBeLessThanOrEqual(most + own);
  }
  const again = bringBack(day, text, NAME);
  expect(again?.text).toBe(text);
  expect(again?.done).toEqual([]);
  // Two takes with one file: what the second one brought, the first one never had.
  const lasting = (lines: readonly string[] = []) =>
    lines.filter((line) => !line.includes(' was cleared in the day.'));
  expect([again?.kept, lasting(again?.left)]).toEqual([kept, lasting(left)]);
  return text;
}

describe('a day brought back', () => {
  it('loses nothing, doubles nothing, and keeps every comment', () => {
    fc.assert(
      fc.property(plans, days, fc.subarray([...EDITS]), fc.nat(6), (plan, whole, edits, count) => {
        const part = { ...whole, takes: whole.takes.slice(0, count), measurements: [] };
        const first = hold(dayOf(part), plan);
        const edited = edits.reduce((text, edit) => edit(text), first);
        hold(dayOf(whole), edited);
      }),
      { numRuns: manyRuns(60) },
    );
  });
});
