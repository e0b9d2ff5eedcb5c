/** Clips as the plan lists them: what is found in the text, and at which line a clip's finding stands. */
import { describe, expect, it } from 'vitest';
import type { ClipFacts, ClipReading } from '../../shared/clips/facts.ts';
import type { LookedAt } from '../../shared/looked-at/looked.ts';
import { rational } from '../../shared/quantity/rational.ts';
import { comparePlans } from '../../shared/report/compare/compare.ts';
import { markdownText } from '../../shared/report/document/markdown.ts';
import { sheetDocument } from '../../shared/report/sheet/document.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { Say } from '../../shared/say/say.ts';
import { changed, coreWith, PLAN } from '../support/plans.ts';

const DONE = changed(EXAMPLE_PLAN, {
  preflight: null,
  'shots/frost/allow': '{ check-missing: { because: a test } }',
  'shots/skin/preflight': null,
  'shots/skin/allow': '{ check-missing: { because: a test } }',
});

const plan = (...lines: readonly string[]): string => `${DONE}\nclips:\n${lines.join('\n')}\n`;

const loud = (text: string) =>
  coreWith(text)
    .findings(PLAN)
    .filter(({ severity }) => severity !== 'hint')
    .map(({ rule, range }) => `${rule} ${text.split('\n')[range.start.line]?.trim()}`);

const FACTS: ClipFacts = {
  bytes: 75e6,
  size: { width: 1920, height: 1080 },
  rotation: 0,
  rate: { kind: 'constant', rate: rational(25) },
  codec: 'h264',
  durationS: 20,
  bitsPerS: 30e6,
  shutterS: null,
  iso: null,
  whiteBalance: null,
  created: null,
};

const read = (facts: Partial<ClipFacts> = {}): ClipReading => ({
  state: 'read',
  facts: { ...FACTS, ...facts },
});

const checked = (text: string, readings: Readonly<Record<string, ClipReading>>) =>
  coreWith(text).checkClips(PLAN, new Map(Object.entries(readings)));

describe('in the text', () => {
  it('clips are worked out: there is no hint that they are not', () => {
    const text = plan('  frost:', '    - { file: a.mp4, verdict: keep, note: good }');
    expect(loud(text)).toEqual([]);
    expect(
      coreWith(text)
        .findings(PLAN)
        .map(({ rule }) => rule),
    ).not.toContain('not-read-yet');
  });

  it('a shot that is none is named, with the nearest', () => {
    const text = plan('  frots:', '    - { file: a.mp4 }');
    expect(loud(text)).toEqual(['unknown-name frots:']);
    const core = coreWith(text);
    const [finding] = core.findings(PLAN).filter(({ rule }) => rule === 'unknown-name');
    expect(core.fixesOf(finding!).map(({ title }) => title)).toEqual(['Write frost']);
  });

  it('one file is one clip', () => {
    const text = plan(
      '  frost:',
      '    - { file: a.mp4 }',
      '    - { file: b.mp4 }',
      '  skin:',
      '    - { file: a.mp4, verdict: keep }',
    );
    expect(loud(text)).toEqual(['duplicate-name - { file: a.mp4, verdict: keep }']);
  });

  it('checks that are open are named once there are clips', () => {
    const open = changed(DONE, { 'shots/frost/preflight': '{ lens-clean: open }' });
    expect(loud(open)).toEqual([]);
    expect(loud(`${open}\nclips:\n  frost: [{ file: a.mp4 }]\n`)).toEqual([
      'check-open preflight: { lens-clean: open }',
    ]);
  });

  it('a clip’s hover says what is asked of it', () => {
    const text = plan('  frost:', '    - { file: a.mp4, verdict: keep }');
    const lines = text.split('\n');
    const line = lines.findIndex((each) => each.includes('a.mp4'));
    const hover = coreWith(text).hover(PLAN, { line, character: lines[line]!.indexOf('a.mp4') });
    expect(hover?.markdown).toContain('**a.mp4** · planned for frost');
    for (const row of [
      '| resolution | 1920 × 1080 |',
      '| frame rate | 25 fps |',
      '| bit rate | 30 Mb/s |',
    ])
      expect(hover?.markdown).toContain(row);
    expect(hover?.markdown).toContain('| white balance | 5600 K |');
  });

  it('a comparison says what became of them', () => {
    const [before, after] = [
      plan('  frost:', '    - { file: a.mp4 }'),
      plan('  frost:', '    - { file: a.mp4, verdict: keep }'),
    ];
    const { entries } = comparePlans(
      coreWith(before).compared(PLAN),
      coreWith(after).compared(PLAN),
    );
    expect(entries).toMatchObject([{ entry: 'clips/frost', state: 'changed' }]);
    expect(entries[0]?.fields.map(({ before: was, after: is }) => [was, is])).toEqual([
      [null, 'keep'],
    ]);
  });

  it('the sheet has them with verdict and note', () => {
    const text = plan(
      '  frost:',
      '    - { file: a.mp4, verdict: keep, note: good }',
      '    - { file: b.mp4 }',
    );
    const sheet = coreWith(text).sheet(PLAN);
    expect(sheet.shots[0]?.clips).toEqual(['1 kept', 'a.mp4: keep, good', 'b.mp4: not judged']);
    expect(markdownText(sheetDocument(sheet, new Say()))).toContain(
      '### Clips\n\n- 1 kept\n- a.mp4: keep, good',
    );
  });
});

describe('checked', () => {
  const text = plan(
    '  frost:',
    '    - { file: a.mp4, verdict: keep }',
    '    - { file: b.mp4 }',
    '  skin:',
    '    - { file: c.mp4, verdict: reject }',
  );

  it('nothing is said of a clip as asked, of a rejected one, and of one not looked at', () => {
    expect(checked(text, { 'a.mp4': read(), 'c.mp4': { state: 'not-found' } })).toEqual([]);
  });

  it.each<[string, ClipReading, string, string]>([
    ['gone', { state: 'not-found' }, 'clip-not-found error', 'The clip a.mp4 was not found.'],
    [
      'broken',
      { state: 'unreadable', why: 'it is empty' },
      'clip-unreadable error',
      "The clip a.mp4 can't be read: it is empty.",
    ],
    [
      'small',
      read({ size: { width: 1280, height: 720 } }),
      'clip-differs error',
      'a.mp4: recorded at 1280 × 720, not 1920 × 1080.',
    ],
    [
      'large',
      read({ size: { width: 3840, height: 2160 } }),
      'clip-differs warning',
      'a.mp4: recorded at 3840 × 2160, not 1920 × 1080.',
    ],
  ])('%s: on its own line', (_, reading, rule, what) => {
    const [found, ...more] = checked(text, { 'a.mp4': reading, 'b.mp4': read() });
    expect(more).toEqual([]);
    expect(`${found?.rule} ${found?.severity}`).toBe(rule);
    expect(found?.what).toBe(what);
    expect(found?.shot).toBe('frost');
    expect(text.split('\n')[found!.range.start.line]).toContain('a.mp4');
  });

  it('all that differs is in one finding', () => {
    const [found] = checked(text, {
      'b.mp4': read({ iso: 3200, whiteBalance: 'auto', shutterS: 1 / 200 }),
    });
    expect(found).toMatchObject({
      what: 'b.mp4: shutter 1/200 s, not 1/50 s.',
      why: 'Also: ISO 3200, not ISO 1250; automatic white balance, not 5600 K.',
      numbers: { iso: 3200, askedIso: 1250, askedKelvin: 5600, shutterS: 0.005 },
    });
    expect(found?.related.map(({ words }) => words)).toEqual(['`shutter` of frost']);
  });

  it('what the shot or the plan accepts is accepted, and never called needless', () => {
    const gone = { 'a.mp4': { state: 'not-found' } } as const;
    for (const path of ['allow', 'shots/frost/allow']) {
      const allow =
        '{ clip-not-found: { because: it is in the vault }, check-missing: { because: a test } }';
      const accepting = changed(text, { [path]: allow });
      expect(checked(accepting, gone)).toEqual([]);
      const said = coreWith(accepting)
        .findings(PLAN)
        .map(({ what }) => what);
      expect(said.filter((what) => what.includes('`clip-not-found`'))).toEqual([]);
    }
  });

  it('the plan sets the severity', () => {
    const mild = changed(text, { severity: '{ clip-not-found: note }' });
    expect(checked(mild, { 'a.mp4': { state: 'not-found' } })[0]?.severity).toBe('note');
  });

  it('a shot that can’t be found asks for nothing', () => {
    const odd = plan('  frots:', '    - { file: a.mp4 }');
    expect(checked(odd, { 'a.mp4': read({ size: { width: 1, height: 1 } }) })).toEqual([]);
  });
});

describe('what the header says', () => {
  const text = plan('  frost:', '    - { file: a.mp4, verdict: keep }');
  const [of, onlyOf] = [
    (facts: Partial<ClipFacts>) => checked(text, { 'a.mp4': read(facts) })[0],
    (reading: ClipReading) => checked(text, { 'a.mp4': reading })[0],
  ];

  it('names missing frames with place and count', () => {
    const gaps = [10, 20, 30, 40, 50].map((frame) => ({ frame, atS: frame / 25, missing: 2 }));
    expect(of({ gaps: gaps.slice(0, 1) })).toMatchObject({
      severity: 'error',
      what: 'a.mp4: 2 frames missing: 2 at 0.4 s (after frame 10).',
      numbers: { missingFrames: 2, firstGapAfterFrame: 10, firstGapS: 0.4 },
    });
    expect(of({ gaps })?.what).toContain('10 frames missing: 2 at 0.4 s (after frame 10), ');
    expect(of({ gaps })?.what).toContain('more in 2 other places');
  });

  it('compares what the recording mode says of its pictures', () => {
    const asking = changed(text, {
      'kit/bodies/body-a/recording-modes/full-25/bit-depth': '10',
      'kit/bodies/body-a/recording-modes/full-25/chroma': '4:2:2',
      'kit/bodies/body-a/recording-modes/full-25/transfer': 'hlg',
    });
    const picture = { bitDepth: 8, chroma: '4:2:0', transfer: 'bt709' } as const;
    const [found] = checked(asking, { 'a.mp4': read({ picture }) });
    expect(found).toMatchObject({
      severity: 'error',
      what: 'a.mp4: 8 bit, not 10 bit.',
      why: 'Also: chroma 4:2:0, not 4:2:2; transfer function bt709, not hlg.',
    });
  });

  it('is told once where it can only be told', () => {
    expect(of({ picture: { isInterlaced: true } })?.what).toBe(
      'a.mp4: coded as interlaced, not progressive.',
    );
    const edit = { skippedFrames: 10, leftFrames: 0, shownS: 20, emptyS: 0, pieces: 1 };
    expect(of({ edit })?.what).toBe('a.mp4: its edit list hides its first frames (10).');
  });

  it.each([
    ['damaged', 'error', 'copy it again'],
    ['unsupported', 'warning', "Copying it again won't help"],
    ['refused', 'error', 'Nothing was compared'],
  ] as const)('%s: %s, and what helps', (fault, severity, words) => {
    const found = onlyOf({ state: 'unreadable', why: 'it is empty', fault });
    expect(found?.severity).toBe(severity);
    expect(found?.why).toContain(words);
  });
});

describe('what was seen in the pictures', () => {
  const text = plan('  frost:', '    - { file: a.mp4, verdict: keep }', '    - { file: b.mp4 }');
  const LOOKED: LookedAt = {
    frames: 500,
    clipped: 0,
    crushed: 0,
    flicker: [],
    repeats: [],
    edgePx: null,
    halfContrast: null,
    light: [0.18, 0.18, 0.18],
    middle: { light: 0.18, isEven: false },
    sound: null,
  };
  const seen = (looked: Partial<LookedAt>, other: Partial<LookedAt> = {}) =>
    checked(text, {
      'a.mp4': { state: 'read', facts: FACTS, looked: { ...LOOKED, ...looked } },
      'b.mp4': { state: 'read', facts: FACTS, looked: { ...LOOKED, ...other } },
    }).map(({ rule, severity, what }) => `${severity} ${what} ${rule}`);

  it('is nothing where nothing was wrong', () => {
    expect(seen({})).toEqual([]);
  });

  it.each<[Partial<LookedAt>, string]>([
    [{ clipped: 0.04 }, 'warning a.mp4: 4% of the picture is clipped. clip-exposure'],
    [
      { repeats: [{ frame: 50, count: 3 }] },
      'error a.mp4: 3 frames repeat the one before. clip-repeats',
    ],
    [
      { flicker: [{ lampHz: 110, depth: 0.05, floor: 0.001 }] },
      'warning a.mp4: flickers by 5%, as a lamp of 110 Hz does. clip-flickers',
    ],
    [
      { edgePx: 30, halfContrast: 0.02 },
      'note a.mp4: its sharpest edges are 30 px wide. clip-soft',
    ],
    [
      { sound: { peakDb: null, rmsDb: null, clipped: 0 } },
      'note a.mp4: its sound is silent throughout. clip-sound',
    ],
  ])('%j', (looked, told) => {
    expect(seen(looked)).toEqual([told]);
  });

  it('flicker that is no deeper than the scene’s own changes is none', () => {
    expect(seen({ flicker: [{ lampHz: 110, depth: 0.05, floor: 0.03 }] })).toEqual([]);
  });

  it('takes of a shot that differ in exposure', () => {
    const dark = [0.09, 0.09, 0.09] as const;
    expect(seen({}, { light: dark })).toEqual([
      'note b.mp4: −1 stop in exposure against a.mp4. clip-drifts',
    ]);
  });

  it('clips of two shots are compared where their cuts name one grade', () => {
    const cuts = (grade: string): string => `edit:
  cuts:
    one: { shot: frost, from: 1 s, duration: 2 s, grade: cold }
    two: { shot: skin, from: 1 s, duration: 2 s, grade: ${grade} }
`;
    const clips =
      'clips:\n  frost: [{ file: a.mp4, verdict: keep }]\n  skin: [{ file: b.mp4, verdict: keep }]\n';
    const light = [0.09, 0.09, 0.09] as const;
    const drifts = (grade: string) =>
      checked(`${DONE}\n${cuts(grade)}${clips}`, {
        'a.mp4': { state: 'read', facts: FACTS, looked: LOOKED },
        'b.mp4': { state: 'read', facts: FACTS, looked: { ...LOOKED, light } },
      })
        .map(({ rule, what }) => `${rule}: ${what}`)
        .filter((one) => one.startsWith('clip-drifts'));
    expect(drifts('cold')).toEqual(['clip-drifts: b.mp4: −1 stop in exposure against a.mp4.']);
    expect(drifts('warm')).toEqual([]);
  });

  it('may be accepted by its own name', () => {
    const allow =
      '{ clip-exposure: { because: a lamp is shown }, check-missing: { because: a test } }';
    const accepting = changed(text, { 'shots/frost/allow': allow });
    const reading = { state: 'read', facts: FACTS, looked: { ...LOOKED, clipped: 0.04 } } as const;
    expect(checked(accepting, { 'a.mp4': reading })).toEqual([]);
  });
});

describe('a test clip', () => {
  it('needn’t be as long as a take', () => {
    const core = coreWith(DONE);
    expect(core.testClip(PLAN, 'skin', 't.mp4', read({ durationS: 2 }))).toEqual([]);
    const [found] = core.testClip(PLAN, 'skin', 't.mp4', read({ iso: 100 })) ?? [];
    expect(found?.what).toBe('t.mp4: ISO 100, not ISO 1600.');
  });

  it('of a shot that isn’t there is none', () => {
    expect(coreWith(DONE).testClip(PLAN, 'none', 't.mp4', read())).toBeNull();
  });
});

describe('the edit', () => {
  const CUTS = `edit:
  cuts:
    one: { shot: skin, from: 4 s, duration: 6 s }
    two: { shot: skin, from: 12 s, duration: 8 s, speed: 50 % }
`;
  const text = `${DONE}\n${CUTS}clips:\n  skin:\n    - { file: a.mp4, verdict: keep }\n`;

  it('of a clip that lasts lacks nothing', () => {
    const core = coreWith(text);
    const readings = new Map([['a.mp4', read({ durationS: 20 })]]);
    expect(core.checkClips(PLAN, readings)).toEqual([]);
    // By hand: 6 s from 4 s on end at 10 s; 8 s at half speed use 4 s, from 12 s on, and end at 16 s.
    expect(core.cutCoverage(PLAN, readings)).toEqual([
      { cut: 'one', file: 'a.mp4', fromS: 4, toS: 10, durationS: 20, missingS: 0 },
      { cut: 'two', file: 'a.mp4', fromS: 12, toS: 16, durationS: 20, missingS: 0 },
    ]);
  });

  it('is measured by the clip as it is, and not by the take that was planned', () => {
    const core = coreWith(text);
    const readings = new Map([['a.mp4', read({ durationS: 14.5 })]]);
    expect(core.cutCoverage(PLAN, readings).map(({ missingS }) => missingS)).toEqual([0, 1.5]);
    const [found, ...more] = core.checkClips(PLAN, readings);
    expect(more).toEqual([]);
    expect(found).toMatchObject({
      rule: 'clip-differs',
      severity: 'warning',
      what: 'a.mp4: 14.5 s long, not the 20 s of a take.',
      why: 'Also: 14.5 s long, not the 16 s that cut two needs.',
    });
  });

  it('needs what a dissolve goes on with behind the cut', () => {
    const dissolving = text.replace(
      'speed: 50 % }',
      'speed: 50 %, transition: dissolve 10 frames }',
    );
    const readings = new Map([['a.mp4', read({ durationS: 20 })]]);
    const core = coreWith(dissolving);
    const [one] = core.cutCoverage(PLAN, readings);
    const after = core.editFigures(PLAN)?.cuts[0]?.handleAfterNeededFrames ?? 0;
    expect(after).toBeGreaterThan(0);
    expect(one?.toS).toBeCloseTo(10 + after / 25, 9);
  });

  it('says nothing of clips that were not read', () => {
    expect(coreWith(text).cutCoverage(PLAN, new Map())).toEqual([]);
  });
});
