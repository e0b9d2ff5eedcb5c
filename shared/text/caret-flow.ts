/** The place of a caret within braces and brackets, closed or not. */
import { closingQuote, keyAt } from './keys.ts';
import { indentAt, LineReader } from './lines.ts';
import type { Path } from './tree.ts';

export interface FlowPlace {
  readonly path: Path;
  readonly slot: 'key' | 'value';
  readonly from: number;
  readonly to: number;
  readonly colonEnd?: number;
  readonly before: string;
  readonly after: string;
  readonly pair: 'word' | 'colon' | 'value';
  /** Keys of the mapping, or items of the list, but for the one under the caret. */
  readonly beside: readonly string[];
}

/** One key with its value, or one item, from behind a comma or bracket to the next. */
interface Part {
  readonly start: number;
  readonly key: Token | null;
  readonly colon: number;
  readonly value: Token | null;
  /** The comma or bracket behind it. */
  readonly end: number;
}

interface Token {
  readonly from: number;
  readonly to: number;
  /** In braces or brackets of its own. */
  readonly nested: boolean;
}

export class FlowScan {
  readonly #text: string;
  readonly #at: number;
  readonly #limit: number;
  found: FlowPlace | null = null;

  /** @param column of the key that the collection belongs to */
  constructor(text: string, open: number, at: number, column: number) {
    this.#text = text;
    this.#at = at;
    this.#limit = limitOf(text, open, column);
  }

  /** Reads the collection that opens at `open`; answers with the offset behind it. */
  read(open: number, path: Path): number {
    const text = this.#text;
    const isMap = text[open] === '{';
    const names: string[] = [];
    let here: ((beside: readonly string[]) => FlowPlace | null) | null = null;
    let end = open;
    for (let index = 0; ; index++) {
      const part = this.#part(end + 1, isMap, path, index);
      const isHere = this.#at >= part.start && this.#at <= part.end;
      const name = this.#nameOf(part, isMap);
      if (isHere && !this.found)
        here = (beside) =>
          isMap ? this.#inMap(part, path, beside) : this.#inList(part, [...path, index], beside);
      else if (name !== '') names.push(name);
      end = part.end;
      if (end >= this.#limit || text[end] !== ',') break;
    }
    if (here && !this.found) this.found = here(names);
    return Math.min(end + 1, this.#limit);
  }

  #nameOf({ key, value }: Part, isMap: boolean): string {
    const named = isMap ? key : value;
    return named && !named.nested ? unquoted(this.#text.slice(named.from, named.to)) : '';
  }

  #part(start: number, isMap: boolean, path: Path, index: number): Part {
    const text = this.#text;
    let next = this.#skip(start);
    let key: Token | null = null;
    let colon = -1;
    if (isMap && !isBracket(text[next])) {
      key = this.#token(next, path);
      next = this.#skip(key?.to ?? next);
      if (text[next] === ':') {
        colon = next;
        next = this.#skip(next + 1);
      }
    }
    const below = isMap ? (key ? unquoted(text.slice(key.from, key.to)) : '') : index;
    const value = isMap && colon < 0 ? null : this.#token(next, [...path, below]);
    return { start, key, colon, value, end: this.#delimiter(value?.to ?? next) };
  }

  #token(from: number, path: Path): Token | null {
    const text = this.#text;
    const first = text[from];
    if (from >= this.#limit || first === ',' || first === ']' || first === '}') return null;
    if (isBracket(first)) return { from, to: this.read(from, path), nested: true };
    let to = from;
    if (first === '"' || first === "'") {
      const close = closingQuote(text, from, this.#limit, true);
      to = close < 0 ? this.#lineEnd(from) : close + 1;
    } else {
      while (to < this.#limit && !this.#endsPlain(to)) to++;
      while (to > from && text[to - 1] === ' ') to--;
    }
    return to > from ? { from, to, nested: false } : null;
  }

  #endsPlain(at: number): boolean {
    const text = this.#text;
    const one = text[at]!;
    if (',[]{}\r\n'.includes(one)) return true;
    if (one === ':') return at + 1 >= this.#limit || ' ,]}\t\r\n'.includes(text[at + 1]!);
    return one === '#' && text[at - 1] === ' ';
  }

  #lineEnd(from: number): number {
    const found = this.#text.slice(from, this.#limit).search(/[\r\n]/);
    return found < 0 ? this.#limit : from + found;
  }

  /** Behind blanks, line ends and comments. */
  #skip(from: number): number {
    const text = this.#text;
    let at = from;
    while (at < this.#limit) {
      if (text[at] === '#' && (at === 0 || ' \t\r\n'.includes(text[at - 1]!)))
        at = this.#lineEnd(at);
      else if (' \t\r\n'.includes(text[at]!)) at++;
      else break;
    }
    return at;
  }

  #delimiter(from: number): number {
    let at = this.#skip(from);
    while (at < this.#limit && !',]}'.includes(this.#text[at]!)) at++;
    return at;
  }

  #inMap({ start, key, colon, value, end }: Part, path: Path, beside: readonly string[]) {
    const at = this.#at;
    const word = key && !key.nested ? key : { from: at, to: at };
    if (colon >= 0 && at > colon) {
      const name = key ? unquoted(this.#text.slice(key.from, key.to)) : '';
      return name === '' ? null : this.#value(colon + 1, value, end, [...path, name], []);
    }
    if (key && at > key.to) return null;
    const common = { path, slot: 'key' as const, beside };
    if (key && at >= word.from)
      return this.#place({
        ...common,
        from: word.from,
        to: word.to,
        ...(colon >= 0 && { colonEnd: colon + 1 }),
        before: word.from === start ? ' ' : '',
        after: this.#text[Math.max(word.to, colon + 1)] === '}' ? ' ' : '',
        pair: colon < 0 ? 'word' : value ? 'value' : 'colon',
      });
    const next = key && !key.nested ? [unquoted(this.#text.slice(key.from, key.to))] : [];
    const comma = this.#text[at] === ' ' ? ',' : ', ';
    const after = key || colon >= 0 || value ? comma : this.#text[at] === '}' ? ' ' : '';
    const before = at === start ? ' ' : '';
    const others = [...beside, ...next];
    return this.#place({
      ...common,
      beside: others,
      from: at,
      to: at,
      before,
      after,
      pair: 'word',
    });
  }

  #inList({ start, value, end }: Part, path: Path, beside: readonly string[]) {
    if (value && !value.nested && this.#at >= value.from)
      return this.#value(start, value, end, path, beside);
    if (value && this.#at > value.from) return null;
    const before = this.#at === start && this.#text[start - 1] === ',' ? ' ' : '';
    const at = this.#at;
    const after = value ? (this.#text[at] === ' ' ? ',' : ', ') : '';
    const index = Number(path.at(-1));
    const next = value && !value.nested ? [unquoted(this.#text.slice(value.from, value.to))] : [];
    return this.#place({
      path,
      slot: 'value',
      beside: [...beside.slice(0, index), ...next, ...beside.slice(index)],
      from: at,
      to: at,
      before,
      after,
      pair: 'word',
    });
  }

  #value(start: number, value: Token | null, end: number, path: Path, beside: readonly string[]) {
    const at = this.#at;
    if (value?.nested || at > end) return null;
    const from = value ? Math.min(at, value.from) : at;
    const to = value ? Math.max(at, value.to) : at;
    const before = from === start && this.#text[start - 1] !== '[' ? ' ' : '';
    const after = this.#text[to] === '}' ? ' ' : '';
    return this.#place({ path, slot: 'value', beside, from, to, before, after, pair: 'word' });
  }

  /** null where it would span lines, or the caret stands in a comment. */
  #place(place: FlowPlace): FlowPlace | null {
    const line = this.#text
      .slice(0, this.#at)
      .split(/[\r\n]/)
      .at(-1)!;
    const isComment = /(^|\s)#/.test(line.slice(Math.max(0, line.search(/[[{]/))));
    return isComment || /[\r\n]/.test(this.#text.slice(place.from, place.to)) ? null : place;
  }
}

const isBracket = (character: string | undefined): boolean =>
  character === '{' || character === '[';

const unquoted = (text: string): string => text.replace(/^["']|["']$/g, '');

/** Where an unclosed collection ends: at the next key that stands no deeper than its own. */
function limitOf(text: string, open: number, column: number): number {
  const reader = new LineReader(text);
  for (let line = reader.at(open); line.next > line.end; ) {
    line = reader.at(line.next);
    const indent = indentAt(text, line.start, line.end);
    if (indent <= column && keyAt(text, line.start + indent, line.end)) return line.start;
  }
  return text.length;
}
