/**
 * Random damage, the same on every run: whatever the bytes, everything that is said stands somewhere in
 * the text, no figure is without a value or a reason, and what was not touched comes to the same.
 */
import { expect, it } from 'vitest';
import type { CheckReport } from '../../shared/report/json.ts';
import { lamella } from '../published/support/command-line.ts';
import { type Random, randomFrom } from '../published/support/random.ts';
import { coreWith, PLAN } from '../support/plans.ts';
import { SOUND } from './support/broken-plans.ts';

/** What does most harm in YAML, and what is only odd. */
const PIECES = [
  ...[
    '"',
    "'",
    '[',
    ']',
    '{',
    '}',
    ':',
    ': ',
    ' #',
    '- ',
    '? ',
    ',',
    '|',
    '>',
    '&a ',
    '*a',
    '!!str ',
  ],
  ...[
    '\n',
    '\r',
    '\r\n',
    '\t',
    '\0',
    '\ufeff',
    '\u2028',
    '\u0085',
    '---\n',
    '...\n',
    '%TAG\n',
    '<<: ',
  ],
  ...[
    '  ',
    '\n  ',
    '\n    x: ',
    '0800',
    '1e999',
    '-1',
    ',5',
    '\u{1f41a}',
    '\ud83d',
    '__proto__: ',
    'shots:\n',
  ],
];

function damaged(random: Random): string {
  let text = SOUND;
  for (let count = random.whole(1, 6); count > 0; count--) {
    const at = random.whole(0, text.length);
    const cut = random.pick([0, 0, 1, random.whole(0, 40), random.whole(0, 400)]);
    const piece = random.pick([random.pick(PIECES), random.pick(PIECES), '']);
    text = text.slice(0, at) + piece + text.slice(at + cut);
  }
  return text;
}

const lengthsOf = (text: string) => text.split(/\r\n|\r|\n/).map(({ length }) => length);

it('damaged plans: all that is said stands in the text, and no figure is a guess', () => {
  const random = randomFrom(90210);
  const offenders: string[] = [];
  let figures = 0;
  for (let run = 0; run < 400; run++) {
    const text = damaged(random);
    const what = JSON.stringify(text);
    const core = coreWith(text);
    const lengths = lengthsOf(text);
    for (const { rule, range, what: words } of core.findings(PLAN)) {
      expect(rule, what).not.toBe('rule-failed');
      expect(words.length, what).toBeGreaterThan(0);
      for (const { line, character } of [range.start, range.end]) {
        expect(lengths[line], `${rule} on line ${line} of ${what}`).toBeDefined();
        expect(character, `${rule} in ${what}`).toBeLessThanOrEqual(lengths[line]!);
      }
      const forward =
        range.start.line < range.end.line ||
        (range.start.line === range.end.line && range.start.character <= range.end.character);
      expect(forward, what).toBe(true);
    }
    for (const { notKnown, ...its } of core.figures(PLAN).values()) {
      for (const [name, value] of Object.entries(its)) {
        figures++;
        const parts = name === 'depthMm' ? Object.entries(value as object) : [['', value]];
        for (const [part, one] of parts) {
          const full = part === '' ? name : `${name}.${part}`;
          if ((one === null) !== (notKnown[full] !== undefined))
            offenders.push(`${full}: ${one}, for the reason ${notKnown[full]}, of ${what}`);
          if (typeof one === 'number' && !Number.isFinite(one))
            offenders.push(`${full}: ${one} of ${what}`);
        }
      }
    }
  }
  expect(offenders).toEqual([]);
  expect(figures).toBeGreaterThan(10_000);
});

it('random bytes through the shipped command line: a report of every file, and no crash', () => {
  const random = randomFrom(1848);
  const files: Record<string, Uint8Array> = {};
  for (let index = 0; index < 150; index++) {
    const bytes = Buffer.from(SOUND, 'utf8').subarray(0, random.whole(0, 1600));
    const noise = Buffer.from(
      Array.from({ length: random.whole(1, 200) }, () => random.whole(0, 255)),
    );
    const at = random.whole(0, bytes.length);
    const whole = random.pick([
      noise,
      Buffer.concat([bytes.subarray(0, at), noise, bytes.subarray(at)]),
    ]);
    files[`${index + 1000}.shootplan.yaml`] = whole;
  }
  const { status, out, err } = lamella(['check', '.', '--format', 'json'], files);
  expect({ status, err }).toEqual({ status: 1, err: '' });
  const report = JSON.parse(out) as CheckReport;
  expect(report.files.map(({ file }) => file)).toEqual(Object.keys(files));
  for (const { file, findings } of report.files) {
    expect(
      findings.filter(({ rule }) => rule === 'rule-failed'),
      file,
    ).toEqual([]);
    // Noise is never passed off as a plan.
    expect(findings.filter(({ severity }) => severity === 'error').length, file).toBeGreaterThan(0);
    const text = Buffer.from(files[file]!).toString('utf8');
    const lines = lengthsOf(text).length;
    for (const { range } of findings) {
      expect(range.start.line, file).toBeGreaterThanOrEqual(1);
      expect(range.end.line, file).toBeLessThanOrEqual(lines);
    }
  }
});
