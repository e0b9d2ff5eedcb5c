/**
 * One defect at a time, planted into samples that have nothing wrong: its rule speaks on the line of
 * the defect, with numbers worked out here by hand, and its fix takes it away.
 */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { laws } from '../support/each.ts';
import { applied, coreWith, findingsOf, PLAN } from '../support/plans.ts';

const sample = (name: string): string =>
  readFileSync(
    fileURLToPath(new URL(`../../samples/${name}.shootplan.yaml`, import.meta.url)),
    'utf8',
  );

interface Defect {
  readonly sample: string;
  readonly rule: string;
  readonly says: string;
  readonly right: string;
  readonly wrong: string;
  /** What the line that the finding stands on holds. */
  readonly line: string;
  readonly what: string;
  readonly numbers?: Readonly<Record<string, number>>;
  readonly fix: string;
}

const LAPSE = 'time-lapse: { interval: 20 s, duration: 3 h }';

const DEFECTS: readonly Defect[] = [
  {
    sample: 'alum-tray',
    rule: 'interval-does-not-fit',
    says: 'an interval shorter than exposure and writing',
    right: LAPSE,
    wrong: 'time-lapse: { interval: 1.2 s, duration: 3 h }',
    line: 'interval: 1.2 s',
    what: 'Exposure and writing need 1.5 s; the interval is only 1.2 s.',
    numbers: { intervalS: 1.2, exposureS: 0.5, writeS: 1 },
    fix: 'Lengthen the interval to 2 s',
  },
  {
    sample: 'alum-tray',
    rule: 'interval-does-not-fit',
    says: 'interval and duration exchanged',
    right: LAPSE,
    wrong: 'time-lapse: { interval: 3 h, duration: 20 s }',
    line: 'interval: 3 h',
    what: 'The interval is 3 h; the time-lapse runs only 20 s.',
    fix: 'Set an interval of 20 s over 3 h',
  },
  {
    sample: 'alum-tray',
    rule: 'battery-in-time-lapse',
    says: 'a battery that ends before the crystal does',
    right: 'battery: 4 h',
    wrong: 'battery: 2 h',
    line: LAPSE,
    what: 'The time-lapse runs 3 h; a battery of body-a lasts 2 h.',
    numbers: { timeLapseS: 10_800, batteryS: 7200 },
    fix: 'Feed the body from the mains',
  },
  {
    sample: 'alum-tray',
    rule: 'card-too-small',
    says: 'more stills than the card holds',
    right: 'size: 28 MB',
    wrong: 'size: 280 MB',
    line: 'seed-grows:',
    // 540 × 280 MB.
    what: 'One take of seed-grows needs 151 GB; a card of body-a holds 64 GB.',
    // 20 s × 151.2 / 64 is 47.25 s.
    fix: 'Lengthen the interval of seed-grows to 48 s',
  },
  {
    sample: 'alum-tray',
    rule: 'growth-jumps',
    says: 'growth by the minute that was meant by the hour',
    right: 'subject-speed: 1.4 mm/h',
    wrong: 'subject-speed: 1.4 mm/min',
    line: 'interval: 20 s',
    // 40 mm at 1.4/3 mm a frame are 85.7 frames.
    what: 'The growth crosses the frame in 3.4 s; under 7 s it jumps.',
    fix: 'Shorten the interval to 9 s',
  },
  {
    sample: 'alum-tray',
    rule: 'cut-outruns-clips',
    says: 'a time-lapse that plays shorter than its cut',
    right: LAPSE,
    wrong: 'time-lapse: { interval: 20 s, duration: 80 min }',
    line: 'from: 2 s, duration: 8 s',
    // 240 frames at 25 fps; the cut ends at 10 s.
    what: 'hours uses seed-grows up to 10 s, but its clip plays 9.6 s.',
    // 10 s at 25 fps every 20 s are 5000 s, in whole minutes.
    fix: 'Run the time-lapse of seed-grows for 84 min',
  },
  {
    sample: 'alum-tray',
    rule: 'time-lapse-on-auto',
    says: 'automatic ISO over three hours',
    right: '    iso: 250\n',
    wrong: '    iso: auto\n',
    line: 'iso: auto',
    what: 'Automatic ISO flickers in a time-lapse.',
    fix: 'Set ISO 320',
  },
  {
    sample: 'alum-tray',
    rule: 'check-missing',
    says: 'an iris that nobody holds',
    right: '      aperture-held: open\n',
    wrong: '',
    line: 'preflight:',
    what: 'A check is missing in `seed-grows`: `aperture-held`.',
    fix: 'Add the missing checks of `seed-grows`',
  },
  {
    sample: 'first-drop',
    rule: 'clip-too-long',
    says: 'a take over the limit of its mode',
    right: 'take: { duration: 8 s, count: 4, settle: 5 s }',
    wrong: 'take: { duration: 20 s, count: 4, settle: 5 s }',
    line: 'duration: 20 s',
    what: 'The take is 20 s; slow-25 stops recording after 15 s.',
    fix: 'Shorten the take to 15 s',
  },
  {
    sample: 'first-drop',
    rule: 'slower-than-recorded',
    says: 'a clip slowed once more in the edit',
    right: 'from: 12 s, duration: 5 s }',
    wrong: 'from: 12 s, duration: 5 s, speed: 50 % }',
    line: 'speed: 50 %',
    what: 'lets-go runs at 50%; drop-lets-go has enough frames for 100% or faster.',
    fix: 'Set the speed to 100%',
  },
  {
    sample: 'first-drop',
    rule: 'cut-outruns-clips',
    says: 'an in point behind the end of the slowed clip',
    right: 'from: 12 s, duration: 5 s }',
    wrong: 'from: 36 s, duration: 5 s }',
    line: 'from: 36 s',
    // 8 s at 119.88 fps are 959 frames at 25.
    what: 'lets-go uses drop-lets-go up to 41 s, but its clip plays 38.4 s.',
    fix: 'Move the in point to 33.36 s',
  },
];

const isSaid = ({ severity }: { readonly severity: string }): boolean => severity !== 'hint';

const clean = new Map(
  [...new Set(DEFECTS.map(({ sample: name }) => name))].map((name) => [
    name,
    findingsOf(sample(name)).filter(isSaid),
  ]),
);

laws(
  DEFECTS,
  ({ rule, says }) => `${rule}: ${says}`,
  (defect, law) => {
    const whole = sample(defect.sample);
    const text = whole.replace(defect.right, () => defect.wrong);
    const core = coreWith(text);
    const own = core
      .findings(PLAN)
      .filter(({ rule, severity }) => rule === defect.rule && isSaid({ severity }));
    law('was not there before', () => {
      expect(text).not.toBe(whole);
      expect(clean.get(defect.sample)).toEqual([]);
    });
    law('is found once, where it stands', () => {
      expect(own.map(({ what }) => what)).toEqual([defect.what]);
      expect(text.split('\n')[own[0]!.range.start.line]).toContain(defect.line);
      if (defect.numbers) expect(own[0]!.numbers).toMatchObject(defect.numbers);
    });
    law('is gone with its fix', () => {
      const fixes = core.fixesOf(own[0]!);
      expect(fixes.map(({ title }) => title)).toContainEqual(expect.stringContaining(defect.fix));
      const fix = fixes.find(({ title }) => title.startsWith(defect.fix))!;
      const after = findingsOf(applied(text, fix.edits)).filter(isSaid);
      expect(after.map(({ rule }) => rule)).not.toContain(defect.rule);
    });
  },
);

describe('beside a time-lapse', () => {
  it('one cause is said once', () => {
    const text = sample('alum-tray').replace(
      LAPSE,
      () => 'time-lapse: { interval: 1.2 s, duration: 3 h }',
    );
    const rules = findingsOf(text).filter(({ severity }) => severity === 'error');
    expect(rules.map(({ rule }) => rule)).toEqual(['interval-does-not-fit']);
  });
});
