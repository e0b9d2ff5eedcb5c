/** Makes our tree from a document that `yaml` has read, and reports what is outside the profile. */
import type { CST, Document, Node as YamlNode, Pair as YamlPair } from 'yaml';
import { isAlias, isCollection, isMap, isPair, isScalar, parseDocument } from 'yaml';
import { blockMap, blockSeq, scalar, span } from '../syntax/nodes.ts';
import type {
  MapNode,
  Node,
  Pair,
  ScalarNode,
  ScalarStyle,
  SeqNode,
  Span,
} from '../syntax/tree.ts';

/** A part of YAML that the profile leaves out. */
export interface Foreign {
  readonly what: 'anchor' | 'alias' | 'tag' | 'merge' | 'complex-key' | 'empty-key';
  readonly span: Span;
  readonly name: string;
}

interface YamlReading {
  readonly root: Node | null;
  readonly foreign: readonly Foreign[];
  /** The first error's offset and code; null where there is none. */
  readonly error: { readonly at: number; readonly code: string } | null;
}

/** Scalars stay as written; equal keys are looked for elsewhere, in linear time. */
export const yamlOptions = {
  version: '1.2',
  schema: 'failsafe',
  uniqueKeys: false,
  prettyErrors: false,
  keepSourceTokens: true,
  stringKeys: false,
  logLevel: 'error',
} as const;

export function readYaml(text: string): YamlReading {
  // The file's own mark is off already; `yaml` would take one off the start of any piece.
  const document = parseDocument(text.replace(/^\uFEFF/, '\uFFFD'), yamlOptions);
  const error = document.errors[0];
  return {
    ...fromDocument(document, text),
    error: error ? { at: error.pos[0], code: error.code } : null,
  };
}

/** `text` is what `document` was read from, with its source tokens kept. */
export function fromDocument(
  document: Document.Parsed,
  text: string,
): { root: Node | null; foreign: Foreign[] } {
  const foreign: Foreign[] = [];
  const adapter = new Adapter(text, foreign);
  return { root: adapter.node(document.contents), foreign };
}

type Token = CST.SourceToken;
interface Item {
  readonly start?: readonly Token[];
  readonly sep?: readonly Token[];
}

const styles: Readonly<Record<string, ScalarStyle>> = {
  PLAIN: 'plain',
  QUOTE_SINGLE: 'single',
  QUOTE_DOUBLE: 'double',
  BLOCK_LITERAL: 'literal',
  BLOCK_FOLDED: 'folded',
};

class Adapter {
  readonly #text: string;
  readonly #foreign: Foreign[];

  constructor(text: string, foreign: Foreign[]) {
    this.#text = text;
    this.#foreign = foreign;
  }

  node(from: unknown): Node | null {
    if (isAlias(from)) return this.#alias(from);
    if (isScalar(from)) return this.#scalar(from);
    if (isPair(from)) return this.#lonePair(from);
    if (!isCollection(from)) return null;
    return isMap(from) ? this.#map(from.items, from) : this.#seq(from);
  }

  #alias(from: YamlNode): ScalarNode {
    const [start, end] = from.range as [number, number, number];
    const name = this.#text.slice(start + 1, end);
    this.#foreign.push({ what: 'alias', span: span(start, end), name });
    return scalar(this.#text.slice(start, end), 'plain', start, end);
  }

  #scalar(from: YamlNode & { type?: string; value: unknown }): ScalarNode | null {
    const [start, end] = from.range as [number, number, number];
    const style = styles[from.type ?? 'PLAIN'] ?? 'plain';
    const value = typeof from.value === 'string' ? from.value : '';
    if (style === 'plain' && start === end) return null;
    return scalar(value, style, start, this.#trimmed(start, end));
  }

  /** A block scalar's range takes in the blank lines behind it. */
  #trimmed(start: number, end: number): number {
    let at = end;
    while (at > start && /[ \t\r\n]/.test(this.#text[at - 1] as string)) at--;
    return at;
  }

  #map(pairs: readonly YamlPair[], from: YamlNode & { flow?: boolean }): MapNode {
    const read = pairs.map((each) => this.#pair(each)).filter((each) => each !== null);
    if (!from.flow) return blockMap(read);
    const [start, end] = from.range as [number, number, number];
    // `[a: b]`: a mapping in a list, without braces of its own.
    if (this.#text[start] !== '{') return { ...blockMap(read), flow: true };
    return { kind: 'map', span: span(start, end), flow: true, pairs: read };
  }

  #lonePair(from: YamlPair): MapNode {
    const read = this.#pair(from);
    return { ...blockMap(read ? [read] : []), flow: true };
  }

  #pair(from: YamlPair): Pair | null {
    const tokens = (from as { srcToken?: Item }).srcToken;
    this.#properties(tokens?.start);
    this.#properties(tokens?.sep);
    const explicit = tokens?.start?.find((token) => token.type === 'explicit-key-ind');
    if (explicit) this.#complex(explicit.offset);
    const key = this.node(from.key);
    const colon = tokens?.sep?.find((token) => token.type === 'map-value-ind');
    const value = this.node(from.value);
    if (key?.kind !== 'scalar') {
      if (key) this.#complex(key.span.start);
      else if (!explicit && colon) {
        this.#foreign.push({
          what: 'empty-key',
          span: span(colon.offset, colon.offset + 1),
          name: '',
        });
      }
      return null;
    }
    if (key.text === '<<' && key.style === 'plain') {
      this.#foreign.push({ what: 'merge', span: key.span, name: '<<' });
    }
    const end = value ? value.span.end : colon ? colon.offset + 1 : key.span.end;
    return { key, value, span: span(key.span.start, end) };
  }

  #complex(at: number): void {
    this.#foreign.push({ what: 'complex-key', span: span(at, at + 1), name: '' });
  }

  #seq(from: YamlNode & { items: unknown[]; flow?: boolean; srcToken?: unknown }): SeqNode {
    const tokens = (from.srcToken as { items?: readonly Item[] } | undefined)?.items ?? [];
    for (const token of tokens) this.#properties(token.start);
    const items = from.items.map((item) => this.node(item));
    const [start, end] = from.range as [number, number, number];
    if (from.flow) return { kind: 'seq', span: span(start, end), flow: true, items };
    const dashes = tokens.flatMap(
      (item) => item.start?.filter((token) => token.type === 'seq-item-ind') ?? [],
    );
    return blockSeq(items, start, dashes.at(-1)?.offset ?? start);
  }

  #properties(tokens: readonly Token[] | undefined): void {
    for (const token of tokens ?? []) {
      if (token.type !== 'anchor' && token.type !== 'tag') continue;
      const at = span(token.offset, token.offset + token.source.length);
      this.#foreign.push({ what: token.type, span: at, name: token.source.slice(1) });
    }
  }
}
