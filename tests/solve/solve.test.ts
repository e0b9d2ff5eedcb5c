/**
 * A shot is solved wherever trying out every third stop solves it, by the same change or a lesser
 * one; and what is offered, applied to the text, clears it.
 */
import fc from 'fast-check';
import { afterAll, describe, expect, it } from 'vitest';
import type { Core } from '../../shared/api/facade.ts';
import type { SolvedShot } from '../../shared/api/solved.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { applied, changed, coreWith, PLAN } from '../support/plans.ts';
import { manyRuns } from '../support/runs.ts';
import { exhaustive, isLess, OF_SETTINGS, type Solved } from './support/exhaustive.ts';

const FROST: Readonly<Record<string, readonly string[]>> = {
  'shots/frost/field': ['40 mm', '50 mm', '60 mm', '80 mm'],
  'shots/frost/aperture': ['f/2.8', 'f/4', 'f/8', 'f/11', 'f/16', 'f/22', 'f/32', 'f/64'],
  'shots/frost/shutter': ['1/50 s', '1/100 s', '1/80 s', '1/15 s', '180 deg', '1/500 s'],
  'shots/frost/iso': ['100', '400', '1250', '6400', '51200', 'auto'],
  'shots/frost/light': ['[panel]', '[bulb]', '[panel, bulb]'],
  'shots/frost/subject-speed': ['1 mm/s', '4 mm/s', '12 mm/s'],
  'shots/frost/rig': ['bench', 'stacked'],
  'subjects/frost-plate/depth': ['0.3 mm', '1.5 mm', '3 mm', '6 mm', '20 mm'],
  'deliver/resolution': ['1920 x 1080', '3840 x 2160'],
};
const SKIN: Readonly<Record<string, readonly string[]>> = {
  'shots/skin/field': ['34 mm', '38 mm', '48 mm', '80 mm'],
  'shots/skin/aperture': ['f/4', 'f/8', 'f/11', 'f/22', 'f/32'],
  'shots/skin/iso': ['100', '400', '1600', '12800'],
  'shots/skin/tilt': ['1 deg', '3 deg', '-4 deg', '8 deg', '12 deg'],
  'shots/skin/subject-speed': ['0.5 mm/s', '5 mm/s'],
  'shots/skin/shutter': ['1/50 s', '1/25 s', '1/200 s'],
};

const planWith = (choices: Readonly<Record<string, readonly string[]>>) =>
  fc
    .uniqueArray(fc.constantFrom(...Object.keys(choices)), { minLength: 1, maxLength: 4 })
    .chain((places) =>
      fc.tuple(
        ...places.map((place) =>
          fc.constantFrom(...choices[place]!).map((value) => [place, value] as const),
        ),
      ),
    )
    .map((pairs) => Object.fromEntries(pairs));

const counts = { clear: 0, solved: 0, 'no-way': 0, 'not-found': 0, cutShort: 0 };

const loudIn = (core: Core, shot: string) =>
  core
    .findings(PLAN)
    .filter(
      (one) =>
        one.shot === shot &&
        OF_SETTINGS.has(one.rule) &&
        (one.severity === 'error' || one.severity === 'warning'),
    );

const number = (text: string): number => Number(/-?[\d.]+/.exec(text.replace(/^f\//, ''))?.[0]);

const seconds = (text: string): number =>
  text.endsWith('deg')
    ? number(text) / 360 / 25
    : text.startsWith('1/')
      ? 1 / number(text.slice(2))
      : number(text);

/** What a solved shot was changed by, from what it says. */
function costOf({ changes, leaves }: SolvedShot): Solved {
  const moved = changes.map(({ setting, from, to }) => {
    switch (setting) {
      case 'aperture':
        return 2 * Math.abs(Math.log2(number(to) / number(from)));
      case 'shutter':
        return Math.abs(Math.log2(seconds(to) / seconds(from)));
      case 'iso':
        return Math.abs(Math.log2(number(to) / number(from)));
      case 'tilt':
        return Math.abs(number(to) - number(from));
      default:
        return setting.endsWith('distance')
          ? 2 * Math.abs(Math.log2(number(to) / number(from)))
          : 1;
    }
  });
  return {
    settings: changes.length,
    exposedRight: leaves.every(({ rule }) => rule !== 'exposure-off'),
    moved: moved.reduce((sum, one) => sum + one, 0),
  };
}

function check(shot: string, change: Readonly<Record<string, string>>): void {
  const text = changed(EXAMPLE_PLAN, change);
  const core = coreWith(text);
  const what = `${JSON.stringify(change)}: ${shot}`;
  const solved = core.solve(PLAN, shot);
  expect(solved, what).not.toBeNull();
  counts[solved!.outcome]++;
  if (solved!.cutShort) counts.cutShort++;
  const loud = loudIn(core, shot);
  if (solved!.outcome === 'clear') {
    expect(loud, what).toEqual([]);
    return;
  }
  expect(loud.length, what).toBeGreaterThan(0);
  if (solved!.outcome === 'not-found') {
    expect(solved!.cutShort, what).toBe(true);
    return;
  }
  const best = exhaustive(text, shot);
  if (solved!.outcome === 'no-way') {
    expect(best, `${what}: there is a way`).toBeNull();
    if (!solved!.cutShort) expect(solved!.demands.length, what).toBeGreaterThan(0);
    return;
  }
  const said = `${what}: ${JSON.stringify(solved!.changes)}`;
  expect(loudIn(coreWith(applied(text, solved!.edits)), shot), said).toEqual([]);
  for (const { because } of solved!.changes) expect(because.length, said).toBeGreaterThan(0);
  // A search that ended at its limit says that there may be a smaller change.
  if (!best || solved!.cutShort) return;
  const cost = costOf(solved!);
  const against = `${said} against ${JSON.stringify(best)}`;
  // What holds in the worst case too may go farther, but changes no more settings.
  if (solved!.holds === 'worst-case')
    expect(cost.settings, against).toBeLessThanOrEqual(best.settings);
  else expect(isLess(best, cost), against).toBe(false);
}

describe('a solved shot', () => {
  // A mirror takes an exhaustive search ten times as long.
  it.each([
    ['frost', FROST, manyRuns(40)],
    ['skin', SKIN, manyRuns(12)],
  ])(
    'of %s is the least change that every third stop has',
    (shot, choices, numRuns) => {
      fc.assert(
        fc.property(planWith(choices), (change) => check(shot, change)),
        { numRuns },
      );
    },
    3_600_000,
  );

  it('is hardly ever looked for in vain for being cut short', () => {
    const asked = counts.clear + counts.solved + counts['no-way'] + counts['not-found'];
    expect(counts['not-found']).toBeLessThan(asked / 10);
    expect(counts.cutShort).toBeLessThan(asked / 5);
  });

  afterAll(() => console.log(`Shots solved: ${JSON.stringify(counts)}`));
});

it('tilts a film to the other side where the light stands there', () => {
  const change = { 'shots/skin/tilt': '-4 deg' };
  check('skin', change);
  const solved = coreWith(changed(EXAMPLE_PLAN, change)).solve(PLAN, 'skin');
  expect(solved?.changes).toMatchObject([
    { setting: 'tilt', from: '-4 deg', because: [{ rule: 'source-too-small' }] },
  ]);
  expect(number(solved?.changes[0]?.to ?? '')).toBeGreaterThan(0);
}, 120_000);

describe('a shot that nothing solves', () => {
  const CROWDED = {
    'subjects/frost-plate/depth': '6 mm',
    'shots/frost/rig': 'stacked',
    'shots/frost/field': '20 mm',
  };

  it('says which demands exclude each other, and by how much', () => {
    check('frost', CROWDED);
    const solved = coreWith(changed(EXAMPLE_PLAN, CROWDED)).solve(PLAN, 'frost');
    expect(solved?.outcome).toBe('no-way');
    expect(solved?.edits).toEqual([]);
    expect(solved?.demands.map(({ rule }) => rule)).toEqual([
      'depth-short',
      'iso-out-of-range',
      'exposure-off',
    ]);
    for (const { what, at } of solved?.demands ?? []) {
      expect(what).toMatch(/\d/);
      expect(at).toMatch(/^f\/\d+, 1\/\d+ s, ISO \d+/);
    }
  });

  it('is opened by what is said to open it', () => {
    const text = changed(EXAMPLE_PLAN, CROWDED);
    const openings = coreWith(text).solve(PLAN, 'frost')?.openings ?? [];
    const field = /a field (\d+ mm) wide/.exec(openings.map(({ what }) => what).join())?.[1];
    expect(field).toBeDefined();
    const opened = coreWith(changed(text, { 'shots/frost/field': field! }));
    expect(opened.solve(PLAN, 'frost')?.outcome).toBe('solved');
  });

  it.each(['34 mm', '40 mm'])(
    'of a field of %s is opened only as wide as its rig frames',
    (field) => {
      const change = {
        ...CROWDED,
        'shots/frost/field': field,
        'subjects/frost-plate/depth': '60 mm',
      };
      const text = changed(EXAMPLE_PLAN, change);
      const solved = coreWith(text).solve(PLAN, 'frost');
      expect(solved?.outcome).toBe('no-way');
      for (const { what } of solved?.openings ?? []) {
        const wider = /a field ([\d.]+ mm) wide/.exec(what)?.[1];
        if (wider === undefined) continue;
        const opened = coreWith(changed(text, { 'shots/frost/field': wider }));
        expect(opened.findings(PLAN).map(({ rule }) => rule)).not.toContain('field-out-of-reach');
        expect(opened.solve(PLAN, 'frost')?.outcome, wider).toBe('solved');
      }
    },
  );
  // 36 mm of sensor at 0.36x, the least of the rig, are 100 mm of frame.
  it('is not opened by a frame that the rig cannot set', () => {
    const pulsing = (light: string) => ({
      [`lights/${light}/modulation`]: '100 Hz',
      [`lights/${light}/waveform`]: 'pulsed',
    });
    const blurred = changed(EXAMPLE_PLAN, {
      ...pulsing('panel'),
      ...pulsing('strip'),
      'kit/bodies/body-a/iso/usable-to': '25600',
      'subjects/frost-plate/depth': '0.5 mm',
      'shots/frost/rig': 'far',
      'shots/frost/field': '95 mm',
      'shots/frost/iso': '25600',
      'shots/frost/shutter': '1/100 s',
      'shots/frost/subject-speed': '13 mm/s',
    });
    const solved = coreWith(blurred).solve(PLAN, 'frost');
    expect(solved?.demands.map(({ rule }) => rule)).toEqual(['motion-blur', 'lamp-flicker']);
    expect(solved?.openings).toEqual([]);
  });

  it('is not solved by what no setting has to do with', () => {
    const text = changed(EXAMPLE_PLAN, { 'shots/frost/field': '6 mm' });
    const solved = coreWith(text).solve(PLAN, 'frost');
    expect(solved?.outcome).toBe('clear');
    expect(solved?.others.map(({ rule }) => rule)).toEqual(['field-out-of-reach']);
    // The fixes of the check, word for word.
    const core = coreWith(text);
    const found = core.findings(PLAN).find(({ rule }) => rule === 'field-out-of-reach')!;
    const offered = core.fixesOf(found).map(({ edits: _, ...fix }) => fix);
    expect(offered.length).toBeGreaterThan(0);
    expect(solved?.others[0]?.fixes).toEqual(offered);
    expect(coreWith(text).solve(PLAN, 'nobody')).toBeNull();
  });
});
