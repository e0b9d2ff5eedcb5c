/** One finding a plan for the checks that its shots lack, and one fix that adds them where they belong. */
import { describe, expect, it } from 'vitest';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { hoverIn, rowsOf } from '../assist/support/bench.ts';
import { applied, changed, coreWith, PLAN } from '../support/plans.ts';

const FOR_ALL = [
  ...['focus-at-full-size', 'record-setting-read-back', 'exposure-confirmed'],
  ...['white-balance-fixed', 'flicker-checked', 'foot-balanced'],
];

const BARE = changed(EXAMPLE_PLAN, { preflight: null, 'shots/skin/preflight': null });

/** Both shots on the long rig, under a lamp that may pulse, so that all need what the rig needs. */
const ALIKE = changed(BARE, {
  'shots/frost/rig': 'far',
  'lights/panel/modulation': null,
  'lights/strip/modulation': null,
});

function found(text: string) {
  const core = coreWith(text);
  const all = core.findings(PLAN).filter(({ rule }) => rule === 'check-missing');
  expect(all.length).toBeLessThanOrEqual(1);
  const [finding] = all;
  if (!finding) return null;
  const fixes = core.fixesOf(finding);
  const [fix] = fixes;
  return { finding, fixes, mended: fix ? applied(text, fix.edits) : text };
}

const lineOf = (text: string, line: number): string => text.split('\n')[line] ?? '';

/** What stands under a top-level key. */
function section(text: string, key: string): string {
  const lines = text.split(/\r?\n/);
  const start = lines.findIndex((line) => line.startsWith(`${key}:`));
  const length = lines.slice(start + 1).findIndex((line) => /^\S/.test(line));
  return lines
    .slice(start, length < 0 ? undefined : start + 1 + length)
    .join('\n')
    .trimEnd();
}

describe('the finding', () => {
  it('is one for all shots, with how many checks and shots', () => {
    const { finding } = found(ALIKE)!;
    expect(finding).toMatchObject({ severity: 'warning', numbers: { missing: 10, shots: 2 } });
    expect(finding.what).toBe('10 checks are missing in `frost` and `skin`.');
    expect(finding.why).toMatch(/^Missing: punch in \(magnify the viewfinder\) and check focus; /);
    expect(finding.why).toContain('check that the lens is not reflected in the subject');
    expect(finding.shot).toBeUndefined();
  });

  it('names the shot where it is one, and the check where it is one', () => {
    expect(found(changed(EXAMPLE_PLAN, { 'shots/skin/preflight': null }))?.finding.what).toBe(
      '3 checks are missing in `skin`.',
    );
    const one = changed(EXAMPLE_PLAN, { 'shots/skin/preflight/solution-ready': null });
    expect(found(one)?.finding.what).toBe('A check is missing in `skin`: `solution-ready`.');
    const both = changed(EXAMPLE_PLAN, { 'preflight/once': null });
    expect(found(both)?.finding.what).toBe(
      'A check is missing in `frost` and `skin`: `card-and-battery`.',
    );
  });

  it('does not ask stills for a frame rate', () => {
    const bare = changed(EXAMPLE_PLAN, { 'preflight/every-shot': null });
    const why = (text: string) => found(text)!.finding.why;
    const only = { 'shots/skin': null, 'shots/frost/record': null };
    const stills = { 'shots/frost/time-lapse': '{ interval: 20 s, duration: 3 h }' };
    expect(why(changed(bare, { 'shots/skin': null }))).toContain(
      'confirm resolution and frame rate',
    );
    expect(why(changed(bare, { ...only, ...stills }))).not.toContain('frame rate');
  });

  it('stands at `preflight` where the plan has it, else at `shots`', () => {
    const line = (text: string) => lineOf(text, found(text)!.finding.range.start.line);
    expect(line(ALIKE)).toBe('shots:');
    expect(line(changed(EXAMPLE_PLAN, { 'shots/skin/preflight': null }))).toBe('preflight:');
    expect(line(`${BARE}preflight: {}\n`)).toBe('preflight: {}');
  });

  it('leaves out a shot that is still without subject or rig, or that can’t be read', () => {
    for (const [key, value] of [
      ['rig', null],
      ['subject', null],
      ['rig', 'nobody'],
      ['aperture', 'eight'],
    ] as const)
      expect(found(changed(ALIKE, { [`shots/frost/${key}`]: value }))?.finding.numbers?.shots).toBe(
        1,
      );
  });

  it('says nothing where the checks can’t be read', () => {
    expect(found(`${BARE}preflight: nothing\n`)).toBeNull();
    expect(found(`${BARE}preflight: { every-shot: 3 }\n`)).toBeNull();
    expect(found(`${BARE}preflight:\n`)).toBeNull();
  });
});

describe('accepting it', () => {
  const because = '{ check-missing: { because: a test of the flow } }';
  const rules = (text: string) =>
    coreWith(text)
      .findings(PLAN)
      .map(({ rule }) => rule)
      .filter((rule) => rule === 'check-missing' || rule === 'allow-unused');

  it('in one shot silences that shot', () => {
    const text = changed(ALIKE, { 'shots/frost/allow': because });
    expect(found(text)?.finding.what).toMatch(/ are missing in `skin`\.$/);
    expect(rules(text)).toEqual(['check-missing']);
  });

  it('in the plan, or in every shot, silences all', () => {
    expect(rules(`${ALIKE}allow: ${because}\n`)).toEqual([]);
    const each = { 'shots/frost/allow': because, 'shots/skin/allow': because };
    expect(rules(changed(ALIKE, each))).toEqual([]);
  });

  it('of nothing is left over', () => {
    expect(rules(changed(EXAMPLE_PLAN, { 'shots/frost/allow': because }))).toEqual([
      'allow-unused',
    ]);
    expect(rules(`${EXAMPLE_PLAN}allow: ${because}\n`)).toEqual(['allow-unused']);
  });

  it('keeps the fix away from that shot and from what it would add to it', () => {
    const text = changed(ALIKE, { 'shots/frost/allow': because });
    const { fixes, mended } = found(text)!;
    expect(fixes).toMatchObject([{ title: 'Add the missing checks of `skin`' }]);
    expect(mended).not.toMatch(/^preflight:/m);
    expect(rules(mended)).toEqual([]);
  });
});

describe('the fix', () => {
  it('is one, free of side effects, and leaves nothing missing', () => {
    const { fixes, mended } = found(ALIKE)!;
    expect(fixes).toHaveLength(1);
    expect(fixes[0]).toMatchObject({ title: 'Add the missing checks of 2 shots' });
    expect(fixes[0]?.sideEffects).toBeUndefined();
    expect(found(mended)).toBeNull();
  });

  it('lists what all shots need for every shot, the day’s once, and the rest in the shots', () => {
    const { mended } = found(ALIKE)!;
    expect(section(mended, 'preflight')).toBe(
      `preflight:\n  once:\n    card-and-battery: open\n  every-shot:\n${FOR_ALL.map((name) => `    - ${name}`).join('\n')}`,
    );
    expect(mended).toContain(
      '    preflight:\n      background-clear: open\n      solution-ready: open\n      lens-not-in-mirror: open\n',
    );
    expect(mended.match(/solution-ready/g)).toHaveLength(1);
  });

  it('lists nothing for every shot that one of them does not need', () => {
    // Frost stands on the short rig under a lamp that is steady; skin does not.
    const { mended } = found(
      changed(BARE, { 'shots/frost/rig': 'plain', 'lights/strip/modulation': null }),
    )!;
    const plan = section(mended, 'preflight');
    expect(plan).toContain('focus-at-full-size');
    for (const name of ['foot-balanced', 'flicker-checked', 'solution-ready']) {
      expect(plan).not.toContain(name);
      expect(mended.match(new RegExp(name, 'g'))).toHaveLength(1);
    }
    expect(found(mended)).toBeNull();
  });

  it('writes to a shot what only that shot lacks', () => {
    const all = FOR_ALL.map((name) => `${name}: open`).join(', ');
    const text = changed(ALIKE, { 'shots/frost/preflight': `{ ${all}, card-and-battery: open }` });
    const { mended } = found(text)!;
    expect(section(mended, 'preflight')).toBe('preflight:\n  once:\n    card-and-battery: open');
    expect(mended).toContain('    preflight:\n      focus-at-full-size: open\n');
    expect(found(mended)).toBeNull();
  });

  it.each([
    ['no list', ''],
    ['empty brackets', 'preflight: {}\n'],
    ['empty lists', 'preflight: { once: {}, every-shot: [] }\n'],
    ['empty lists in lines', 'preflight:\n  once: {}\n  every-shot: []\n'],
    ['the day’s in brackets', 'preflight: { once: { cards-formatted: open } }\n'],
    ['the day’s alone', 'preflight:\n  once: { cards-formatted: open }\n'],
    ['a list in lines', 'preflight:\n  every-shot:\n    - focus-at-full-size  # first\n'],
    ['a list in brackets', 'preflight: { every-shot: [focus-at-full-size] }\n'],
    ['one of its own', 'preflight:\n  every-shot: [lock-the-door]\n\n# the end\n'],
  ])('adds to %s', (_, preflight) => {
    const text = ALIKE + preflight;
    for (const [written, eol] of [
      [text, '\n'],
      [text.replaceAll('\n', '\r\n'), '\r\n'],
    ] as const) {
      const { fixes, mended } = found(written)!;
      expect(fixes).toHaveLength(1);
      expect(fixes[0]?.sideEffects).toBeUndefined();
      expect(found(mended)).toBeNull();
      const before = coreWith(written)
        .findings(PLAN)
        .map(({ rule }) => rule);
      const after = coreWith(mended)
        .findings(PLAN)
        .map(({ rule }) => rule);
      expect(after.sort()).toEqual(before.filter((rule) => rule !== 'check-missing').sort());
      expect(mended.split(eol).every((line) => !/[\r\n]/.test(line))).toBe(true);
      for (const comment of written.match(/#.*/g) ?? []) expect(mended).toContain(comment);
    }
  });

  it.each([
    ['empty brackets', '{}'],
    ['some in brackets', '{ background-clear: open }'],
    ['one that is done', '\n      background-clear: { done: 2027-03-02, by: op }'],
  ])('adds to a shot with %s', (_, own) => {
    const { mended } = found(changed(ALIKE, { 'shots/skin/preflight': own }))!;
    expect(found(mended)).toBeNull();
    expect(mended.match(/solution-ready/g)).toHaveLength(1);
  });

  it('adds to shots in brackets', () => {
    const text = changed(ALIKE, { 'shots/skin': null }).replace(
      '\nshots:\n',
      '\nshots:\n  skin: { subject: soap, rig: far, field: 48 mm, tilt: 4 deg, light: [strip] }\n',
    );
    const { mended } = found(text)!;
    expect(found(mended)).toBeNull();
    expect(mended).toContain('light: [strip], preflight: { background-clear: open, ');
  });

  it('says that clips were recorded with the checks open', () => {
    const text = `${ALIKE}clips: { skin: [{ file: media/0001.mp4 }] }\n`;
    expect(found(text)?.fixes[0]?.sideEffects).toMatch(/clips were recorded with 10 checks open/);
  });

  it('of another finding names the checks that it adds to those missing already', () => {
    // A tube makes the rig a long one, which is to be balanced over its foot.
    const near = changed(BARE, { 'shots/frost/rig': 'plain', 'shots/frost/field': '60 mm' });
    const core = coreWith(near);
    const fixes = core
      .findings(PLAN)
      .filter(({ shot, rule }) => shot === 'frost' && rule !== 'check-missing')
      .flatMap((finding) => core.fixesOf(finding));
    const longer = fixes.filter(({ title }) => title.includes('tube-'));
    expect(longer.length).toBeGreaterThan(0);
    for (const { sideEffects } of longer)
      expect(sideEffects).toContain('a check is missing in `frost`: `foot-balanced`');
  });
});

describe('a shot', () => {
  it('lists in its hover what it lacks itself', () => {
    const words = (shot: string) => hoverIn(ALIKE, `${shot}:`)?.markdown ?? '';
    expect(words('skin')).toContain(
      '- `solution-ready`: Prepare film solution and holder, with a spare (a film or bubble)',
    );
    expect(words('frost')).toContain('- `focus-at-full-size`: ');
    expect(words('frost')).not.toContain('solution-ready');
    const missing = words('frost').match(/^- `/gm)?.length;
    expect(rowsOf(words('frost'))['checks missing']).toBe(String(missing));
    expect(rowsOf(hoverIn(EXAMPLE_PLAN, 'frost:')?.markdown ?? '')['checks missing']).toBe(
      undefined,
    );
  });

  it('that lacks some is not ready', () => {
    expect(coreWith(EXAMPLE_PLAN).state(PLAN)).toEqual({ ready: 2, shots: 2 });
    const text = changed(EXAMPLE_PLAN, { 'shots/skin/preflight': null });
    expect(coreWith(text).state(PLAN)).toEqual({ ready: 1, shots: 2 });
  });
});
