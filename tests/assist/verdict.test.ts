/** The first line of a hover: what passes and what fails, as the findings have it. */
import { describe, expect, it } from 'vitest';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { each } from '../support/each.ts';
import { coreWith, PLAN } from '../support/plans.ts';
import { BENCH, hoverWords } from './support/bench.ts';

const verdict = (text: string, from: string, marked?: string): string =>
  hoverWords(text, from, marked).split('\n')[0]!;

const TILT = 'tilt: 4 deg';
const OPEN = BENCH.replace('f/16\n    shutter: 1/60', 'f/4\n    shutter: 1/60');
const at = (text: string): string => verdict(text, 'f/4\n    shutter: 1/60');

describe('the verdict of a hover', () => {
  it('says what fails before what passes, as the findings say', () => {
    expect(coreWith(OPEN).findings(PLAN)).toContainEqual(
      expect.objectContaining({ rule: 'depth-short', shot: 'near', severity: 'warning' }),
    );
    expect(at(OPEN)).toMatch(/^\*\*Fails: depth of field\*\* · .*Passes: /);
    expect(verdict(BENCH, '1/50 s')).toMatch(/^\*\*.*Passes: .*flicker/);
  });

  it('calls nothing passed that is not known', () => {
    const dark = BENCH.replace('    illuminance: 4000 lx\n', '');
    expect(verdict(BENCH, '800')).toContain('exposure');
    expect(hoverWords(dark, '800')).not.toMatch(/Passes|Fails/);
  });

  it('says what the plan accepts, and what the plan makes a note of', () => {
    const allow = `${TILT}\n    allow: { depth-short: { because: only the edge matters } }`;
    expect(at(OPEN.replace(TILT, allow))).toContain('Accepted in the plan: depth of field');
    const asNote = OPEN.replace('mains:', 'severity: { depth-short: note }\nmains:');
    expect(at(asNote)).toContain('Worth a look: depth of field');
  });

  it('says what may fail where the plan leaves the answer open', () => {
    const led = BENCH.replace('kind: tungsten', 'kind: led');
    expect(verdict(led, '1/60 s')).toContain('May fail: flicker');
  });

  it('judges nothing in a shot whose text has an error', () => {
    const broken = BENCH.replace('field: 72 mm', 'field: 72 nn');
    expect(hoverWords(broken, 'near:')).not.toMatch(/Passes|Fails/);
  });

  it('agrees with the findings wherever a shot of the example is pointed at', () => {
    const core = coreWith(EXAMPLE_PLAN);
    const lines = EXAMPLE_PLAN.split('\n');
    const first = lines.indexOf('shots:');
    const places = lines.flatMap((line, index) =>
      index > first
        ? [...line.matchAll(/\S+/g)].map(({ index: character }) => ({ line: index, character }))
        : [],
    );
    const failing = core.findings(PLAN).filter(({ severity }) => /error|warning/.test(severity));
    expect(failing).toEqual([]);
    let judged = 0;
    each(places, (place) => {
      const words = core.hover(PLAN, place)?.markdown ?? '';
      if (/\*\*Passes: /.test(words)) judged++;
      expect(words).not.toContain('Fails: ');
    });
    expect(judged).toBeGreaterThan(10);
  });
});
