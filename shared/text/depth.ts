/**
 * How deep a text nests, counted before any recursive reader sees it. An upper bound: brackets in
 * quotes and comments count too, so that one linear pass without states suffices.
 */
import { LineReader } from '../syntax/lines.ts';

/** Offset at which the nesting first passes `limit`; -1 where it never does. */
export function tooDeepAt(text: string, limit: number): number {
  const lines = new LineReader(text);
  const columns: number[] = [];
  let open = 0;
  for (let start = 0; start < text.length; ) {
    const line = lines.at(start);
    let at = start;
    while (at < line.end && text.charCodeAt(at) === 0x20) at++;
    if (at < line.end) {
      while (columns.length > 0 && (columns.at(-1) as number) >= at - start) columns.pop();
      columns.push(at - start);
      // `- - - x` and `? ? x` nest on one line.
      while ('-?'.includes(text[at] as string) && text[at + 1] === ' ') {
        at += 2;
        while (at < line.end && text.charCodeAt(at) === 0x20) at++;
        columns.push(at - start);
        if (columns.length > limit) return at;
      }
    }
    for (; at < line.end; at++) {
      const code = text.charCodeAt(at);
      if (code === 0x5b || code === 0x7b) open++;
      else if ((code === 0x5d || code === 0x7d) && open > 0) open--;
      if (open + columns.length > limit) return at;
    }
    if (line.next === line.end) break;
    start = line.next;
  }
  return -1;
}
