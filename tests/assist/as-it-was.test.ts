/** What was taken out of an open document is offered again, with its price, and nowhere else. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Completion } from '../../shared/api/completions.ts';
import type { Core } from '../../shared/api/facade.ts';
import { planTemplate } from '../../shared/assist/template.ts';
import type { Node } from '../../shared/syntax/tree.ts';
import { caretAt } from '../../shared/text/caret.ts';
import type { Chunk } from '../../shared/text/chunk.ts';
import { ChunkedText } from '../../shared/text/chunked-text.ts';
import { parseChunk } from '../../shared/text/parse.ts';
import { applied, coreWith, PLAN } from '../support/plans.ts';
import { manyRuns } from '../support/runs.ts';
import { coreBeside, positionAt, sample } from './support/completing.ts';

/** A document as an editor holds it: what is found is found in the text as it is now. */
class Typist {
  readonly core: Core;

  constructor(text: string) {
    this.core = coreWith(text);
  }

  get text(): string {
    return this.core.text(PLAN)!;
  }

  offset(found: string, behind = found.length): number {
    const at = this.text.indexOf(found);
    if (at < 0) throw new Error(`${found} is not in the text.`);
    return at + behind;
  }

  /** Exchanges the first `found` by what `by` says of it. */
  exchange(found: string, by: string): this {
    return this.write(this.offset(found, 0), found.length, by);
  }

  /** Takes `value` out from behind `key`. */
  takeOut(key: string, value: string): this {
    return this.exchange(`${key}${value}`, key);
  }

  write(offset: number, length: number, by: string): this {
    const range = {
      start: positionAt(this.text, offset),
      end: positionAt(this.text, offset + length),
    };
    this.core.edit(PLAN, range, by);
    return this;
  }

  /** Deletes the character before the end of `found`, as many times. */
  backspace(found: string, times: number): this {
    let at = this.offset(found);
    for (let left = times; left > 0; left--) this.write(--at, 1, '');
    return this;
  }

  itemsBehind(key: string): readonly Completion[] {
    return this.core.completions(PLAN, positionAt(this.text, this.offset(key))).items;
  }

  wasBehind(key: string): Completion | undefined {
    const marked = this.itemsBehind(key).filter(isMarked);
    expect(marked.length).toBeLessThanOrEqual(1);
    return marked[0];
  }
}

const isMarked = ({ detail }: Completion): boolean => /^previous value\b/.test(detail);

const TEMPLATE = planTemplate();
const typist = (): Typist => new Typist(TEMPLATE);

describe('what was taken out', () => {
  test('is offered with what it comes to in the shot, in its place among the others', () => {
    const plan = typist().takeOut('\n    aperture: ', 'f/8');
    const items = plan.itemsBehind('\n    aperture: ');
    const was = items.find(isMarked);
    expect(was?.label).toBe('f/8');
    expect(was?.detail).toMatch(/^previous value · .*DOF .*, needs .*/);
    const fresh = coreWith(plan.text).completions(
      PLAN,
      positionAt(plan.text, plan.offset('\n    aperture: ')),
    );
    expect(items.map(({ label }) => label)).toEqual(fresh.items.map(({ label }) => label));
    expect(applied(plan.text, [was!])).toBe(TEMPLATE);
  });

  test('is offered where nothing could be proposed, or what stood there cannot be done', () => {
    const text = typist().takeOut('title: ', /^title: (.*)$/m.exec(TEMPLATE)![1]!);
    expect(text.wasBehind('title: ')?.text).toBe(/^title: (.*)$/m.exec(TEMPLATE)![1]);
    const slow = new Typist(TEMPLATE.replace(/(?<=\n {4}shutter: ).*/, '2 s'));
    const was = slow.takeOut('\n    shutter: ', '2 s').wasBehind('\n    shutter: ');
    expect(was).toMatchObject({ label: '2 s', preselect: false });
    expect(was?.detail).toMatch(/°/);
  });

  test('is offered beside what was typed in its place', () => {
    const plan = typist().takeOut('\n    iso: ', '3200').exchange('\n    iso: ', '\n    iso: 8');
    expect(plan.wasBehind('\n    iso: 8')?.text).toBe('3200');
    plan.exchange('\n    iso: 8', '\n    iso: 800');
    expect(plan.wasBehind('\n    iso: 800')).toMatchObject({ text: '3200', filter: '800' });
  });

  test('is whole, however it was taken out', () => {
    const plan = typist().backspace('\n    iso: 3200', 3);
    expect(plan.wasBehind('\n    iso: 3')?.text).toBe('3200');
    plan.backspace('\n    iso: 3', 1);
    expect(plan.wasBehind('\n    iso: ')?.text).toBe('3200');
    plan.backspace('\n    iso: ', 1);
    expect(plan.wasBehind('\n    iso:')?.text).toBe(' 3200');
    const noted = new Typist(TEMPLATE.replace('iso: 3200', 'iso: 3200  # as metered'));
    noted.takeOut('\n    iso: ', '3200  # as metered');
    expect(noted.wasBehind('\n    iso: ')?.text).toBe('3200');
  });

  test('in several shots at once is whole too', () => {
    const plan = typist();
    const [one, other] = ['\n    iso: 3200', '\n    aperture: f/8'];
    plan.backspace(one, 1).backspace(other, 1).backspace(one.slice(0, -1), 1);
    expect(plan.wasBehind('\n    iso: 32')?.text).toBe('3200');
    expect(plan.wasBehind('\n    aperture: f/')?.text).toBe('f/8');
  });

  test('in quotes, braces and brackets comes back as it was written', () => {
    const quoted = new Typist(TEMPLATE.replace(/^title: .*$/m, 'title: "Salt: a start"'));
    const whole = quoted.text;
    quoted.exchange('Salt: a start', '');
    expect(applied(quoted.text, [quoted.wasBehind('title: "')!])).toBe(whole);

    const flow = typist().exchange('count: 3', 'count: ');
    expect(applied(flow.text, [flow.wasBehind('count: ')!])).toBe(TEMPLATE);

    const take = '{ duration: 20 s, count: 3, settle: 5 s }';
    const record = typist().takeOut('\n    take: ', take);
    expect(record.wasBehind('\n    take: ')?.text).toBe(take);
    const list = typist().exchange('\n    light: [panel]', '\n    light: ');
    expect(list.wasBehind('\n    light: ')?.text).toBe('[panel]');
  });

  test('is what stood before the last change, once something else was done', () => {
    const plan = typist().takeOut('\n    iso: ', '3200').exchange('\n    iso: ', '\n    iso: 800');
    // Looked at, and deleted again: what it is compared with is the first.
    plan.takeOut('\n    iso: ', '800');
    expect(plan.wasBehind('\n    iso: ')?.text).toBe('3200');
    plan.exchange('\n    iso: ', '\n    iso: 1600').exchange('aperture: f/8', 'aperture: f/11');
    expect(plan.wasBehind('\n    iso: 1600')?.text).toBe('3200');
    plan.takeOut('\n    iso: ', '1600');
    expect(plan.wasBehind('\n    iso: ')?.text).toBe('1600');
  });

  test('is not offered where it stands, nor to those who see the text for the first time', () => {
    const plan = typist().takeOut('\n    iso: ', '3200').exchange('\n    iso: ', '\n    iso: 3200');
    expect(plan.wasBehind('\n    iso: 3200')).toBeUndefined();
    plan.takeOut('\n    iso: ', '3200');
    plan.core.give(PLAN, plan.text);
    expect(plan.wasBehind('\n    iso: ')).toBeUndefined();
  });

  test('is there still when fixes of its shot have been tried out', () => {
    const plan = typist().takeOut('\n    iso: ', '3200').exchange('[panel]', '[panl]');
    const everywhere = { start: { line: 0, character: 0 }, end: { line: 900, character: 0 } };
    expect(plan.core.fixesIn(PLAN, everywhere).map(({ title }) => title)).toEqual(['Write panel']);
    expect(plan.wasBehind('\n    iso: ')?.text).toBe('3200');
  });

  test('is gone with the document', () => {
    const plan = typist().takeOut('\n    iso: ', '3200');
    const { text } = plan;
    plan.core.close(PLAN);
    plan.core.give(PLAN, text);
    expect(plan.wasBehind('\n    iso: ')).toBeUndefined();
  });

  test('is kept of a fixed number of values, the latest', () => {
    const lines = Array.from({ length: 50 }, (_, index) => `    tube-${index}: { mass: 1 g }\n`);
    const plan = new Typist(`shootplan: 1\nkit:\n  tubes:\n${lines.join('')}`);
    for (let index = 0; index < 50; index++)
      plan.exchange(`-${index}: { mass: 1 g`, `-${index}: { mass: `);
    expect(plan.wasBehind('-0: { mass: ')).toBeUndefined();
    expect(plan.wasBehind('-17: { mass: ')).toBeUndefined();
    expect(plan.wasBehind('-18: { mass: ')?.text).toBe('1 g');
    expect(plan.wasBehind('-49: { mass: ')?.text).toBe('1 g');
  });
});

describe('what was taken out stays at its field', () => {
  const gone = (): Typist => typist().takeOut('\n    iso: ', '3200');

  test('while lines come and go round it', () => {
    const plan = gone().exchange('shootplan: 1', '# a\n# b\nshootplan: 1');
    plan.exchange('\n    aperture: f/8\n', '\n    tilt: 2 deg\n    aperture: f/8\n');
    expect(plan.wasBehind('\n    iso: ')?.text).toBe('3200');
    plan.exchange('\n    tilt: 2 deg', '').exchange('# a\n', '');
    expect(plan.wasBehind('\n    iso: ')?.text).toBe('3200');
  });

  test('and is not another key’s that comes in its place', () => {
    const plan = gone().exchange('\n    iso: ', '\n    tilt: ');
    expect(plan.wasBehind('\n    tilt: ')).toBeUndefined();
    const line = gone()
      .exchange('\n    iso: ', '')
      .exchange('\n    aperture', '\n    iso: \n    aperture');
    expect(line.wasBehind('\n    iso: ')).toBeUndefined();
  });

  test('nor another item’s of its list', () => {
    const plan = new Typist(TEMPLATE.replace('light: [panel]', 'light: [left, right]'));
    plan.exchange('left', '');
    expect(plan.wasBehind('light: [')?.text).toBe('left');
    plan.exchange('[, right', '[right');
    expect(plan.wasBehind('light: [')).toBeUndefined();
  });

  test('nor another shot’s that takes its name', () => {
    const plan = gone();
    const top = plan.offset('shots:\n');
    const shot = plan.text.slice(top, plan.offset('\n    iso: \n'));
    const twin = gone().write(top, 0, shot);
    expect(twin.wasBehind('\n    iso: ')).toBeUndefined();
    plan.exchange('shots:\n  first:', 'shots:\n  other:');
    expect(plan.wasBehind('\n    iso: ')).toBeUndefined();
    plan.write(top, 0, shot);
    expect(plan.wasBehind('\n    iso: ')).toBeUndefined();
    const again = gone().exchange(shot, '').write(top, 0, shot);
    expect(again.wasBehind('\n    iso: ')).toBeUndefined();
    // Its own name given back, it is the same field again.
    const back = gone().exchange('\n  first:', '\n  other:').exchange('\n  other:', '\n  first:');
    expect(back.wasBehind('\n    iso: ')?.text).toBe('3200');
  });
});

/** Every value of a text as its path and how it is written, by the chunks that it was read in. */
function valuesOf(text: string, known: Map<string, readonly string[]>): readonly string[] {
  return ChunkedText.from(text).chunks.flatMap((chunk) => {
    const key = `${chunk.path.join('/')}\n${chunk.text}`;
    const values = known.get(key) ?? valuesIn(chunk);
    known.set(key, values);
    return values;
  });
}

function valuesIn(chunk: Chunk): string[] {
  const found: string[] = [];
  const walk = (node: Node | null, path: string): void => {
    if (!node) return;
    found.push(`${path}=${chunk.text.slice(node.span.start, node.span.end)}`);
    if (node.kind === 'map')
      for (const { key, value } of node.pairs) walk(value, `${path}/${key.text}`);
    if (node.kind === 'seq')
      for (const [index, item] of node.items.entries()) walk(item, `${path}/${index}`);
  };
  walk(parseChunk(chunk).tree?.pairs[0]?.value ?? null, chunk.path.join('/'));
  return found;
}

test('whatever is edited, what is offered as it was has stood at that very path', () => {
  const whole = sample('slick.shootplan.yaml');
  const known = new Map<string, readonly string[]>();
  const pieces = ['', '', '', '5', 'f/8', '\n', '  ', ', ', ': ', '"', '- ', '}', 'iso: ', '# x'];
  let offered = 0;
  fc.assert(
    fc.property(
      fc.array(fc.tuple(fc.nat(), fc.nat(24), fc.constantFrom(...pieces)), {
        minLength: 5,
        maxLength: 25,
      }),
      (edits) => {
        const core = coreBeside(whole);
        const stood = new Set(valuesOf(whole, known));
        let near = 0;
        for (const [place, length, written] of edits) {
          const text = core.text(PLAN)!;
          // Most edits are made close to the one before.
          near = place % 4 === 0 ? (place >> 2) % text.length : near + ((place >> 2) % 40) - 20;
          const from = Math.max(0, Math.min(text.length, near));
          const to = Math.min(text.length, from + length);
          core.edit(PLAN, { start: positionAt(text, from), end: positionAt(text, to) }, written);
          const now = core.text(PLAN)!;
          const position = positionAt(now, Math.min(now.length, from + written.length));
          for (const item of core.completions(PLAN, position).items.filter(isMarked)) {
            const path = caretAt(ChunkedText.from(now), position)?.path.join('/');
            offered++;
            expect(stood).toContain(`${path}=${item.text.trim()}`);
          }
          for (const value of valuesOf(now, known)) stood.add(value);
        }
      },
    ),
    { numRuns: manyRuns(60) },
  );
  expect(offered).toBeGreaterThan(10);
}, 3_600_000);
