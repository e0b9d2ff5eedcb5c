/** Problems for the parts of YAML that the profile leaves out. */

import { span } from '../syntax/nodes.ts';
import type { Foreign } from './from-yaml.ts';
import type { TextFix } from './problem.ts';
import { fix, type Problems } from './problems.ts';

/** `base`: where `text`, which was read, starts in the chunk. */
export function tellForeign(
  foreign: readonly Foreign[],
  text: string,
  base: number,
  problems: Problems,
): void {
  const values = new Map<string, string>();
  for (const { what, span: at, name } of foreign) {
    if (what === 'anchor') values.set(name, anchored(text, at.end));
    const place = span(at.start + base, at.end + base);
    problems.outside(
      what,
      place,
      name ? { text: text.slice(at.start, at.end) } : {},
      fixesFor(what, place, text, base, values.get(name)),
    );
  }
}

/** The value behind an anchor, where it is one line that can stand elsewhere as it is. */
function anchored(text: string, from: number): string {
  const line = /^[ \t]+([^\r\n]*)/.exec(text.slice(from, from + 400))?.[1] ?? '';
  const value = line.replace(/(^|[ \t]+)#.*$/, '').trimEnd();
  const isScalar = /^[\w][^{}[\],:#&*]*$/.test(value) || /^"[^"\\]*"$/.test(value);
  const isFlow = /^\{[^{}[\]"'#&*]*\}$|^\[[^{}[\]"'#&*]*\]$/.test(value);
  return isScalar || isFlow ? value : '';
}

function fixesFor(
  what: Foreign['what'],
  at: { readonly start: number; readonly end: number },
  text: string,
  base: number,
  value: string | undefined,
): readonly TextFix[] {
  if (what === 'alias')
    return value ? [fix('replace-alias', at.start, at.end, value, { value })] : [];
  if (what !== 'anchor' && what !== 'tag') return [];
  let end = at.end;
  while (text[end - base] === ' ' || text[end - base] === '\t') end++;
  // At a line's end the blank before goes too.
  const next = text[end - base];
  const isLast = next === undefined || next === '\n' || next === '\r';
  const start = isLast && text[at.start - base - 1] === ' ' ? at.start - 1 : at.start;
  return [fix(what === 'anchor' ? 'remove-anchor' : 'remove-tag', start, end, '')];
}
