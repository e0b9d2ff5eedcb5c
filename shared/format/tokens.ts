/** A chunk that reads soundly as what stands on its lines: values, marks and comments. */
import type { MapNode, Node, ScalarNode } from '../text/tree.ts';

export interface Token {
  readonly kind: 'scalar' | 'comment' | 'mark';
  /** Offsets in the chunk's text. */
  readonly start: number;
  readonly end: number;
  /** `text.slice(start, end)`. */
  readonly text: string;
  /** A `|` or `>` with its lines. */
  readonly isProse: boolean;
}

const MARKS = '{}[],:-';
const BREAK = /[\r\n]/;

/**
 * Keys and values are taken from the tree as they stand; all else is marks, blanks and comments.
 * @returns null: something stands there that is none of them, such as an anchor
 */
export function tokensOf(text: string, tree: MapNode | null): Token[] | null {
  const scalars: ScalarNode[] = [];
  if (tree) gather(tree, scalars);
  const tokens: Token[] = [];
  const add = (kind: Token['kind'], start: number, end: number, isProse = false): void => {
    tokens.push({ kind, start, end, text: text.slice(start, end), isProse });
  };
  let next = 0;
  for (let at = 0; at < text.length; ) {
    const scalar = scalars[next];
    if (scalar && scalar.span.start <= at) {
      if (scalar.span.start < at) return null;
      const isProse = scalar.style === 'literal' || scalar.style === 'folded';
      const end = isProse ? withoutLastBreak(text, scalar.span.end) : scalar.span.end;
      add('scalar', at, end, isProse);
      at = end;
      next++;
      continue;
    }
    const char = text[at] as string;
    if (char === '#') {
      if (!isCommentAt(text, at)) return null;
      const end = lineEnd(text, at);
      add('comment', at, at + text.slice(at, end).trimEnd().length);
      at = end;
    } else if (MARKS.includes(char)) add('mark', at, ++at);
    else if (/[ \t\r\n]/.test(char)) at++;
    else return null;
  }
  return next === scalars.length ? tokens : null;
}

/** In the order of the text; a key or value of no characters is no token. */
function gather(node: Node, into: ScalarNode[]): void {
  if (node.kind === 'scalar') {
    if (node.span.end > node.span.start) into.push(node);
  } else if (node.kind === 'map')
    for (const { key, value } of node.pairs) {
      gather(key, into);
      if (value) gather(value, into);
    }
  else for (const item of node.items) if (item) gather(item, into);
}

const isCommentAt = (text: string, at: number): boolean =>
  at === 0 || /[ \t\r\n]/.test(text[at - 1] as string);

function lineEnd(text: string, at: number): number {
  let end = at;
  while (end < text.length && !BREAK.test(text[end] as string)) end++;
  return end;
}

function withoutLastBreak(text: string, end: number): number {
  if (text[end - 1] !== '\n' && text[end - 1] !== '\r') return end;
  return text[end - 1] === '\n' && text[end - 2] === '\r' ? end - 2 : end - 1;
}
