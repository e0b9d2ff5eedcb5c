/**
 * Values that YAML reads without an error but not as they were meant, and equal keys. Gives the
 * tree as it was meant, if that is certain enough to go on.
 */

import { pair, scalar } from '../syntax/nodes.ts';
import { quote } from '../syntax/quotes.ts';
import type { MapNode, Node, Pair, ScalarNode } from '../syntax/tree.ts';
import { proseKeys } from './layout.ts';
import { oddBlanksAhead } from './odd-blanks.ts';
import { fix, type Problems } from './problems.ts';

export function checkMap(map: MapNode, text: string, problems: Problems): MapNode {
  let pairs = mapped(map.pairs, (each) => checkPair(each, map.flow, text, problems));
  if (map.flow) {
    pairs = joinCommas(
      mapped(pairs, (each) => splitKey(each, problems)),
      text,
      problems,
    );
  }
  tellEqualKeys(pairs, problems);
  return pairs === map.pairs ? map : { ...map, pairs };
}

/** The same array where nothing changes: nearly always. */
function mapped<T>(all: readonly T[], change: (each: T) => T): readonly T[] {
  const made = all.map(change);
  return made.every((each, index) => each === all[index]) ? all : made;
}

function checkNode(node: Node | null, text: string, problems: Problems): Node | null {
  if (node?.kind === 'map') return checkMap(node, text, problems);
  if (node?.kind === 'seq') {
    const items = mapped(node.items, (item) => checkNode(item, text, problems));
    return items === node.items ? node : { ...node, items };
  }
  return node;
}

function checkPair(each: Pair, inFlow: boolean, text: string, problems: Problems): Pair {
  const { value } = each;
  if (value === null || value.kind === 'scalar') {
    if (inFlow) return each;
    tellSwallowed(each, value, text, problems);
    return value?.style === 'plain' ? keyBelow(each, value, text, problems) : each;
  }
  const checked = checkNode(value, text, problems);
  return checked === value ? each : { ...each, value: checked };
}

/** ` #` that was meant as part of the value: `title: Take #3`, `colour: #4a5b6c`. */
function tellSwallowed(
  each: Pair,
  value: ScalarNode | null,
  text: string,
  problems: Problems,
): void {
  if (value && value.style !== 'plain') return;
  const from = each.span.end;
  const first = text.charCodeAt(from);
  // Nearly every value ends its line; and ` # so` is a comment.
  if (first !== 0x20 && first !== 0x09) return;
  const found = /^[ \t]+#([^\s#][^\r\n]*)/.exec(text.slice(from, endOfLine(text, from)));
  if (!found) return;
  const comment = (found[1] as string).trimEnd();
  const isMeant = proseKeys.has(each.key.text)
    ? /^[\p{L}\p{N}]/u.test(comment)
    : value
      ? /^\d+(?![\w.])/.test(comment)
      : /^(?=\D*\d)([0-9a-fA-F]{3}|[0-9a-fA-F]{6})$/.test(comment);
  if (!isMeant) return;
  const hash = from + found[0].indexOf('#');
  const start = value ? value.span.start : hash;
  const end = hash + 1 + comment.length;
  const written = text.slice(start, end);
  problems.misread('hash-in-value', { start, end }, { text: written }, [
    fix('quote', start, end, quote(written), { text: written }),
    fix('make-comment', hash + 1, hash + 1, ' '),
  ]);
}

const wordAndColon = /^([a-z][a-z0-9-]*):(?=[^ \t\r\n:/])/;

/** `drift:` and below it `subject:film`: a field that lacks its space, to YAML a scalar. */
function keyBelow(each: Pair, value: ScalarNode, text: string, problems: Problems): Pair {
  if (!wordAndColon.test(value.text)) return each;
  if (!text.slice(each.key.span.end, value.span.start).includes('\n')) return each;
  const { key, value: split } = splitScalar(value, problems);
  const inner = pair(key, split, key.span.end + 1);
  return { ...each, value: { kind: 'map', span: value.span, flow: false, pairs: [inner] } };
}

/** `{ size:1920 x 1080 }`: to YAML a key without a value. */
function splitKey(each: Pair, problems: Problems): Pair {
  if (each.value || each.key.style !== 'plain' || each.span.end !== each.key.span.end) return each;
  if (!wordAndColon.test(each.key.text)) return each;
  const { key, value } = splitScalar(each.key, problems);
  return pair(key, value, key.span.end + 1);
}

export function splitScalar(
  written: ScalarNode,
  problems: Problems,
): { key: ScalarNode; value: ScalarNode } {
  const length = written.text.indexOf(':');
  const { start, end } = written.span;
  const key = written.text.slice(0, length);
  // A blank that only looks like a space goes with the one that is put there.
  const odd = oddBlanksAhead(written.text.slice(length + 1));
  const from = length + 1 + odd;
  const value = written.text.slice(from);
  problems.misread(
    'space-after-colon',
    written.span,
    { key, text: written.text.slice(length + 1) },
    [fix('space-after-colon', start + length + 1, start + from, ' ')],
  );
  return {
    key: scalar(key, 'plain', start, start + length),
    value: scalar(value, 'plain', start + from, end),
  };
}

/** `{ mass: 1,5 kg }`: to YAML the value 1 and a key `5 kg`. */
function joinCommas(pairs: readonly Pair[], text: string, problems: Problems): readonly Pair[] {
  const joined: Pair[] = [];
  let changed = false;
  for (let index = 0; index < pairs.length; index++) {
    const first = pairs[index] as Pair;
    let last = index;
    while (isCommaTail(pairs[last] as Pair, pairs[last + 1], last > index, text)) last++;
    if (last === index) {
      joined.push(first);
      continue;
    }
    changed = true;
    const start = (first.value as Node).span.start;
    const end = (pairs[last] as Pair).span.end;
    const written = text.slice(start, end);
    const comma = start + written.indexOf(',');
    const point = written.replace(',', '.');
    const isOne = last === index + 1;
    problems.misread(
      'comma-in-braces',
      { start, end },
      { text: written, likely: point },
      isOne ? [fix('use-a-point', comma, comma + 1, '.', { text: point })] : [],
    );
    joined.push(pair(first.key, scalar(written, 'plain', start, end), end));
    index = last;
  }
  return changed ? joined : pairs;
}

function isCommaTail(
  before: Pair,
  after: Pair | undefined,
  isTail: boolean,
  text: string,
): boolean {
  if (!after || after.value || after.span.end !== after.key.span.end) return false;
  const number = isTail ? before.key : before.value;
  return (
    number?.kind === 'scalar' &&
    number.style === 'plain' &&
    after.key.style === 'plain' &&
    /\d$/.test(number.text) &&
    /^\d/.test(after.key.text) &&
    after.key.span.start === number.span.end + 1 &&
    text[number.span.end] === ','
  );
}

function tellEqualKeys(pairs: readonly Pair[], problems: Problems): void {
  if (pairs.length < 2) return;
  const seen = new Map<string, Pair>();
  for (const each of pairs) {
    const first = seen.get(each.key.text);
    if (first === undefined) seen.set(each.key.text, each);
    else {
      problems.add({
        rule: 'duplicate-name',
        code: 'duplicate-key',
        at: each.key.span,
        args: { key: each.key.text },
        fixes: [],
        related: first.key.span,
      });
    }
  }
}

function endOfLine(text: string, from: number): number {
  const found = text.indexOf('\n', from);
  return found < 0 ? text.length : found;
}
