/** How many findings an edit places anew, counted, and that the others stand where they stood. */
import { expect, it, vi } from 'vitest';
import type { Core } from '../../shared/api/facade.ts';
import { FindingLocator } from '../../shared/workspace/located-findings.ts';
import { lineOf, planOf, TOO_BRIGHT, WELL_EXPOSED } from '../bench/plan-of.ts';
import { coreWith, findingsOf, PLAN } from '../support/plans.ts';

const SHOTS = 60;
const BRIGHT = planOf(SHOTS).replaceAll(`iso: ${WELL_EXPOSED}`, `iso: ${TOO_BRIGHT}`);

/** A core and its text, of which lines are replaced. */
class Typed {
  readonly core: Core = coreWith(BRIGHT);
  #lines = BRIGHT.split('\n');

  constructor() {
    expect(this.core.findings(PLAN).length).toBeGreaterThanOrEqual(SHOTS);
  }

  /** Replaces a line and returns how many findings are placed to show them all. */
  line(line: number, words: string): number {
    const range = {
      start: { line, character: 0 },
      end: { line, character: this.#lines[line]!.length },
    };
    this.core.edit(PLAN, range, words);
    this.#lines[line] = words;
    this.#lines = this.#lines.join('\n').split('\n');
    const place = vi.spyOn(FindingLocator.prototype, 'locate');
    const findings = this.core.findings(PLAN);
    const { length: placed } = place.mock.calls;
    place.mockRestore();
    expect(findings).toEqual(findingsOf(this.#lines.join('\n')));
    return placed;
  }
}

it('places few findings after an edit of one shot, and all after one that moves lines', () => {
  const typed = new Typed();
  const at = (shot: number, key: string) => lineOf(BRIGHT, shot, key);
  // Found otherwise, no more, again; and moved on its line.
  for (const words of [
    '    iso: 6400',
    `    iso: ${WELL_EXPOSED}`,
    '    iso:   3200',
    '    iso: "',
  ])
    expect(typed.line(at(50, 'iso'), words)).toBeLessThanOrEqual(6);
  expect(typed.line(at(50, 'iso'), '    iso: 3200')).toBeLessThanOrEqual(6);
  expect(typed.line(at(20, 'about'), '    abuot: one key that is none')).toBeLessThanOrEqual(6);
  expect(typed.line(at(40, 'iso'), `    iso: 3200 # brighter`)).toBeLessThanOrEqual(6);
  expect(typed.line(at(10, 'about'), '    about: a line more\n')).toBeGreaterThanOrEqual(SHOTS);
});
