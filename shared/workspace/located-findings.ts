/**
 * Prepares findings to be shown: places become ranges, facts become words. The result is kept with
 * the finding, relative to its chunk. If lines above are added or removed, only the chunk's first
 * line has to be added again.
 */

import type { LocatedFinding, LocatedRelated, Position, Range } from '../api/located.ts';
import { inputName } from '../figures/bounds-json.ts';
import { WHOLE_FILE } from '../plan/entry-id.ts';
import type { EntryId, FileId, Place } from '../plan/place.ts';
import { settlingWords } from '../rules/certainty.ts';
import { ruleNamed } from '../rules/registry.ts';
import type { Finding, RuleCore, Words } from '../rules/rule.ts';
import type { LengthUnit, Say } from '../say/say.ts';
import type { Chunk } from '../text/chunk.ts';
import { asAside } from '../words/aside.ts';
import { message } from '../words/message.ts';
import type { Locator } from './locate.ts';

/** Longest first sentence, so that a list of findings can be read in a narrow window. */
const LONGEST_SENTENCE = 100;

interface LocatorOptions {
  /** Sentences are not cut in a report, which has room for them. */
  readonly whole: boolean;
}

/** A range relative to the first line of its chunk, true while that chunk is this very one. */
interface Spot {
  readonly file: FileId;
  readonly place: Place;
  readonly id: EntryId;
  readonly chunk: Chunk | undefined;
  readonly range: Range;
  /** Where the chunk was last seen: in this list of the file's chunks, at this index. */
  seen?: {
    readonly ids: readonly EntryId[];
    /**
     * The text's own array, which edits change in place: an edit elsewhere costs only a look here.
     */
    readonly chunks: readonly Chunk[];
    readonly index: number;
  };
}

interface Said {
  readonly lengths: LengthUnit;
  readonly spot: Spot;
  readonly finding: Omit<LocatedFinding, 'range' | 'related'>;
  readonly related: readonly (Spot & { readonly words: string })[];
  /** What was last made of it, and for which layout and first lines. */
  shown?: {
    layout: number;
    readonly lines: readonly number[];
    readonly finding: LocatedFinding;
  };
}

const START: Position = { line: 0, character: 0 };

export class FindingLocator {
  readonly #locator: Locator;
  readonly #say: Say;
  readonly #longest: number;
  readonly #said = new WeakMap<Finding, Said>();
  readonly #origins = new WeakMap<LocatedFinding, Finding>();

  constructor(locator: Locator, say: Say, { whole }: LocatorOptions = { whole: false }) {
    this.#locator = locator;
    this.#say = say;
    this.#longest = whole ? Number.POSITIVE_INFINITY : LONGEST_SENTENCE;
  }

  locate(finding: Finding): LocatedFinding {
    let said = this.#said.get(finding);
    if (said?.shown && this.#standsStill(said, said.shown.layout)) return said.shown.finding;
    if (!said || !this.#holds(said)) {
      said = this.#sayOf(finding);
      this.#said.set(finding, said);
    }
    const lines = [said.spot, ...said.related].map((spot) => this.#firstLine(spot));
    const { layout } = this.#locator;
    const { shown } = said;
    if (shown?.lines.every((line, index) => line === lines[index])) {
      shown.layout = layout;
      return shown.finding;
    }
    const located = withLines(said, lines);
    this.#origins.set(located, finding);
    said.shown = { layout, lines, finding: located };
    return located;
  }

  /**
   * The chunks that a located finding names, and stands still with while no line moves; undefined: it
   * moves with something else.
   */
  chunksOf(finding: Finding): readonly Chunk[] | undefined {
    const said = this.#said.get(finding);
    if (!said) return undefined;
    const chunks: Chunk[] = [];
    for (const { place, chunk, seen } of [said.spot, ...said.related]) {
      if (chunk === undefined || seen === undefined || !isOfEntry(place)) return undefined;
      if (!chunks.includes(chunk)) chunks.push(chunk);
    }
    return chunks;
  }

  /** The finding that a located one was made from. */
  originOf(located: LocatedFinding): Finding | undefined {
    return this.#origins.get(located);
  }

  /** No line has moved since, and every chunk that was named is still the very one. */
  #standsStill({ lengths, spot, related }: Said, layout: number): boolean {
    if (layout !== this.#locator.layout || lengths !== this.#say.lengths) return false;
    const isSame = ({ place, chunk, seen }: Spot): boolean =>
      seen !== undefined && isOfEntry(place) && seen.chunks[seen.index] === chunk;
    return isSame(spot) && related.every(isSame);
  }

  #holds({ lengths, spot, related }: Said): boolean {
    return (
      lengths === this.#say.lengths &&
      this.#isThere(spot) &&
      related.every((one) => this.#isThere(one))
    );
  }

  /** Still found in the same chunk, and that is what it was. */
  #isThere(spot: Spot): boolean {
    const { file, place, id, chunk, seen } = spot;
    if (chunk === undefined) return false;
    const ids = this.#locator.chunkIds(file);
    // While the list of chunks stands, so does who holds what; only a file's first word may move.
    if (seen?.ids === ids && isOfEntry(place)) return seen.chunks[seen.index] === chunk;
    const index = this.#locator.indexOf(file, id);
    const chunks = this.#locator.chunksOf(file);
    if (index === undefined || chunks[index] !== chunk) return false;
    spot.seen = { ids, chunks, index };
    return this.#locator.chunkHolding(place) === id;
  }

  #firstLine({ file, id, seen }: Spot): number {
    return seen?.ids === this.#locator.chunkIds(file)
      ? this.#locator.firstLineAt(file, seen.index)
      : this.#locator.firstLineOf(file, id);
  }

  #sayOf(finding: Finding): Said {
    const rule = ruleNamed(finding.rule);
    const { what, why = '' } = wordsOf(finding, rule, this.#say);
    const numbers = rule?.numbers?.(finding.facts);
    return {
      lengths: this.#say.lengths,
      spot: this.#placed(finding.at),
      finding: {
        rule: finding.rule,
        severity: finding.severity,
        file: finding.at.file,
        what: clipped(what, this.#longest),
        why,
        ...(finding.shot !== undefined && { shot: finding.shot }),
        ...(numbers && { numbers }),
        ...(finding.unsure && { settledBy: inputName(finding.unsure.input) }),
      },
      related: finding.related.map(({ at, words }) => ({ ...this.#placed(at), words })),
    };
  }

  #placed(place: Place): Spot {
    const { file } = place;
    const found = this.#locator.spanOf(place);
    if (!found)
      return { file, place, id: WHOLE_FILE, chunk: undefined, range: { start: START, end: START } };
    const { start, end } = this.#locator.rangeIn(file, found);
    const line = this.#locator.firstLineOf(file, found.chunk);
    const range = { start: moved(start, -line), end: moved(end, -line) };
    const chunk = this.#locator.chunkOf(file, found.chunk);
    const index = this.#locator.indexOf(file, found.chunk);
    const seen = index !== undefined && {
      ids: this.#locator.chunkIds(file),
      chunks: this.#locator.chunksOf(file),
      index,
    };
    return { file, place, id: found.chunk, chunk, range, ...(seen && { seen }) };
  }
}

/** What and why; of a probable finding also what would settle it. */
function wordsOf(finding: Finding, rule: RuleCore<unknown> | undefined, say: Say): Words {
  const words = rule?.words(finding.facts, say) ?? { what: finding.rule };
  const { unsure } = finding;
  if (!unsure) return words;
  return {
    what: message`Probably: ${asAside(words.what)}.`,
    why: [words.why, settlingWords(unsure, say)].filter(Boolean).join(' '),
  };
}
/** Not of the file as a whole, which stands at its first word, wherever that is. */
const isOfEntry = ({ entry, span }: Place): boolean => entry !== WHOLE_FILE || span !== undefined;

const moved = ({ line, character }: Position, by: number): Position => ({
  line: line + by,
  character,
});

const rangeAt = ({ start, end }: Range, line: number): Range => ({
  start: moved(start, line),
  end: moved(end, line),
});

function withLines({ finding, spot, related }: Said, lines: readonly number[]): LocatedFinding {
  const places = related.map(
    ({ file, range, words }, index): LocatedRelated => ({
      file,
      range: rangeAt(range, lines[index + 1] ?? 0),
      words,
    }),
  );
  return { ...finding, range: rangeAt(spot.range, lines[0] ?? 0), related: places };
}

/** Names and values from the plan can be long; the sentence keeps its beginning. */
const clipped = (sentence: string, longest: number): string =>
  sentence.length <= longest ? sentence : `${sentence.slice(0, longest - 1)}…`;

/** In the order of the text. */
export const byPosition = (a: LocatedFinding, b: LocatedFinding): number =>
  a.range.start.line - b.range.start.line ||
  a.range.start.character - b.range.start.character ||
  (a.rule < b.rule ? -1 : a.rule > b.rule ? 1 : 0);

/** A finding that several plans cause in a shared file is shown once. */
export function withoutDoubles(findings: readonly Finding[]): readonly Finding[] {
  const seen = new Set<string>();
  return findings.filter((finding) => {
    const { file, entry, path, span } = finding.at;
    const key = JSON.stringify([
      finding.rule,
      file,
      entry,
      path,
      span,
      finding.shot,
      finding.facts,
    ]);
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}

/** Those of `findings` that stand in `file`. */
export const standingIn = (file: FileId, findings: readonly Finding[]): readonly Finding[] =>
  findings.every((finding) => finding.at.file === file)
    ? findings
    : findings.filter((finding) => finding.at.file === file);
