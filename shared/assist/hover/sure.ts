/**
 * How sure the figures of a hover are: each line that has a width says its bounds, and under the
 * table stand what widens them most and what was assumed.
 */
import { assumedWords } from '../../figures/assumed-words.ts';
import { boundsOf } from '../../figures/bounds-json.ts';
import { boundsWords } from '../../figures/catalogue/say-figure.ts';
import { range, size } from '../../figures/catalogue/shape.ts';
import type { Figure } from '../../figures/figure.ts';
import type { ShotFigures } from '../../figures/shot-figures.ts';
import type { Bounds, Pick, Share, UncertainShot } from '../../figures/uncertain.ts';
import type { Width } from '../../figures/width.ts';
import { aroundWords, inBrackets } from '../../say/around.ts';
import { exposureEnds } from '../../say/figures.ts';
import type { Say } from '../../say/say.ts';
import type { Unit } from '../../say/units.ts';
import { allOf } from '../../words/listed.ts';
import { inLanguage, message } from '../../words/message.ts';
import { code, paragraphs } from './markdown.ts';

/** Inputs that make less of every width than this need no line of their own. */
const WORTH_A_LINE = 0.1;
const MOST_ASSUMED = 3;
const MOST_WIDEST = 2;
const MOST_NAMED = 2;

type PickPair = (figures: ShotFigures) => Figure<readonly [number, number]>;

interface Told {
  readonly label: string;
  /** "24 to 27" */
  readonly words: string;
  readonly widenedBy: readonly Share[];
}

/** The bounds of one hover's figures; it remembers which it told of. */
export class Sure {
  readonly #uncertain: UncertainShot;
  readonly #say: Say;
  readonly #told: Told[] = [];

  constructor(uncertain: UncertainShot, say: Say) {
    this.#uncertain = uncertain;
    this.#say = say;
  }

  /** " (24 to 27)", to stand behind a figure; empty where its digits show no width. */
  behind(label: string, pick: Pick, print: (value: number) => string): string {
    return this.#words(label, pick, (value, bounds) => aroundWords(value, bounds, print));
  }

  exposure(label: string): string {
    const pick: Pick = ({ exposureErrorStops }) => exposureErrorStops;
    return this.#words(label, pick, (value, bounds) => exposureEnds(value, bounds, this.#say));
  }

  size(label: string, pick: PickPair, unit: Unit): string {
    return this.#pair(label, pick, size(unit));
  }

  range(label: string, pick: PickPair, unit: Unit): string {
    return this.#pair(label, pick, range(unit));
  }

  /** What widens the figures that were told of, and what was assumed for them. */
  foot(): string {
    return paragraphs(this.widest(), ...this.#assumed());
  }

  #words(label: string, pick: Pick, words: (value: number, bounds: Bounds) => string): string {
    const bounds = this.#uncertain.bounds(pick);
    const middle = pick(this.#uncertain.middle.figures);
    if (!bounds || !middle.known) return '';
    const said = words(middle.value, bounds);
    if (said !== '') this.#told.push({ label, words: said, widenedBy: bounds.widenedBy });
    return inBrackets(said);
  }

  #pair(label: string, pick: PickPair, shape: ReturnType<typeof size>): string {
    const middle = pick(this.#uncertain.middle.figures);
    const found = middle.known ? boundsOf(this.#uncertain, shape, pick) : undefined;
    if (!middle.known || !found) return '';
    const said = boundsWords(shape, middle.value, found.bounds, this.#say);
    if (said !== '') this.#told.push({ label, words: said, widenedBy: found.widest.widenedBy });
    return inBrackets(said);
  }

  /** "Bounds: effective f-number 24 to 27."; empty where nothing was told of. */
  bounds(): string {
    const words = this.#told.map(({ label, words: ends }) => `${label} ${ends}`);
    return words.length === 0 ? '' : message`Bounds: ${words.join('; ')}.`;
  }

  /** "Most uncertain: `loss` of `long-200`. It moves the exposure."; empty where nothing was told of. */
  widest(): string {
    const byInput = new Map<Width, string[]>();
    for (const { label, widenedBy } of this.#told) {
      const [widest] = widenedBy;
      if (!widest) continue;
      const labels = byInput.get(widest.width);
      if (labels) labels.push(label);
      else byInput.set(widest.width, [label]);
    }
    return [...byInput]
      .slice(0, MOST_WIDEST)
      .map(([width, labels], index) =>
        index === 0
          ? message`Most uncertain: ${inputText(width)}. It moves ${namesOf(labels)}.`
          : message`Then: ${inputText(width)}. It moves ${namesOf(labels)}.`,
      )
      .join(' ');
  }

  /** What was assumed and makes a good part of any width, the most first. */
  #assumed(): readonly string[] {
    const most = new Map<Width, number>();
    for (const { widenedBy } of this.#told)
      for (const { width, share } of widenedBy)
        most.set(width, Math.max(share, most.get(width) ?? 0));
    return [...most]
      .filter(([{ assumed }, share]) => assumed !== null && share >= WORTH_A_LINE)
      .sort(([, a], [, b]) => b - a)
      .slice(0, MOST_ASSUMED)
      .map(([{ assumed, of, prior }]) =>
        assumedWords({ id: assumed!, of: of === null ? null : code(of), prior }, this.#say),
      );
  }
}

/** The first few of them, and how many more. */
const namesOf = (labels: readonly string[]): string =>
  allOf(
    labels.length > MOST_NAMED + 1
      ? [...labels.slice(0, MOST_NAMED), message`${labels.length - MOST_NAMED} more`]
      : labels,
  );

const inputText = ({ key, of, assumed }: Width): string =>
  assumed === 'iris'
    ? message`how the iris works up close`
    : of === null
      ? inLanguage(key)
      : message`${code(key)} of ${code(of)}`;

/** The hover with the foot under its first table, where an editor still shows it. */
export function withFoot(hover: string, sure: Sure): string {
  const [head = '', ...rest] = hover.split('\n\n');
  return paragraphs(head, sure.foot(), ...rest);
}
