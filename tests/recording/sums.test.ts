/** What a plan records, body by body, and what is said of it. */
import { describe, expect, it } from 'vitest';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { applied, changed, coreWith, findingsOf, PLAN } from '../support/plans.ts';

const LIMITS = {
  'kit/bodies/body-a/card': '2 GB',
  'kit/bodies/body-a/battery': '10 min',
  'kit/bodies/body-a/longest-clip': '29 min',
};

const plan = (change: Readonly<Record<string, string>>): string =>
  changed(EXAMPLE_PLAN, {
    ...LIMITS,
    'shots/frost/take': '{ duration: 60 s, count: 3 }',
    'shots/skin/take': '{ duration: 20 s, count: 4, settle: 5 s }',
    ...change,
  });

const rulesIn = (text: string) =>
  findingsOf(text)
    .filter(({ severity }) => severity !== 'hint')
    .map(({ rule }) => rule);

describe('sums over the takes', () => {
  it('are exact', () => {
    // By hand: 30 Mb/s is 3.75 MB/s; 3 × 60 s and 4 × 20 s are 260 s, 975 MB; 4 × 5 s settle.
    expect(coreWith(plan({})).recording(PLAN)).toEqual([
      {
        body: 'body-a',
        shots: ['frost', 'skin'],
        recordedS: 260,
        withSettlingS: 280,
        recordedBytes: 975e6,
        leastRecordedS: 260,
        leastRecordedBytes: 975e6,
        cardBytes: 2e9,
        batteryS: 600,
        cards: 1,
        batteries: 1,
        notKnown: {},
      },
    ]);
  });

  it('are those of the shots together', () => {
    const core = coreWith(plan({}));
    const shots = [...core.figures(PLAN).values()];
    const sum = (key: string) => shots.reduce((all, figures) => all + Number(figures[key]), 0);
    expect(sum('recordedBytes')).toBe(975e6);
    expect(sum('recordedS')).toBe(260);
  });

  it('say what they lack, and what there is at least', () => {
    const [sums] = coreWith(changed(plan({}), { 'shots/frost/take': null })).recording(PLAN);
    expect(sums).toMatchObject({
      recordedS: null,
      recordedBytes: null,
      leastRecordedS: 80,
      leastRecordedBytes: 300e6,
      cards: null,
      batteries: null,
    });
    expect(sums?.notKnown).toEqual({
      recordedS: 'length or number of takes of frost is unknown',
      withSettlingS: 'length or number of takes of frost is unknown',
      recordedBytes: 'recorded data per take of frost is unknown',
      cards: 'recorded data per take of frost is unknown',
      batteries: 'length or number of takes of frost is unknown',
    });
  });

  it('never guess a number of takes that can’t be read', () => {
    const [sums] = coreWith(
      plan({ 'shots/frost/take': '{ duration: 60 s, count: many }' }),
    ).recording(PLAN);
    expect(sums).toMatchObject({ recordedS: null, leastRecordedS: 80 });
  });

  it('go by the body: another one has its own card', () => {
    const text = plan({ 'rigs/far/parts': '[body-b, twice, tube-36, long-200]' }).replace(
      '    body-a:\n',
      '    body-b: { sensor: 36 x 24 mm, flange-distance: 44 mm, card: 1 GB, recording-modes: { full-25: { resolution: 1920 x 1080, rate: 25 fps, bitrate: 30 Mb/s } } }\n    body-a:\n',
    );
    const sums = coreWith(text).recording(PLAN);
    expect(sums.map(({ body, recordedS, cards }) => [body, recordedS, cards])).toEqual([
      ['body-a', 180, 1],
      ['body-b', 80, 1],
    ]);
  });
});

describe('findings', () => {
  it('a day that fits has none', () => {
    expect(rulesIn(plan({}))).toEqual([]);
  });

  it('a card too small stands on the shot that needs most, and fewer takes of it would do', () => {
    const text = plan({ 'shots/frost/take': '{ duration: 100 s, count: 5 }' });
    const core = coreWith(text);
    const [found, ...more] = core.findings(PLAN).filter(({ severity }) => severity !== 'hint');
    expect(more).toEqual([]);
    // 580 s at 3.75 MB/s.
    expect(found).toMatchObject({
      rule: 'card-too-small',
      what: 'The takes on body-a need 2.2 GB; one card holds 2 GB.',
      numbers: { bytes: 2.175e9, cardBytes: 2e9, takeBytes: 375e6, cards: 2 },
    });
    expect(text.split('\n')[found!.range.start.line]).toContain('count: 5');
    const [fix] = core.fixesOf(found!);
    expect(fix?.title).toBe('Plan 4 takes of frost');
    expect(rulesIn(applied(text, fix!.edits))).toEqual([]);
  });

  it('counts the shots of which nothing is known', () => {
    const text = changed(plan({ 'shots/frost/take': '{ duration: 100 s, count: 6 }' }), {
      'shots/skin/take': null,
    });
    const found = findingsOf(text).find(({ rule }) => rule === 'card-too-small');
    expect(found?.why).toContain('One shot is not counted because its recording is unknown.');
  });

  it('battery and clip have theirs', () => {
    expect(rulesIn(plan({ 'shots/frost/take': '{ duration: 60 s, count: 9 }' }))).toEqual([
      'battery-short',
      'card-too-small',
    ]);
    expect(
      rulesIn(
        plan({
          ...{ 'kit/bodies/body-a/card': '1 TB' },
          'shots/frost/take': '{ duration: 30 min }',
        }),
      ),
    ).toEqual(['battery-short', 'clip-too-long']);
  });
});

describe('the sheet', () => {
  it('says what to bring', () => {
    expect(coreWith(plan({})).sheet(PLAN).recording).toEqual([
      '`body-a` records 4.3 min, 975 MB: one 2 GB card, one 10-minute battery. The battery counts rolling and waiting only, not standby or focusing.',
    ]);
  });

  it('says nothing where no take is planned', () => {
    const text = changed(plan({}), { 'shots/frost/take': null, 'shots/skin/take': null });
    expect(coreWith(text).sheet(PLAN).recording).toEqual([]);
  });

  it('says what is not known', () => {
    const text = changed(plan({}), { 'shots/frost/take': null });
    expect(coreWith(text).sheet(PLAN).recording).toEqual([
      '`body-a` records at least 80 s, at least 300 MB. Not counted in full: frost.',
    ]);
  });
});
