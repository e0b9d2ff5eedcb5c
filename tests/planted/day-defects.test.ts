/** One mistake of each kind in a sound day: found where it is, with both numbers, and its fix clears it. */
import { describe, expect, it } from 'vitest';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { applied, changed, coreWith, findingsOf, PLAN } from '../support/plans.ts';

const SOUND: Readonly<Record<string, string>> = {
  day: '{ start: 09:00, end: 12:00, rig-change: 20 min, light-change: 3 min, subject-change: 4 min, new-film: 2 min }',
  'shots/frost/take': '{ duration: 10 min, count: 3, settle: 1 min }',
  'shots/skin/take': '{ duration: 15 s, count: 3, settle: 5 s }',
  'shots/skin/priority': '2',
};

/** What is said because of the day alone: the takes ask for a card and a battery too. */
const OF_DAYS: ReadonlySet<string> = new Set(['day-too-short', 'shot-starts-late']);

const ofDay = (text: string) => findingsOf(text).filter(({ rule }) => OF_DAYS.has(rule));

const DEFECTS = [
  {
    says: 'an end half an hour too early',
    change: { day: SOUND.day!.replace('12:00', '10:05') },
    rule: 'day-too-short',
    severity: 'warning',
    line: 'end: 10:05',
    what: 'The day is 30 min too short.',
    numbers: { neededS: 5700, availableS: 3900, rebuildingS: 3420 },
    fixes: ['Leave `skin` for another day', 'End the day at 10:35'],
  },
  {
    says: 'too early only if rebuilding is as slow as is assumed',
    change: { day: '{ start: 09:00, end: 10:20, new-film: 2 min, light-change: 3 min }' },
    rule: 'day-too-short',
    severity: 'note',
    line: 'end: 10:20',
    what: 'Probably the day is 7 min too short.',
    numbers: { neededS: 5220, availableS: 4800 },
    fixes: ['Leave `skin` for another day', 'End the day at 10:30'],
  },
  {
    says: 'an hour that comes before anything is built',
    change: { 'shots/frost/start': '09:10' },
    rule: 'shot-starts-late',
    severity: 'warning',
    line: 'start: 09:10',
    what: "`frost` can't begin at 09:10; the day reaches it at 09:27.",
    numbers: { lateS: 1020 },
    fixes: ['Start it at 09:30'],
  },
  {
    says: 'an hour at which the subject still grows',
    change: { 'shots/frost/start': '10:00', 'subjects/frost-plate/ready-after': '90 min' },
    rule: 'shot-starts-late',
    severity: 'warning',
    line: 'start: 10:00',
    what: "`frost` can't begin at 10:00; the day reaches it at 10:30.",
    numbers: { lateS: 1800 },
    fixes: ['Start it at 10:30'],
  },
] as const;

describe('a day', () => {
  it('has nothing wrong before a mistake is made', () => {
    expect(ofDay(changed(EXAMPLE_PLAN, SOUND))).toEqual([]);
  });

  it.each(DEFECTS)('with $says', ({ change, rule, severity, line, what, numbers, fixes }) => {
    const text = changed(EXAMPLE_PLAN, { ...SOUND, ...change });
    const core = coreWith(text);
    const found = core.findings(PLAN).filter((one) => OF_DAYS.has(one.rule));
    expect(found.map((one) => [one.rule, one.severity])).toEqual([[rule, severity]]);
    const [finding] = found;
    expect(finding!.what).toContain(what);
    expect(finding!.numbers).toMatchObject(numbers);
    const { start } = finding!.range;
    const at = text.split('\n')[start.line]!;
    expect(at).toContain(line);
    const offered = core.fixesOf(finding!);
    expect(offered.map(({ title }) => title)).toEqual(fixes);
    for (const { edits } of offered)
      expect(
        ofDay(
          applied(
            text,
            edits.filter(({ file }) => file === PLAN),
          ),
        ),
      ).toEqual([]);
  });

  it('says without which shots the others fit, and by which priority', () => {
    const text = changed(EXAMPLE_PLAN, { ...SOUND, ...DEFECTS[0].change });
    const [finding] = ofDay(text);
    expect(finding!.why).toContain('without `skin`');
    expect(finding!.related.map(({ words }) => words)).toEqual(['priority 2']);
  });

  it('that no shot fits into is only made longer', () => {
    const text = changed(EXAMPLE_PLAN, { ...SOUND, day: SOUND.day!.replace('12:00', '09:10') });
    const core = coreWith(text);
    const [finding] = core.findings(PLAN).filter(({ rule }) => rule === 'day-too-short');
    expect(finding!.why).toContain('No shot fits alone.');
    expect(core.fixesOf(finding!).map(({ title }) => title)).toEqual(['End the day at 10:35']);
  });
});
