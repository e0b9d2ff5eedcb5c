/**
 * How deep a text nests, counted before any recursive reader sees it. An upper bound: brackets in
 * quotes and comments count too, so that one linear pass without states suffices.
 */
import { contentLines } from '../syntax/lines.ts';

/** Offset at which the nesting first passes `limit`; -1 where it never does. */
export function tooDeepAt(text: string, limit: number): number {
  const columns: number[] = [];
  let open = 0;
  for (const { start, end, at: first, indent } of contentLines(text, 0, text.length)) {
    let at = first;
    while (columns.length > 0 && (columns.at(-1) as number) >= indent) columns.pop();
    columns.push(indent);
    // `- - - x` and `? ? x` nest on one line.
    while ('-?'.includes(text[at] as string) && text[at + 1] === ' ') {
      at += 2;
      while (at < end && text.charCodeAt(at) === 0x20) at++;
      columns.push(at - start);
      if (columns.length > limit) return at;
    }
    for (; at < end; at++) {
      const code = text.charCodeAt(at);
      if (code === 0x5b || code === 0x7b) open++;
      else if ((code === 0x5d || code === 0x7d) && open > 0) open--;
      if (open + columns.length > limit) return at;
    }
  }
  return -1;
}
