/**
 * The figures of a shot in shared/report/JSON.md, made from the catalogue of figures: the rows between
 * those of `shots` and `notKnown`. All others are written by hand and kept.
 */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { ABOUT } from '../../shared/figures/catalogue/about.ts';
import { DECLARATIONS, type FigureName } from '../../shared/figures/catalogue/catalogue.ts';
import type { Declaration } from '../../shared/figures/catalogue/declaration.ts';
import type { Shape } from '../../shared/figures/catalogue/shape.ts';
import type { Owner } from '../../shared/figures/not-applicable.ts';
import { UNITS } from '../../shared/say/units.ts';

export const JSON_PAGE_PATH = 'shared/report/JSON.md';

const BEFORE = /^\| `shots` \|/;
const BEHIND = /^\| `notKnown` \|/;

/** The page as the catalogue would have it. */
export function jsonPage(page: string, declarations: typeof DECLARATIONS = DECLARATIONS): string {
  const lines = page.split('\n');
  const [from, to] = [BEFORE, BEHIND].map((row) => lines.findIndex((line) => row.test(line)));
  if (from === undefined || to === undefined || from < 0 || to < from)
    throw new Error(`${JSON_PAGE_PATH} has lost the rows around the figures of a shot`);
  const rows = [...declarations].map(([name, declared]) => row(name as FigureName, declared));
  return [...lines.slice(0, from + 1), ...rows, ...lines.slice(to)].join('\n');
}

const row = (name: FigureName, { is, only, rules = [] }: Declaration): string => {
  const cells = [
    symbolsIn(is).join(', '),
    ABOUT[name],
    only ? OWNERS[only] : '',
    rules.map((rule) => `\`${rule}\``).join(', '),
  ];
  return `| \`${name}\` | ${cells.map(cell).join('| ')}|`;
};

const OWNERS: Readonly<Record<Owner, string>> = {
  mirror: 'mirror-like subjects',
  flatMirror: 'flat mirrors',
  bubble: 'bubbles',
  film: 'films',
  glossy: 'glossy subjects',
  clear: 'subjects lit from behind',
  levelFilm: 'level films',
  support: 'supported rigs',
  boom: 'booms',
  pull: 'focus pulls',
  sweep: 'slides, pans and tilts',
  stand: 'rigs on a stand',
  timeLapse: 'time-lapses',
  ownSpeed: 'time-lapses, conformed clips',
  stack: 'focus stacks',
};

const cell = (text: string): string => (text === '' ? '' : `${text} `);

/** The units of all numbers in it, each once. */
function symbolsIn(shape: Shape): readonly string[] {
  switch (shape.kind) {
    case 'word':
      return [];
    case 'number':
    case 'pair':
      return [UNITS[shape.unit].symbol].filter((symbol) => symbol !== '');
    case 'list':
      return symbolsIn(shape.item);
    case 'record':
      return [
        ...new Set(Object.values(shape.parts).flatMap((part) => (part ? symbolsIn(part.is) : []))),
      ];
  }
}

/** The page of the project at `root`, and what the catalogue makes of it. */
export function jsonPageOf(root: string): { readonly is: string; readonly shouldBe: string } {
  const is = readFileSync(path.join(root, JSON_PAGE_PATH), 'utf8');
  return { is, shouldBe: jsonPage(is) };
}
