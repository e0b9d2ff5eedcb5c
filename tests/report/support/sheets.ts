/** Sheets of plans as pages that can be looked into. */
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { JSDOM } from 'jsdom';
import type { Core } from '../../../shared/api/facade.ts';
import { sheetPage } from '../../../shared/report/sheet/html.ts';
import { SHEET_STYLE } from '../../../shared/report/sheet/style.ts';
import { Say } from '../../../shared/say/say.ts';
import { coreWith, PLAN } from '../../support/plans.ts';

const SAMPLES = new URL('../../../samples/', import.meta.url);

const read = (name: string): string => readFileSync(new URL(name, SAMPLES), 'utf8');

export const KIT = 'workshop-kit.shootplan.yaml';

/** Every sample's name and text. */
export const samples: readonly (readonly [name: string, text: string])[] = readdirSync(SAMPLES)
  .filter((name) => name.endsWith('.shootplan.yaml'))
  .map((name) => [name, read(name)]);

export const sampleCore = (text: string): Core => coreWith(text, { [KIT]: read(KIT) });

export const STYLE_HASH = `sha256-${createHash('sha256').update(SHEET_STYLE).digest('base64')}`;

export const pageOf = (core: Core): string =>
  sheetPage(core.sheet(PLAN, { isWrittenOn: true }), { say: new Say() }, STYLE_HASH);

export const documentOf = (html: string): Document => new JSDOM(html).window.document;

/** The section of a shot. */
export function sectionOf(page: Document, shot: string): Element {
  const found = [...page.querySelectorAll('.shot')].find(
    (section) => section.querySelector('h2')?.textContent === shot,
  );
  if (!found) throw new Error(`no section of ${shot}`);
  return found;
}

/** A drawing of a shot by its title, and what measures in it. */
export function drawing(page: Document, shot: string, title: string) {
  const figure = [...sectionOf(page, shot).querySelectorAll('figure')].find(
    (one) => one.querySelector('h3')?.textContent === title,
  );
  const svg = figure?.querySelector('svg');
  if (!figure || !svg) throw new Error(`no drawing "${title}" of ${shot}`);
  const mmPerUnit = Number(svg.getAttribute('data-mm-per-unit'));
  const one = (selector: string): Element => {
    const found = svg.querySelectorAll(selector);
    if (found.length !== 1) throw new Error(`${found.length} of ${selector} in "${title}"`);
    return found[0]!;
  };
  const number = (of: Element, name: string): number => Number(of.getAttribute(name));
  return {
    svg,
    figure,
    mmPerUnit,
    /** A number of the only element that a selector finds, in the drawing's units. */
    at: (selector: string, name: string) => number(one(selector), name),
    all: (selector: string) => [...svg.querySelectorAll(selector)],
    mm: (selector: string, name: string) => number(one(selector), name) * mmPerUnit,
    points: (selector: string): readonly (readonly [number, number])[] =>
      (one(selector).getAttribute('points') ?? '')
        .split(' ')
        .map((pair) => pair.split(',').map(Number) as [number, number]),
  };
}
