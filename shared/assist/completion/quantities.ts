/** Quantities for a place: for a shot's settings each tried out, else what is usual and what stands elsewhere. */
import type { Shot } from '../../plan/generated/types.ts';
import { kindOf, type QuantityId, type QuantityKind } from '../../quantity/index.ts';
import type { RoughForm } from '../../quantity/rough.ts';
import { message } from '../../words/message.ts';
import { valuesElsewhere } from './elsewhere.ts';
import { followsFrom } from './follows.ts';
import type { Proposal } from './item.ts';
import { IMPOSSIBLE, outcomeOf, withinLife } from './outcome.ts';
import { SETTINGS, type Setting, tryTake, tryText } from './settings.ts';
import type { TrialShot } from './trial-shot.ts';
import { isWhole, withUnits } from './units.ts';
import { USUAL } from './usual.ts';
import type { Where } from './where.ts';

/** What one usually begins with comes first among what works as well. */
const AS_GOOD = 0.1;
/** Ranks of what is proposed for other reasons than its consequence. */
const RANK = {
  unit: -1,
  former: 0,
  elsewhere: 40,
  usual: 50,
  word: 60,
  range: 65,
  example: 70,
  rough: 75,
} as const;
/** Values of other shots that are tried in this one. */
const MOST_ELSEWHERE = 8;

/** What stands at the caret, and how much of it before. */
interface Written {
  readonly word: string;
  readonly typed: string;
  /** What stood there before it was taken out. */
  readonly former?: string | undefined;
}

export function quantitiesAt(where: Where, of: QuantityId, written: Written): readonly Proposal[] {
  const kind = kindOf(of);
  const found = new Found(where, kind);
  const { meaning, shot, place } = where;
  const key = meaning?.key ?? '';
  const isSetting = shot && meaning?.of === 'shot' && place.path.length === 1;
  const setting = isSetting ? SETTINGS[key as keyof Shot] : undefined;
  if (shot && setting) found.addTried(shot, setting, key as keyof Shot, written);
  else found.addKnown(written);
  if (shot && meaning?.of === 'take') found.weighByLife(shot, key, written);
  for (const word of kind.words) found.add(word, '', RANK.word);
  return found.sorted();
}

/** Per cent that a value is often known to: by a ruler, by a look. */
const TOLERANCES = [2, 10];

/** `text` ± so many per cent; undefined: the kind has no such form. */
function withTolerance(
  kind: QuantityKind<unknown>,
  text: string,
  percent: number,
): string | undefined {
  const parsed = kind.rough?.parse(`${text} \u00b1 ${percent} %`);
  return parsed?.ok ? (parsed.usual ?? `${text} \u00b1 ${percent} %`) : undefined;
}

/** A lower end and "to", and as much of an upper one as there is. */
const SPAN = /^([0-9]+(?:\.[0-9]+)?) to(?: ([0-9]+(?:\.[0-9]+)?)?)?/;

/** Of a range that is being typed: its units, and before its upper end is there, one a quarter higher. */
function spans(kind: QuantityKind<unknown>, typed: string): readonly string[] {
  const [, low, high] = SPAN.exec(typed) ?? [];
  if (low === undefined) return [];
  const upper = high ?? String(Number((1.25 * Number(low)).toPrecision(2)));
  const units = kind.units.length === 0 ? [''] : kind.units;
  return units.flatMap((unit) => {
    const spaced = unit === '' ? [''] : [` ${unit}`, unit];
    return spaced.map((end) => `${low} to ${upper}${end}`);
  });
}

const listed = (text: string | undefined): readonly string[] => (text === undefined ? [] : [text]);

class Found {
  readonly #where: Where;
  readonly #kind: QuantityKind<unknown>;
  readonly #byText = new Map<string, Proposal>();

  constructor(where: Where, kind: QuantityKind<unknown>) {
    this.#where = where;
    this.#kind = kind;
  }

  /** Once each, in the usual spelling. */
  add(text: string, detail: string, rank: number): void {
    const { entry, path } = this.#where.place;
    if (!(isWhole(this.#kind, text) || this.#isRough(text)) || this.#byText.has(text)) return;
    const kind = this.#kind.words.includes(text) ? 'word' : 'value';
    const about = { kind: 'value', entry, path, text } as const;
    this.#byText.set(text, { text, detail, rank, kind, about });
  }

  /** Ranges are offered where the key takes them. */
  get #rough(): RoughForm<unknown> | undefined {
    const shape = this.#where.meaning?.shape;
    return shape?.kind === 'quantity' && shape.rough ? this.#kind.rough : undefined;
  }

  #isRough(text: string): boolean {
    const parsed = this.#rough?.parse(text);
    return parsed?.ok === true && parsed.usual === undefined;
  }

  /** What was typed, with a tolerance; of nothing typed yet, what a range looks like. */
  addRanges(typed: string): void {
    const rough = this.#rough;
    if (!rough) return;
    for (const text of withUnits(this.#kind, typed))
      for (const tolerance of TOLERANCES) {
        const range = withTolerance(this.#kind, text, tolerance);
        if (range) this.add(range, message`known to ${tolerance}%`, RANK.range);
      }
    for (const text of spans(this.#kind, typed)) this.add(text, message`a range`, RANK.unit);
    if (typed !== '') this.add(typed, '', RANK.range);
    else for (const text of rough.examples) this.add(text, message`a range`, RANK.rough);
  }

  addTried(shot: TrialShot, setting: Setting, key: keyof Shot, written: Written): void {
    const { word, typed, former } = written;
    const units = withUnits(this.#kind, typed);
    const first = setting.first(shot);
    const marks = setting.texts(shot);
    const others = valuesElsewhere(this.#where)
      .map(({ text }) => text)
      .slice(0, MOST_ELSEWHERE);
    for (const text of new Set([...units, ...marks, ...others, ...listed(former)])) {
      const tried = tryText(shot, key, text);
      if (!tried) continue;
      const { words, rank } = setting.outcome(tried);
      // Where something whole stands, nothing is offered that would be worse than that.
      const isWorse = isWhole(this.#kind, word) && text !== word && rank >= IMPOSSIBLE;
      if (units.includes(text) && !isWorse) this.add(text, words, RANK.unit + rank / 100);
      // What can't be done is no choice, but for what stood there: its price is told.
      else if (rank < IMPOSSIBLE || text === former)
        this.add(text, words, text === first ? rank - AS_GOOD : rank);
    }
  }

  /** Lengths of the take, beside what the film's life allows. */
  weighByLife(shot: TrialShot, key: string, { word, former }: Written): void {
    for (const [text, one] of this.#byText) {
      const tried = tryTake(shot, key, text);
      const { words, rank } = tried ? outcomeOf(tried, [withinLife]) : { words: '', rank: 0 };
      if (rank >= IMPOSSIBLE && text !== word && text !== former) this.#byText.delete(text);
      else if (words !== '')
        this.#byText.set(text, {
          ...one,
          detail: [words, one.detail].filter(Boolean).join(' · '),
          rank: one.rank + 100 * rank,
        });
    }
  }

  /** What isn't worked out: as it stands elsewhere, as it usually is, as the schema shows it. */
  addKnown({ typed, former }: Written): void {
    const { meaning } = this.#where;
    for (const text of withUnits(this.#kind, typed)) this.add(text, '', RANK.unit);
    followsFrom(this.#where).forEach(([text, words], index) => {
      this.add(text, words, index / 100);
    });
    valuesElsewhere(this.#where).forEach(({ text, of, times }, index) => {
      const words = times > 1 ? message`as in ${times} others` : message`as in ${of}`;
      this.add(text, words, RANK.elsewhere + index / 100);
    });
    const usual = (meaning && USUAL[meaning.of]?.[meaning.key]) ?? [];
    usual.forEach((text, index) => {
      this.add(text, message`usual`, RANK.usual + index / 100);
    });
    this.addRanges(typed);
    for (const text of listed(former)) this.add(text, '', RANK.former);
    const examples = meaning?.keyShape.examples ?? [];
    for (const text of examples.length > 0 ? examples : this.#kind.examples)
      this.add(text, message`for example`, RANK.example);
  }

  sorted(): readonly Proposal[] {
    return [...this.#byText.values()].sort((a, b) => a.rank - b.rank);
  }
}
