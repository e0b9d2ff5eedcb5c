/** A person who has never seen the language: a plan from an empty file, by what is offered alone. */
import { describe, expect, test } from 'vitest';
import type { Completion } from '../../shared/api/completions.ts';
import type { Core } from '../../shared/api/facade.ts';
import { applied, coreWith, PLAN } from '../support/plans.ts';
import { positionAt } from './support/completing.ts';

/** A text that is only ever changed by choosing, by going to a new line, and by filling in words. */
class Writer {
  text = '';
  /** Offset of the caret. */
  at = 0;

  get core(): Core {
    return coreWith(this.text);
  }

  offered(): readonly Completion[] {
    return this.core.completions(PLAN, positionAt(this.text, this.at)).items;
  }

  choose(label?: string): this {
    const items = this.offered();
    const item = items.find((each) =>
      label === undefined ? each.preselect : each.label === label,
    );
    const labels = items.map((each) => each.label).join(', ');
    if (!item)
      throw new Error(`${label ?? 'nothing chosen'} is not among: ${labels}\n${this.text}`);
    const behind = this.text.length - this.#offset(item.range.end);
    this.text = applied(this.text, [item]);
    this.at = this.text.length - behind;
    return this;
  }

  /** A new line at the end of the text, indented as the editor does it. */
  line(column: number): this {
    this.text = `${this.text.replace(/\n*$/, '')}\n${' '.repeat(column)}`;
    this.at = this.text.length;
    return this;
  }

  /** The value that a key was given is taken out again, and another chosen. */
  rechoose(label?: string): this {
    const start = this.text.lastIndexOf(': ', this.at) + 2;
    this.text = this.text.slice(0, start) + this.text.slice(this.at);
    this.at = start;
    return this.choose(label);
  }

  #offset({ line, character }: Completion['range']['end']): number {
    return this.text.split('\n').slice(0, line).join('\n').length + (line > 0 ? 1 : 0) + character;
  }

  findings() {
    return this.core
      .findings(PLAN)
      .filter(({ severity }) => severity !== 'hint')
      .map(({ rule, what }) => `${rule}: ${what}`);
  }
}

const SECTIONS = ['kit', 'rigs', 'lights', 'subjects', 'shots', 'preflight'];

describe('a plan written by completions alone', () => {
  test('section by section', () => {
    const writer = new Writer();
    const fields = ['shootplan', 'title', 'about', 'deliver', 'mains'];
    for (const key of [...fields, ...SECTIONS]) writer.choose(key).line(0);
    expect(writer.findings()).toEqual([]);
    expect(writer.core.state(PLAN)).toEqual({ ready: 1, shots: 1 });
  });

  test('the whole of it at once', () => {
    const writer = new Writer().choose('new plan');
    expect(writer.findings()).toEqual([]);
  });

  test('a shot key by key, with what is chosen already at each', () => {
    const writer = new Writer();
    for (const key of ['shootplan', 'deliver', 'mains', ...SECTIONS]) writer.choose(key).line(0);
    const shots = writer.text.indexOf('  first:');
    const end = writer.text.indexOf('preflight:');
    const [before, behind] = [writer.text.slice(0, shots), writer.text.slice(end)];
    writer.text = `${behind}${before}  second:`;
    writer.line(4);
    const keys = [
      'subject',
      'rig',
      'record',
      'light',
      'field',
      'shutter',
      'aperture',
      'iso',
      'white-balance',
    ];
    for (const key of keys) {
      writer.choose(key);
      if (key !== 'light') writer.rechoose();
      writer.line(4);
    }
    writer.choose('take').line(0);
    expect(writer.findings()).toEqual([]);
    expect(writer.core.state(PLAN)).toEqual({ ready: 1, shots: 1 });
  });

  test('every kind of entry, one more of each', () => {
    const writer = new Writer();
    for (const key of ['shootplan', 'deliver', 'mains', ...SECTIONS, 'edit', 'clips'])
      writer.choose(key).line(0);
    for (const group of ['tubes', 'converters', 'close-up-lenses', 'filters', 'stands']) {
      const kit = writer.text.indexOf('\nrigs:');
      writer.text = `${writer.text.slice(0, kit)}\n  ${writer.text.slice(kit)}`;
      writer.at = kit + 3;
      writer.choose(group);
    }
    writer.line(0);
    const errors = writer.core.findings(PLAN).filter(({ severity }) => severity === 'error');
    expect(errors.map(({ what }) => what)).toEqual([]);
    expect(Object.keys(Object.fromEntries(writer.core.figures(PLAN)))).toEqual(['first']);
  });
});
