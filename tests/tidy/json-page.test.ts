/** The page of the JSON lists the figures that the catalogue declares. */
import { expect, it } from 'vitest';
import { JSON_PAGE_PATH, jsonPage, jsonPageOf } from '../../client/build/json-page.ts';
import { DECLARATIONS } from '../../shared/figures/catalogue/catalogue.ts';
import { ROOT, read } from './support/project.ts';

const PAGE = read(JSON_PAGE_PATH);

it('the page is what the catalogue says', () => {
  const { is, shouldBe } = jsonPageOf(ROOT);
  expect(is === shouldBe, 'stale: run node client/build/json-page.mjs').toBe(true);
});

it('has a row for every figure, and none of another', () => {
  const rows = PAGE.split('\n').map((line) => /^\| `([^`]+)` \|/.exec(line)?.[1]);
  const figures = rows.slice(rows.indexOf('shots') + 1, rows.indexOf('notKnown'));
  expect(figures).toEqual([...DECLARATIONS.keys()]);
});

it('a figure more or less makes it stale, and what is written by hand stays', () => {
  const less = jsonPage(PAGE, new Map([...DECLARATIONS].slice(1)));
  expect(PAGE.split('\n').filter((line) => !less.includes(line))).toEqual([
    '| `magnification` | | m, subject to sensor | | |',
  ]);
  expect(jsonPage(less)).toBe(PAGE);
  expect(() => jsonPage('by hand')).toThrow('lost the rows');
});
