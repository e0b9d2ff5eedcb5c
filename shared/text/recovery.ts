/**
 * Reads an entry that YAML can't, field by field. Valid fields are read, and faults are reported
 * where a person would point. The parts are those of the tolerant parser's tree, where lines are told
 * apart by their columns alone: an unclosed quote or bracket ends with its own field.
 */
import { contentLines, writtenEnd } from '../syntax/lines.ts';
import { blockMap, blockSeq, colonOf, pair, scalar, span } from '../syntax/nodes.ts';
import { quote, unquoteDouble } from '../syntax/quotes.ts';
import type { Defect } from '../syntax/syntax.ts';
import type { MapNode, Node, Pair, ScalarNode, SeqNode } from '../syntax/tree.ts';
import { tellLine, tellOutOfLine } from './line-defects.ts';
import { fix } from './problems.ts';
import { Reading } from './reading.ts';
import { recoverFlow } from './recover-flow.ts';

export class Recovery extends Reading {
  #toldBudget = false;

  /** The whole text as one entry; `errorAt`: where YAML stumbled; null: unknown. */
  entry(errorAt: number | null): MapNode | null {
    const before = this.problems.count;
    const lines = [...contentLines(this.text, 0, this.text.length)];
    const [first] = this.#fields(this.syntax.root, lines.at(-1)?.next ?? 0);
    if (this.problems.count === before && errorAt !== null) this.tellUnreadable(errorAt);
    return first ? blockMap([first]) : null;
  }

  /** Names a field that could not be read and for which nothing was named so far. */
  #tellFailure(errorAt: number | null, value: Node | null, at: number): void {
    if (errorAt !== null) {
      this.tellUnreadable(errorAt);
      return;
    }
    // What stands below in lines of its own was read line by line.
    const isInLines = value !== null && value.kind !== 'scalar' && !value.flow;
    if (isInLines || this.#toldBudget) return;
    this.#toldBudget = true;
    this.problems.syntax('too-broken', span(at, at + 1));
  }

  /** Pairs of a block mapping, whose lines end before `to`. */
  #fields({ pairs }: MapNode, to: number): readonly Pair[] {
    const places = pairs.map(({ key }) => {
      const { start } = this.lines.of(key.span.start);
      // Properties may stand before a key, and dashes before a mapping's first one.
      const [before] = /^ *(?:- +)*/.exec(this.text.slice(start, key.span.start))!;
      return { line: start, column: before.length };
    });
    const meant = places[0]?.column ?? 0;
    return pairs.flatMap((each, index) => {
      const { line, column } = places[index]!;
      const at = line + column;
      const end = places[index + 1]?.line ?? to;
      const kinds = this.defects(at, at + 1).map(({ kind }) => kind);
      if (kinds.includes('no-colon')) return this.#withoutColon(each, line, end);
      if (kinds.includes('out-of-line') && !this.problems.isFull) {
        const isRun = (other: { column: number }) => column > meant && other.column > meant;
        const next = places.slice(index + 1).find((other) => !isRun(other))?.line ?? to;
        tellOutOfLine(this.text, this.lines, line, next, column, meant, this.problems);
      }
      return this.#field(each, line, column, end);
    });
  }

  #field(each: Pair, line: number, column: number, to: number): readonly Pair[] {
    const { text, problems } = this;
    const at = line + column;
    if (this.#isSound(at, to)) return [each];
    const { map, errorAt } = this.read(' '.repeat(column) + text.slice(at, to), 0, line);
    if (map) return map.pairs;
    const { key } = each;
    const colonEnd = colonOf(text, each) + 1;
    if (problems.isFull) return [pair(key, null, colonEnd)];
    const before = problems.count;
    const value = this.#value(each.value, colonEnd, to);
    if (problems.count === before) this.#tellFailure(errorAt, value, at);
    return [pair(key, value, colonEnd)];
  }

  /** Nothing is wrong there but the column. */
  #isSound(from: number, to: number): boolean {
    return this.defects(from, to).every(
      ({ kind, span: { start } }) => kind === 'out-of-line' && start === from,
    );
  }

  #withoutColon({ key, value }: Pair, line: number, to: number): readonly Pair[] {
    const told = this.#tellLine(line);
    if (told) return [told];
    const below = /^[a-z][a-z0-9-]*$/.test(key.text) ? this.#below(value, to) : null;
    return below ? [pair(key, below, key.span.end)] : [];
  }

  #tellLine(at: number): Pair | null {
    const { start, end } = this.lines.of(at);
    return tellLine(this.text, start, end, this.problems);
  }

  /** The value behind a colon or dash, on its line or below, up to `to`. */
  #value(node: Node | null, from: number, to: number): Node | null {
    const line = this.lines.of(from);
    this.#tellProperties(from, line.end);
    return node && node.span.start < line.end ? this.#alone(node, to) : this.#below(node, to);
  }

  #below(node: Node | null, to: number): Node | null {
    if (!node || (node.kind !== 'scalar' && !node.flow)) return node && this.#alone(node, to);
    const { start } = node.span;
    const line = this.lines.of(start);
    const isMeant = node.kind !== 'scalar' || node.style !== 'plain';
    if (isMeant || /^ *[&!*]/.test(this.text.slice(line.start, line.end))) {
      return this.#value(node, line.start, to);
    }
    // Text on a line of its own, where keys are meant.
    const strays = this.defects(start, to).filter(({ kind }) => kind === 'stray');
    const told = [start, ...strays.map((each) => each.span.start)].map((at) => this.#tellLine(at));
    const pairs = told.filter((each) => each !== null);
    return pairs.length > 0 ? blockMap(pairs) : null;
  }

  /** A node, and what else stands where only it may. */
  #alone(node: Node, to: number): Node | null {
    const more = this.syntax.more.get(node) ?? [];
    if (isList(node)) return this.#goneOn(node, more, to);
    const closing = this.defects(node.span.end, to).find(
      ({ kind, span: at }) => kind === 'stray' && /[\]}]/.test(this.text[at.start]!),
    );
    const rest = more[0] ?? closing;
    if (!rest) return this.#node(node, to);
    const { start } = this.lines.of(rest.span.start);
    const before = this.problems.count;
    const value = this.#node(node, start);
    if (this.problems.count > before) return value;
    if (rest === closing || isList(more[0]!)) this.#tellLine(start);
    else this.tellUnreadable(start);
    return value;
  }

  /** A list that may go on behind lines that are none of it. */
  #goneOn(list: SeqNode, more: readonly Node[], to: number): SeqNode {
    const { start } = list.span;
    const column = this.#columnOf(start);
    const strays = this.defects(start, to).filter(
      ({ kind, span: at }) => kind === 'stray' && this.#columnOf(at.start) <= column,
    );
    const parts: (Node | Defect)[] = [list, ...strays, ...more];
    parts.sort((a, b) => a.span.start - b.span.start);
    const lists = parts.flatMap((each, index) => {
      const at = each.span.start;
      const isItems = 'items' in each && isList(each);
      if (!isItems || this.#columnOf(at) !== column) this.#tellLine(at);
      const next = parts[index + 1];
      return isItems ? this.#list(each, next ? this.lines.of(next.span.start).start : to) : [];
    });
    const items = lists.flatMap((each) => each.items);
    return { ...list, span: span(start, lists.at(-1)!.span.end), items };
  }

  #columnOf(at: number): number {
    return at - this.lines.of(at).start;
  }

  #node(node: Node, to: number): Node | null {
    if (node.kind === 'scalar') return this.#scalar(node, to);
    if (node.kind === 'seq' || node.flow) return recoverFlow(this, node, to);
    const pairs = this.#fields(node, to);
    return pairs.length > 0 ? blockMap(pairs) : null;
  }

  #list(list: SeqNode, to: number): SeqNode {
    const dashes = this.syntax.marks.get(list)!;
    const items = dashes.flatMap((dash, index) => {
      if (this.defects(dash, dash + 1).some(({ kind }) => kind === 'out-of-line')) {
        this.#tellLine(dash);
        return [];
      }
      const next = dashes[index + 1];
      const end = next === undefined ? to : this.lines.of(next).start;
      return [this.#item(list.items[index] ?? null, dash, end)];
    });
    return blockSeq(items, list.span.start, dashes.at(-1)!);
  }

  #item(item: Node | null, dash: number, to: number): Node | null {
    if (this.#isSound(dash, to)) return item;
    const { text, problems } = this;
    // Read as the value of a key that is not there.
    const column = ' '.repeat(this.#columnOf(dash));
    const stand = `${column}k:\n${column}`;
    const { map, errorAt } = this.read(stand + text.slice(dash, to), stand.length, dash);
    const list = map?.pairs[0]?.value;
    if (list?.kind === 'seq') return list.items[0] ?? null;
    const before = problems.count;
    const value = this.#value(item, dash + 1, to);
    if (problems.count === before) {
      this.#tellFailure(errorAt && Math.max(errorAt, dash), value, dash);
    }
    return value;
  }

  #tellProperties(from: number, lineEnd: number): void {
    const { text, problems } = this;
    for (let at = from; ; ) {
      while (at < lineEnd && (text[at] === ' ' || text[at] === '\t')) at++;
      if (at >= lineEnd || (text[at] !== '&' && text[at] !== '!')) return;
      const stop = at + text.slice(at, lineEnd).search(/[ \t]|$/);
      const isAnchor = text[at] === '&';
      const end = text[stop] === ' ' ? stop + 1 : stop;
      const fixes = [fix(isAnchor ? 'remove-anchor' : 'remove-tag', at, end, '')];
      const args = { text: text.slice(at, stop) };
      problems.outside(isAnchor ? 'anchor' : 'tag', span(at, stop), args, fixes);
      at = stop;
    }
  }

  #scalar(node: ScalarNode, to: number): ScalarNode | null {
    if (node.style === 'single' || node.style === 'double') return this.#quoted(node);
    return node.style === 'plain' && this.text[node.span.start] !== '*'
      ? this.#plain(node, to)
      : null;
  }

  #quoted(node: ScalarNode): ScalarNode {
    const { text, problems } = this;
    const { start, end: stop } = node.span;
    const mark = text[start]!;
    const last = this.lines.of(stop - 1);
    if (this.defects(start, start + 1).some(({ kind }) => kind === 'open-quote')) {
      const end = writtenEnd(text, start, last.end);
      problems.syntax('unclosed-quote', span(start, start + 1), { quote: mark }, [
        fix('close-quote', end, end, mark, { quote: mark }),
      ]);
      return scalar(text.slice(start + 1, end), node.style, start, end);
    }
    const end = writtenEnd(text, stop, last.end);
    if (end > stop) {
      const written = text.slice(start, end);
      const rest = stop + text.slice(stop, end).search(/\S/);
      const fixes =
        last.start <= start ? [fix('quote', start, end, quote(written), { text: written })] : [];
      problems.syntax('text-after-value', span(rest, end), { text: text.slice(rest, end) }, fixes);
    } else if (mark === '"') this.#tellEscapes(start, stop - 1);
    return node;
  }

  #tellEscapes(open: number, close: number): void {
    const { text, problems } = this;
    for (
      let at = text.indexOf('\\', open);
      at >= 0 && at < close;
      at = text.indexOf('\\', at + 2)
    ) {
      const digits = { x: 2, u: 4, U: 8 }[text[at + 1] as 'x'] ?? 0;
      const written = text.slice(at, Math.min(at + 2 + digits, close));
      if (written[1] === '\n' || written[1] === '\r' || unquoteDouble(written) !== null) continue;
      problems.syntax('bad-escape', span(at, at + written.length), { text: written }, [
        fix('escape-backslash', at, at, '\\'),
      ]);
    }
  }

  #plain(node: ScalarNode, to: number): ScalarNode | null {
    const { text, problems } = this;
    const { text: written, span: place } = node;
    const { start, end } = place;
    const args = { text: written };
    const asQuoted = fix('quote', start, end, quote(written), args);
    const first = span(start, start + 1);
    if (/^-([ \t]|$)/.test(written)) {
      const item = written.slice(1).trim();
      const isLast = !/\S/.test(text.slice(this.lines.of(start).next, to));
      const isOne = item !== '' && !/[{}[\],:"'#&*!|>]/.test(item) && isLast;
      const fixes = isOne ? [fix('put-in-brackets', start, end, `[${item}]`)] : [];
      problems.syntax('item-behind-key', place, args, fixes);
      return null;
    }
    if (/^[?:]([ \t]|$)/.test(written)) {
      problems.outside('complex-key', first);
      return null;
    }
    if (/^[\]}]/.test(written)) {
      problems.syntax('stray-bracket', first, { bracket: written[0]! }, [asQuoted]);
    } else if (/^[@`%,#]/.test(written)) {
      problems.syntax('reserved-start', first, { ...args, character: written[0]! }, [asQuoted]);
    } else if (/:([ \t]|$)/.test(written)) {
      problems.misread('colon-in-value', place, args, [asQuoted]);
    }
    return node;
  }
}

const isList = (node: Node): node is SeqNode => node.kind === 'seq' && !node.flow;
