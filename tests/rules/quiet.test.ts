/** Quiet while something is being written, and never a crowd of findings for one gap. */
import { describe, expect, it } from 'vitest';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { TEXT_RULES } from '../../shared/rules/registry.ts';
import { changed, findingsOf } from '../support/plans.ts';

const PREFLIGHT = EXAMPLE_PLAN.indexOf('\npreflight:');
const withShot = (shot: string) =>
  `${EXAMPLE_PLAN.slice(0, PREFLIGHT)}${shot}${EXAMPLE_PLAN.slice(PREFLIGHT)}`;

const NEW = `  added:
    subject: frost-plate
    rig: bench
    field: 60 mm
    aperture: f/8
`;

const ofText = new Set(TEXT_RULES.map(({ name }) => name));
const before = findingsOf(EXAMPLE_PLAN).length;

describe('a new shot', () => {
  it('of four lines has at most two findings', () => {
    const found = findingsOf(withShot(NEW)).filter(({ severity }) => severity !== 'hint');
    expect(found.length).toBeLessThanOrEqual(2);
    expect(found.map(({ rule }) => rule)).toEqual(['not-known']);
  });

  it('without checks for every shot still has at most two', () => {
    const bare = changed(withShot(NEW), {
      preflight: null,
      'shots/frost': null,
      'shots/skin': null,
    });
    const found = findingsOf(bare).filter(({ severity }) => severity !== 'hint');
    expect(found.map(({ rule }) => rule).sort()).toEqual(['check-missing', 'not-known']);
  });

  it('asks for no checks before it has subject and rig', () => {
    for (const lines of [1, 2]) {
      const text = withShot(`${NEW.split('\n').slice(0, lines).join('\n')}\n`);
      expect(findingsOf(text).map(({ rule }) => rule)).not.toContain('check-missing');
    }
  });

  it('while it is being typed shows what is wrong with its text and nothing more', () => {
    for (let length = 1; length <= NEW.length; length++) {
      const text = withShot(
        `${NEW.slice(0, length)}${NEW.slice(0, length).endsWith('\n') ? '' : '\n'}`,
      );
      const found = findingsOf(text).filter(({ shot }) => shot === undefined || shot === 'added');
      const own = found.filter(({ shot, rule }) => shot === 'added' || ofText.has(rule));
      const broken = own.some(({ rule, severity }) => ofText.has(rule) && severity === 'error');
      const what = JSON.stringify(NEW.slice(0, length));
      if (broken)
        expect(
          own.every(({ rule }) => ofText.has(rule)),
          what,
        ).toBe(true);
      expect(own.filter(({ severity }) => severity !== 'hint').length, what).toBeLessThanOrEqual(2);
    }
  });

  it('while it is being typed changes nothing that is said elsewhere', () => {
    const elsewhere = (text: string) =>
      findingsOf(text)
        .filter(({ shot, rule }) => shot !== 'added' && !ofText.has(rule))
        .map(({ rule, what }) => `${rule}: ${what}`)
        // The new shot's own gaps are said of the shot; what it names is used now.
        .filter((said) => !said.includes(' of `added` next') && !said.startsWith('unused-name'));
    const was = elsewhere(EXAMPLE_PLAN);
    for (let length = 1; length <= NEW.length; length++) {
      const typed = NEW.slice(0, length);
      expect(
        elsewhere(withShot(typed.endsWith('\n') ? typed : `${typed}\n`)),
        JSON.stringify(typed),
      ).toEqual(was);
    }
  });

  it('broken anywhere in the middle leaves what is said of the shots around it', () => {
    const of = (text: string, shot: string) =>
      findingsOf(text)
        .filter((finding) => finding.shot === shot)
        .map(({ rule, what }) => `${rule}: ${what}`);
    for (const broken of [
      '    subject: "frost',
      '    light: [panel',
      '\tfield: 3',
      '    : x',
      '    {',
    ]) {
      const text = EXAMPLE_PLAN.replace('  skin:\n', `  broken:\n${broken}\n  skin:\n`);
      expect(of(text, 'broken'), broken).toEqual([]);
      expect(of(text, 'skin'), broken).toEqual(of(EXAMPLE_PLAN, 'skin'));
      expect(of(text, 'frost'), broken).toEqual(of(EXAMPLE_PLAN, 'frost'));
    }
  });
});

describe('what isn’t known', () => {
  it('is one finding a plan: the value that most shots wait for', () => {
    const text = changed(EXAMPLE_PLAN, {
      mains: null,
      'kit/lenses/macro-100/length': null,
      'shots/frost/light': '[bulb]',
      'shots/skin/light': '[bulb]',
    });
    const found = findingsOf(text).filter(({ rule }) => rule === 'not-known');
    expect(found.map(({ what, why, numbers }) => ({ said: `${what} ${why}`, numbers }))).toEqual([
      {
        said: 'Give `mains` of the plan next: 2 shots wait for it. It makes flicker known. 1 other value is missing or uncertain.',
        numbers: { shotsWaiting: 2, settles: 0, others: 1 },
      },
    ]);
  });

  it('is nothing where a usual value stands in for what is missing', () => {
    const text = changed(EXAMPLE_PLAN, { 'kit/lenses/macro-100/loss': null });
    expect(findingsOf(text).filter(({ rule }) => rule === 'not-known')).toEqual([]);
  });
});

it('the plan with nothing wrong has hints at most', () => {
  expect(findingsOf(EXAMPLE_PLAN).every(({ severity }) => severity === 'hint')).toBe(true);
  expect(before).toBeGreaterThan(0);
});
