/** XML 1.0 as text: elements with their attributes, every value escaped. */
import { inertLine } from '../inert.ts';

export interface Element {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string | number | undefined>>;
  readonly children: readonly Element[];
  /** Between its tags; an element with text has no children. */
  readonly text?: string;
}

export const element = (
  name: string,
  attributes: Element['attributes'] = {},
  children: readonly Element[] = [],
): Element => ({ name, attributes, children });

/** Characters that no XML 1.0 document may have, escaped or not. */
const NOT_XML = /[\p{Surrogate}\ufffe\uffff]/gu;

const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
};

/** In one line; control characters are made visible. */
const escaped = (text: string): string =>
  inertLine(text)
    .replace(NOT_XML, '\ufffd')
    .replace(/[&<>"]/g, (character) => ENTITIES[character]!);

export function xml(root: Element, doctype: string): string {
  return `<?xml version="1.0" encoding="UTF-8"?>\n<!DOCTYPE ${doctype}>\n${lines(root, '').join('\n')}\n`;
}

function lines({ name, attributes, children, text }: Element, indent: string): readonly string[] {
  const written = Object.entries(attributes).flatMap(([key, value]) =>
    value === undefined ? [] : [` ${key}="${escaped(String(value))}"`],
  );
  const open = `${indent}<${name}${written.join('')}`;
  if (text !== undefined) return [`${open}>${escaped(text)}</${name}>`];
  if (children.length === 0) return [`${open}/>`];
  const inside = children.flatMap((child) => lines(child, `${indent}  `));
  return [`${open}>`, ...inside, `${indent}</${name}>`];
}
