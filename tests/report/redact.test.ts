/** A report gives nothing away that its author wrote, and a maintainer finds in it what was found. */
import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { reportOf } from '../../server/report.ts';
import { createCore } from '../../shared/core/core.ts';
import { Redactor } from '../../shared/report/redact/redact.ts';
import { languageWords } from '../../shared/report/redact/vocabulary.ts';
import { hostilePlan } from '../fuzz/text-plans.ts';
import { each } from '../support/each.ts';
import { coreWith, PLAN, ROOT } from '../support/plans.ts';

const samples = readdirSync('samples')
  .filter((name) => name.endsWith('.shootplan.yaml'))
  .map((name) => [name, readFileSync(`samples/${name}`, 'utf8')] as const);

const words = languageWords();

describe('a redacted text', () => {
  it('of every sample: no word but the language’s, every line as long as it was', () => {
    each(samples, ([_, text]) => {
      const redacted = new Redactor().text(text);
      expect(redacted.split('\n').map(({ length }) => length)).toEqual(
        text.split('\n').map(({ length }) => length),
      );
      const own = [...text.matchAll(/[\p{L}_][\p{L}\p{N}_-]*/gu)]
        .map(([word]) => word)
        .filter((word) => !words.has(word) && word.length > 3);
      expect(own.length).toBeGreaterThan(10);
      const left = new Set(
        [...redacted.matchAll(/[\p{L}_][\p{L}\p{N}_-]*/gu)].map(([word]) => word),
      );
      expect(own.filter((word) => left.has(word) && word !== 'yaml')).toEqual([]);
    });
  });

  it('of every sample: the same is found in it, on the same lines', () => {
    each(samples, ([_, text]) => {
      const others = Object.fromEntries(samples);
      const found = (core: ReturnType<typeof coreWith>, file: string) =>
        core.findings(file).map(({ rule, range }) => `${range.start.line} ${rule}`);
      const redactor = new Redactor();
      const was = found(coreWith(text, others), PLAN);
      const files = Object.fromEntries(
        Object.entries(others).map(([name, other]) => [redactor.path(name), redactor.text(other)]),
      );
      expect(found(coreWith(redactor.text(text), files), PLAN)).toEqual(was);
    });
  });

  it('keeps texts and comments from telling, though their words be the language’s', () => {
    const redact = (text: string) => new Redactor().text(text);
    expect(redact('title: film of a bubble 1987')).not.toMatch(/film|bubble|1987/);
    expect(redact('# slide the lens 42 mm')).not.toMatch(/slide|lens|42/);
    expect(redact('a: { because: the film, up-to: 0.6 mm }')).toMatch(
      /because: \w{3} \w{4}, up-to: 0\.6 mm/,
    );
    expect(redact('aperture: f/16   # ask lens')).toMatch(/^aperture: f\/16 {3}# \w{3} \w{4}$/);
  });

  it('replaces the same by the same, and different by different', () => {
    const redacted = new Redactor().text('rigs: { stack: x, stork: x }\nrig: stack\n');
    const [, first, second, again] =
      /rigs: \{ (\w+): x, (\w+): x \}\nrig: (\w+)/.exec(redacted) ?? [];
    expect(again).toBe(first);
    expect(second).not.toBe(first);
  });

  it('is as long as it was, whatever the text', () => {
    fc.assert(
      fc.property(hostilePlan, (text) => {
        const redacted = new Redactor().text(text);
        expect(redacted.length).toBe(text.length);
        expect(redacted.split(/\r\n|\r|\n/).length).toBe(text.split(/\r\n|\r|\n/).length);
      }),
      { numRuns: 200 },
    );
  });
});

describe('a report', () => {
  it('holds the plan and what it uses by other names, and what is found', () => {
    const kit = 'kit:\n  tubes:\n    secret-tube: { length: 12 }\n';
    const core = coreWith(
      'shootplan: 1\nuse: [ours/secret-kit.shootplan.yaml]\nrigs: { r: { parts: [secret-tube] } }\n',
      { 'ours/secret-kit.shootplan.yaml': kit },
    );
    const report = reportOf(core, createCore, PLAN, ['a fact'])!;
    expect(report).not.toMatch(/secret|ours/);
    expect(report).toContain('- a fact');
    expect(report).toMatch(/3:\d+ error unit/);
    expect(report).not.toContain('In the plan as it is');
    expect(report.match(/^```yaml$/gm)).toHaveLength(2);
  });

  it('has a fence that no text of a plan ends', () => {
    const core = coreWith('title: |\n  ````\n  # no heading\n');
    expect(reportOf(core, createCore, PLAN, [])).toContain('`````yaml\n');
  });

  it('is of a plan that is there', () => {
    expect(reportOf(coreWith(''), createCore, `${ROOT}/other.shootplan.yaml`, [])).toBeNull();
  });
});
