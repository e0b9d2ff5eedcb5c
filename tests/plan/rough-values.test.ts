/** Ranges that people write in other ways: understood, or told how they are written here. */
import { expect, it } from 'vitest';
import { entryAt } from '../../shared/plan/entry-id.ts';
import type { DefName } from '../../shared/plan/generated/names.ts';
import { lowerEntry } from '../../shared/plan/lower.ts';
import { each } from '../support/each.ts';
import { nodeOf } from './support/node-of.ts';

const from = { file: 'file:///plan', entry: entryAt('kit', 'lenses', 'long-200') };

const said = (def: DefName, key: string, text: string) =>
  lowerEntry(def, nodeOf({ [key]: text }), from)
    .problems.filter(({ at }) => at.path.join('/') === key)
    .map(({ code, fixes }) => [code, ...fixes.map(({ title }) => title)]);

/** Each text with the code of what is found, and its fixes, best first. */
const TEXTS: readonly (readonly [DefName, key: string, text: string, ...found: string[]])[] = [
  ['lens', 'length', '50 to 80 mm'],
  ['lens', 'length', '50mm-80mm', 'usual-spelling', 'Write 50 to 80 mm'],
  ['lens', 'length', '50..80 mm', 'usual-spelling', 'Write 50 to 80 mm'],
  ['lens', 'length', '50 mm +- 2 mm', 'usual-spelling', 'Write 50 \u00b1 2 mm'],
  ['lens', 'length', 'ca. 50 mm', 'form', 'Write 50 mm \u00b1 10 %', 'Write 50 mm'],
  ['lens', 'length', '~50 mm', 'form', 'Write 50 mm \u00b1 10 %', 'Write 50 mm'],
  ['lens', 'length', 'about 50mm', 'form', 'Write 50 mm \u00b1 10 %', 'Write 50 mm'],
  ['lens', 'length', '50..80', 'no-unit', 'Write 50 to 80 mm'],
  ['lens', 'length', '50 to 80', 'no-unit', 'Write 50 to 80 mm'],
  ['lens', 'length', '50 bis 80 mm', 'form', 'Write 50 to 80 mm'],
  ['lens', 'length', '50 \u00e0 80 mm', 'form', 'Write 50 to 80 mm'],
  ['lens', 'length', 'between 50 and 80 mm', 'form', 'Write 50 to 80 mm'],
  ['lens', 'length', 'from 50 to 80 mm', 'form', 'Write 50 to 80 mm'],
  ['lens', 'length', '50 mm \u00b12', 'form', 'Write 50 \u00b1 2 mm'],
  ['lens', 'length', '50 (\u00b12) mm', 'form', 'Write 50 \u00b1 2 mm'],
  ['lens', 'length', '50,5 to 80,5 mm', 'decimal-comma', 'Write 50.5 to 80.5 mm'],
  ['lens', 'length', '50 \u00b1 0,5 mm', 'decimal-comma', 'Write 50 \u00b1 0.5 mm'],
  ['lens', 'length', '5e1 to 8e1 mm', 'not-a-number', 'Write 50 to 80 mm'],
  ['lens', 'loss', '0,1-0,5 stops', 'decimal-comma', 'Write 0.1 to 0.5 stops'],
  ['lens', 'loss', '~0.3 stops', 'form', 'Write 0.3 stops \u00b1 10 %', 'Write 0.3 stops'],
  ['lens', 'pupil-ratio', '0.8 bis 1', 'form', 'Write 0.8 to 1'],
  ['lens', 'pupil-ratio', '~0.8', 'form', 'Write 0.8 \u00b1 10 %', 'Write 0.8'],
  ['subject', 'reflectance', '~30 %', 'form', 'Write 30 %'],
  ['subject', 'lifetime', '30 bis 60 s', 'form', 'Write 30 to 60 s'],
  // Where no such quantity is, no fix is offered: which end was meant can't be told.
  ['lens', 'length', '0 to 50 mm', 'out-of-range'],
  ['subject', 'reflectance', '90 to 110 %', 'out-of-range'],
  // What is no range at all is told as before.
  ['lens', 'length', '50 kg', 'unknown-unit'],
];

it('each is read or told apart, with its way out', () => {
  each(
    TEXTS,
    ([def, key, text, ...found]) => {
      const [first, ...others] = said(def, key, text);
      expect(others).toEqual([]);
      expect((first ?? []).slice(0, Math.max(found.length, 1))).toEqual(found);
    },
    ([, key, text]) => `${key}: ${text}`,
  );
});

it('where a key takes no range, none is offered', () => {
  // A filter thread is printed on the lens.
  for (const text of ['60 bis 67 mm', '60 to 67 mm', '~67 mm']) {
    const [[, ...fixes] = []] = said('lens', 'filter-thread', text);
    expect(fixes.join(' ')).not.toMatch(/ to |\u00b1/);
  }
});
