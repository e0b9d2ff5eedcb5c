/**
 * A day at one plan: a single core, thousands of edits, most of them in a few shots, with typing, undo,
 * whole texts, and files that come and go. Whatever it is asked, it answers as a core that is given the
 * same texts afresh.
 */

import type { Core } from '../../shared/api/facade.ts';
import type { Position } from '../../shared/api/located.ts';
import { createCore } from '../../shared/core/core.ts';
import type { FileId } from '../../shared/plan/place.ts';
import { shards } from '../fuzz/text-plans.ts';
import { type Random, randomFrom } from '../published/support/random.ts';
import { PLAN, ROOT } from '../support/plans.ts';
import { canonical, positionAt } from './canonical.ts';

/** Texts of a workspace by address; null: asked for, and not there. */
export type Texts = ReadonlyMap<FileId, string | null>;

export interface DayOptions {
  readonly seed: number;
  readonly edits: number;
  /** How often all answers are compared: once in so many edits. */
  readonly every: number;
  readonly plan: string;
  /** Files that the plan uses, or may come to use, by name. */
  readonly others?: Readonly<Record<string, string>>;
}

export interface Difference {
  readonly edit: number;
  readonly of: string;
  readonly aged: string;
  readonly fresh: string;
  readonly texts: Texts;
}

/** What is asked of both: all that is cheap of the plan and the files beside it. */
export function answersOf(core: Core, files: Iterable<FileId>): ReadonlyMap<string, string> {
  const answers = new Map<string, string>();
  for (const file of files) {
    if (core.text(file) === undefined) continue;
    answers.set(
      `all of ${file}`,
      said(() => canonical(core, file)),
    );
    answers.set(
      `findings of ${file}`,
      said(() => JSON.stringify(core.findings(file))),
    );
    const lenses = () => core.lenses(file).map(({ shot }) => core.lensWords(file, shot));
    answers.set(
      `lenses of ${file}`,
      said(() => JSON.stringify(lenses())),
    );
  }
  return answers;
}

/** What fails afresh has to fail in the same way. */
function said(ask: () => string): string {
  try {
    return ask();
  } catch (error) {
    return String(error);
  }
}

/** Gives a core texts, and says of what else it wants that it isn't there. */
export function give(core: Core, texts: Texts): void {
  for (const [file, text] of texts) if (text !== null) core.give(file, text);
  refuseOthers(core, texts);
}

function refuseOthers(core: Core, texts: Texts): void {
  for (const file of texts.keys())
    if (core.text(file) !== undefined)
      for (const wanted of core.wanted(file)) core.refuse(wanted, 'not-found');
}

export function freshCore(texts: Texts): Core {
  const core = createCore({ rootOf: () => ROOT });
  give(core, texts);
  return core;
}

/** Pieces of values that people try one after another. */
const TRIED = ['1', '2', '4', '8', '11', '16', '22', '0.5', '1/50', '400', '1600', '5600', '90'];

export class Day {
  readonly core: Core;
  readonly #random: Random;
  readonly #options: DayOptions;
  #texts = new Map<FileId, string | null>();
  readonly #past: string[] = [];
  readonly #undone: string[] = [];
  readonly #fresh = new Map<string, ReadonlyMap<string, string>>();

  constructor(options: DayOptions) {
    this.#options = options;
    this.#random = randomFrom(options.seed);
    for (const [name, text] of Object.entries(options.others ?? {}))
      this.#texts.set(`${ROOT}/${name}`, text);
    this.#texts.set(PLAN, options.plan);
    this.core = freshCore(this.#texts);
  }

  /** Works through the day; the first difference, or null. */
  run(): Difference | null {
    for (let edit = 1; edit <= this.#options.edits; edit++) {
      this.#work();
      refuseOthers(this.core, this.#texts);
      if (this.#random.whole(1, 5) > 2) this.#look();
      if (this.#random.whole(1, this.#options.every) > 1 && edit < this.#options.edits) continue;
      const found = this.difference(edit);
      if (found) return found;
    }
    return null;
  }

  /** What the core answers otherwise than a fresh one; null: nothing. */
  difference(edit: number): Difference | null {
    const fresh = this.#freshAnswers();
    const aged = answersOf(this.core, this.#texts.keys());
    const texts = new Map(this.#texts);
    for (const [of, answer] of fresh)
      if (aged.get(of) !== answer)
        return { edit, of, aged: aged.get(of) ?? 'nothing', fresh: answer, texts };
    return null;
  }

  /** Kept by the texts: what goes back and forth is worked out afresh once. */
  #freshAnswers(): ReadonlyMap<string, string> {
    const key = JSON.stringify([...this.#texts].sort());
    let answers = this.#fresh.get(key);
    if (!answers) {
      answers = answersOf(freshCore(this.#texts), this.#texts.keys());
      if (this.#fresh.size > 500) this.#fresh.clear();
      this.#fresh.set(key, answers);
    }
    return answers;
  }

  get #text(): string {
    return this.#texts.get(PLAN) ?? '';
  }

  /** As an editor does after an edit: findings, and some of what is on the screen. */
  #look(): void {
    said(() => this.#lookAt(this.core));
  }

  #lookAt(core: Core): string {
    core.findings(PLAN);
    const what = this.#random.whole(0, 9);
    if (what < 3) for (const { shot } of core.lenses(PLAN)) core.lensWords(PLAN, shot);
    if (what === 3) core.hover(PLAN, this.#somewhere());
    if (what === 4) core.completions(PLAN, this.#somewhere());
    if (what === 5) core.editFigures(PLAN);
    const [first] = what === 6 ? core.findings(PLAN) : [];
    if (first) core.fixesOf(first);
    if (what === 7) core.prepare(PLAN, () => this.#random.whole(1, 9) === 1);
    return '';
  }

  #somewhere(): Position {
    return positionAt(this.#text, this.#random.whole(0, this.#text.length));
  }

  #work(): void {
    const random = this.#random;
    const what = random.whole(0, 99);
    // Too long or spoilt beyond use: people begin again from what was saved.
    if (this.#text.length > 1.5 * this.#options.plan.length || what === 0)
      this.#giveWhole(this.#options.plan);
    else if (what < 55) this.#retype();
    else if (what < 70) this.#takeBack();
    else if (what < 76) this.#again();
    else if (what < 88) this.#break();
    else if (what < 92) this.#giveWhole(random.pick([this.#options.plan, ...this.#past, '']));
    else this.#otherFile();
  }

  #edit(from: number, to: number, written: string): void {
    const text = this.#text;
    this.#past.push(text);
    if (this.#past.length > 60) this.#past.shift();
    this.#undone.length = 0;
    this.#replace(from, to, written);
  }

  #replace(from: number, to: number, written: string): void {
    const text = this.#text;
    const range = { start: positionAt(text, from), end: positionAt(text, to) };
    this.core.edit(PLAN, range, written);
    this.#texts.set(PLAN, text.slice(0, from) + written + text.slice(to));
  }

  /** A number of one of the first few shots, in one go or key by key. */
  #retype(): void {
    const text = this.#text;
    const shots = Math.max(0, text.indexOf('\nshots:'));
    // Most edits are made where the last ones were.
    const near = this.#random.whole(0, 3) > 0 ? 700 : text.length;
    const numbers = [...text.slice(shots, shots + near).matchAll(/[0-9]+(?:[./][0-9]+)?/g)];
    const number = numbers.length > 0 ? this.#random.pick(numbers) : undefined;
    if (!number) {
      this.#break();
      return;
    }
    const from = shots + number.index;
    const to = from + number[0].length;
    const written = this.#random.pick(TRIED);
    const atOnce = this.#random.whole(0, 2) > 0;
    this.#edit(from, to, atOnce ? written : '');
    for (let at = 0; !atOnce && at < written.length; at++) {
      if (this.#random.whole(0, 1) === 0) this.#look();
      this.#edit(from + at, from + at, written.charAt(at));
    }
  }

  #break(): void {
    const random = this.#random;
    const text = this.#text;
    const from = random.whole(0, text.length);
    const length = random.pick([0, 0, 1, 3, random.whole(0, 60)]);
    const line = text.lastIndexOf('\n', from) + 1;
    const next = text.indexOf('\n', from) + 1 || text.length;
    const names = text.match(/[a-z][a-z0-9-]+/g) ?? [''];
    random.pick([
      () =>
        this.#edit(from, whole(text, Math.min(text.length, from + length)), random.pick(shards)),
      () => this.#edit(line, next, ''),
      () => this.#edit(line, line, text.slice(line, next)),
      () => this.#edit(line, next, text.slice(next, next + 80)),
      () => this.#edit(from, from, random.pick(names)),
    ])();
  }

  #takeBack(): void {
    for (let count = this.#random.pick([1, 1, 2, 5]); count > 0; count--) {
      const before = this.#past.pop();
      if (before === undefined) return;
      this.#undone.push(this.#text);
      this.#become(before);
      said(() => String(this.core.findings(PLAN).length));
    }
  }

  #again(): void {
    const after = this.#undone.pop();
    if (after !== undefined) {
      this.#past.push(this.#text);
      this.#become(after);
    } else this.#retype();
  }

  /** The text as it was, by one edit of what differs, as editors take back. */
  #become(then: string): void {
    const now = this.#text;
    const shorter = Math.min(now.length, then.length);
    let head = 0;
    while (head < shorter && now[head] === then[head]) head++;
    let tail = 0;
    while (tail < shorter - head && now.at(-1 - tail) === then.at(-1 - tail)) tail++;
    const [from, to] = [whole(now, head), now.length - tail];
    if (whole(now, to) !== to || whole(then, then.length - tail) !== then.length - tail)
      this.#giveWhole(then);
    else this.#replace(from, to, then.slice(from, then.length - tail));
  }

  #giveWhole(text: string): void {
    this.#past.push(this.#text);
    this.core.give(PLAN, text);
    this.#texts.set(PLAN, text);
  }

  #otherFile(): void {
    const random = this.#random;
    const others = Object.entries(this.#options.others ?? {});
    if (others.length === 0) {
      this.#retype();
      return;
    }
    const [name, text] = random.pick(others);
    const file = `${ROOT}/${name}`;
    const what = random.whole(0, 3);
    if (what === 0) {
      this.core.close(file);
      this.#texts.delete(file);
      return;
    }
    if (what === 1) {
      this.core.refuse(file, 'not-found');
      this.#texts.set(file, null);
      return;
    }
    const number = random.pick([...text.matchAll(/[0-9]+/g)]);
    const changed =
      what === 2
        ? text
        : text.slice(0, number.index) +
          random.pick(TRIED) +
          text.slice(number.index + number[0].length);
    this.core.give(file, changed);
    this.#texts.set(file, changed);
  }
}

/** Never between the halves of a surrogate pair or of CR LF: editors don't. */
export function whole(text: string, offset: number): number {
  const code = text.charCodeAt(offset);
  const inPair = code >= 0xdc00 && code <= 0xdfff;
  const inBreak = text[offset] === '\n' && text[offset - 1] === '\r';
  return inPair || inBreak ? offset - 1 : offset;
}
