/** The problems of an entry's shape, each with what its wording needs. */

import type { Failure } from '../quantity/index.ts';
import { KINDS, kindOf } from '../quantity/index.ts';
import { inLanguage, message } from '../words/message.ts';
import { renameKey, write } from './fixes.ts';
import { nearest } from './nearest.ts';
import type { Place } from './place.ts';
import type { PlanFix, ShapeProblem } from './problem.ts';
import type { KeyShape, Shape } from './shape.ts';

type Args = Readonly<Record<string, string | undefined>>;

const LONGEST = 60;

/** The language's own words, which are needed whole; only what the plan wrote can be endless. */
const WHOLE: ReadonlySet<string> = new Set(['keys', 'instead']);

/** A text as it may be quoted in a sentence. */
const short = (text: string): string =>
  text.length <= LONGEST ? text : `${text.slice(0, LONGEST - 1)}\u2026`;

export function problem(
  rule: ShapeProblem['rule'],
  code: string,
  at: Place,
  args: Args,
  fixes: readonly PlanFix[] = [],
): ShapeProblem {
  const given = Object.entries(args).filter((pair): pair is [string, string] => !!pair[1]);
  const clipped = given.map(([name, text]) => [name, WHOLE.has(name) ? text : short(text)]);
  return { rule, code, at, args: Object.fromEntries(clipped), fixes };
}

/** All of them stop the plan from being read as it stands, except for spellings. */
export const isError = (found: ShapeProblem): boolean => found.rule !== 'usual-spelling';

/** What stands at a value: the key that it belongs to, and what that key takes. */
export interface Label {
  readonly key: string;
  readonly title: string;
  readonly examples: readonly string[];
}

export const labelOf = (key: string, { title, examples }: KeyShape): Label => ({
  key,
  title,
  examples,
});

const labelArgs = ({ key, title, examples }: Label): Args => ({
  key,
  title,
  example: examples[0],
});

/** What a shape takes, in a few words. */
function expectation(shape: Shape): string {
  switch (shape.kind) {
    case 'quantity': {
      const kind = kindOf(shape.of);
      const words =
        kind.words.length > 0 && !kind.title.includes(kind.words[0]!)
          ? message`${inLanguage(kind.title)}, or ${kind.words.join(message` or `)}`
          : inLanguage(kind.title);
      return shape.rough ? message`${words}, or a range` : words;
    }
    case 'enum':
      return message`one of ${shape.values.join(', ')}`;
    case 'ref':
      return message`the name of one of the ${shape.groups.join(', ')}`;
    case 'name':
      return message`a name`;
    case 'text':
      return message`text`;
    case 'yes-no':
      return message`yes or no`;
    case 'word-or-record':
      return message`${shape.words.join(', ')}, or a mapping`;
    case 'record':
    case 'map':
      return message`a mapping`;
    case 'list':
      return message`a list`;
  }
}

/** Nothing stands after the colon or hyphen yet. */
export const emptyValue = (at: Place, label: Label, shape: Shape): ShapeProblem =>
  problem('wrong-value', 'empty-value', at, { ...labelArgs(label), expected: expectation(shape) });

/** A mapping, a list or a single value where another of the three belongs. */
export const wrongForm = (
  at: Place,
  label: Label,
  shape: Shape,
  found: string,
  fixes: readonly PlanFix[] = [],
): ShapeProblem => {
  const code =
    shape.kind === 'list'
      ? 'not-a-list'
      : shape.kind === 'record' || shape.kind === 'map'
        ? 'not-a-mapping'
        : 'not-a-value';
  const args = { ...labelArgs(label), found, expected: expectation(shape) };
  return problem('wrong-value', code, at, args, fixes);
};

const RULE_OF: Readonly<Record<Failure['code'], ShapeProblem['rule']>> = {
  'no-unit': 'unit',
  'unknown-unit': 'unit',
  'decimal-comma': 'misread-scalar',
  'not-a-number': 'wrong-value',
  form: 'wrong-value',
  'out-of-range': 'wrong-value',
  'not-whole': 'wrong-value',
};

/** 60 W are no misspelt 60 lx: the unit is right for another quantity. */
const isOtherUnit = ({ code, detail }: Failure): boolean =>
  code === 'unknown-unit' &&
  detail !== undefined &&
  Object.values(KINDS).some(({ units }) => (units as readonly string[]).includes(detail));

/** A quantity that doesn't read. Where several were likely meant, each is a guess and says so. */
export function wrongQuantity(
  at: Place,
  label: Label,
  shape: Extract<Shape, { kind: 'quantity' }>,
  text: string,
  failure: Failure,
): ShapeProblem {
  const kind = kindOf(shape.of);
  const isSure = failure.likely.length === 1 && !isOtherUnit(failure);
  const guess = isSure ? undefined : message`a guess at what was meant`;
  return problem(
    RULE_OF[failure.code],
    failure.code,
    at,
    {
      ...labelArgs(label),
      text,
      quantity: kind.title,
      expected: expectation(shape),
      units: kind.units.join(', '),
      detail: failure.detail,
      likely: failure.likely[0],
    },
    failure.likely.map((likely) => write(at, likely, guess)),
  );
}

export const otherSpelling = (at: Place, label: Label, text: string, usual: string): ShapeProblem =>
  problem('usual-spelling', 'usual-spelling', at, { ...labelArgs(label), text, usual }, [
    write(at, usual),
  ]);

/** `meant`: the value that the text is another word for. */
export function notOneOf(
  at: Place,
  label: Label,
  values: readonly string[],
  text: string,
  meant?: string,
): ShapeProblem {
  const near = meant ?? nearest(text, values);
  return problem(
    'wrong-value',
    'not-one-of',
    at,
    { ...labelArgs(label), text, expected: values.join(', '), nearest: near },
    near === undefined ? [] : [write(at, near)],
  );
}

/** `part` 'key' where it is the key of a named entry. */
export function notAName(at: Place, label: Label, text: string, likely?: string): ShapeProblem {
  const fix = (name: string): PlanFix =>
    at.part === 'key' ? renameKey(at, name) : write(at, name);
  const fixes = likely === undefined ? [] : [fix(likely)];
  return problem('wrong-value', 'not-a-name', at, { ...labelArgs(label), text, likely }, fixes);
}

export const emptyText = (at: Place, label: Label): ShapeProblem =>
  problem('wrong-value', 'empty-text', at, labelArgs(label));

/** All the keys that a record lacks, in one; it stands where the first would. */
export const missingKeys = (
  at: Place,
  of: string,
  keys: readonly (readonly [string, KeyShape])[],
): ShapeProblem => {
  const [key, shape] = keys[0]!;
  return problem('missing-key', 'missing-key', at, {
    ...labelArgs(labelOf(key, shape)),
    of,
    keys: keys.map(([name]) => name).join(', '),
    expected: expectation(shape.shape),
  });
};

/** The schema refuses what nothing here has a word for; no test has met it. */
export const notAllowed = (at: Place, label: Label, keyword: string): ShapeProblem =>
  problem('wrong-value', 'not-allowed', at, { ...labelArgs(label), keyword });
