/** HTML and SVG as data, turned into text in one place, so that nothing is ever left unescaped. */
import type { Attributes, Child, Element } from '../api/drawing.ts';
import { inertLine } from './inert.ts';

export const el = (
  tag: string,
  attributes: Attributes = {},
  ...children: readonly Child[]
): Element => ({ tag, attributes, children });

/** Shapes of SVG, which end themselves where they hold nothing: a sheet has thousands. */
const SHAPES: ReadonlySet<string> = new Set([
  'rect',
  'line',
  'circle',
  'path',
  'polygon',
  'polyline',
]);

/** Elements of HTML that never have an end tag. */
const VOID: ReadonlySet<string> = new Set(['meta', 'input', 'br', 'hr', 'img']);

const ESCAPES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** Text as it may stand in an element or an attribute: no markup, nothing active. */
const escaped = (text: string): string =>
  inertLine(text).replace(/[&<>"']/g, (character) => ESCAPES[character]!);

/** Text for an attribute that stands in a tag written by hand. */
export const attribute = (text: string): string => escaped(text);

/** Hundredths of a drawing's unit are finer than any printer. */
const numberText = (value: number): string => String(Math.round(value * 100) / 100);

export function markup(child: Child): string {
  if (child === null || child === undefined || child === false) return '';
  if (typeof child === 'string') return escaped(child);
  const { tag, attributes, children } = child;
  if (SHAPES.has(tag) && children.length === 0) return `<${tag}${attributeText(attributes)}/>`;
  const start = `<${tag}${attributeText(attributes)}>`;
  if (VOID.has(tag)) return start;
  return `${start}${children.map(markup).join('')}</${tag}>`;
}

const attributeText = (attributes: Attributes): string =>
  Object.entries(attributes)
    .map(([name, value]) => {
      if (value === undefined || value === false) return '';
      if (value === true) return ` ${name}`;
      return ` ${name}="${typeof value === 'number' ? numberText(value) : escaped(value)}"`;
    })
    .join('');
