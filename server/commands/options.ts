/** Options of a command, checked against what it takes; wrong use is said in whole sentences. */
import { parseArgs } from 'node:util';
import { editDistance } from '../../shared/quantity/edit-distance.ts';
import { withArticle } from '../../shared/words/article.ts';
import { anyOf } from '../../shared/words/listed.ts';
import { message } from '../../shared/words/message.ts';

/** The command was called wrongly: its message goes to standard error, exit status 2. */
export class WrongUse extends Error {}

export interface OptionSpec {
  /** What it is for, in the help. */
  readonly about: string;
  /** What stands for its value in the help: FILE. */
  readonly shown?: string;
  /** What stands behind it, for messages; left out: nothing does. */
  readonly value?: string;
  /** The only values that it takes. */
  readonly oneOf?: readonly string[];
  /** One letter that stands for it: `-o`. */
  readonly short?: string;
}

export interface Parsed {
  readonly options: Readonly<Record<string, string | true>>;
  readonly rest: readonly string[];
}

export function parseOptions(
  args: readonly string[],
  specs: Readonly<Record<string, OptionSpec>>,
): Parsed {
  const types = Object.entries(specs).map(
    ([name, spec]) =>
      [
        name,
        {
          type: takesValue(spec) ? 'string' : 'boolean',
          ...(spec.short !== undefined && { short: spec.short }),
        },
      ] as const,
  );
  const { tokens } = parseArgs({
    args: [...args],
    options: Object.fromEntries(types),
    strict: false,
    tokens: true,
  });
  const options: Record<string, string | true> = {};
  const rest: string[] = [];
  for (const token of tokens) {
    if (token.kind === 'positional') rest.push(token.value);
    if (token.kind !== 'option') continue;
    const spec = Object.hasOwn(specs, token.name) ? specs[token.name] : undefined;
    if (!spec) throw new WrongUse(unknownOption(token.rawName, Object.keys(specs)));
    options[token.name] = readValue(token, spec);
  }
  return { options, rest };
}

const takesValue = (spec: OptionSpec): boolean =>
  spec.value !== undefined || spec.oneOf !== undefined;

function readValue(
  token: { rawName: string; value: string | undefined; inlineValue: boolean | undefined },
  spec: OptionSpec,
): string | true {
  const { rawName, value, inlineValue } = token;
  if (!takesValue(spec)) {
    if (value !== undefined)
      throw new WrongUse(message`${rawName} takes no value, but got "${value}".`);
    return true;
  }
  const expected = spec.oneOf ? anyOf(spec.oneOf) : withArticle(spec.value ?? '');
  // `--root --format json`: the next option is not the value that was forgotten.
  if (value === undefined || value === '' || (!inlineValue && value.startsWith('--')))
    throw new WrongUse(message`${rawName} needs a value: ${expected}.`);
  if (spec.oneOf && !spec.oneOf.includes(value))
    throw new WrongUse(message`${rawName} takes ${expected}, not "${value}".`);
  return value;
}

const unknownOption = (written: string, known: readonly string[]): string => {
  const near = nearest(
    written,
    known.map((name) => `--${name}`),
  );
  return message`There is no option ${written}.${near ? message` Did you mean ${near}?` : ''}`;
};

/** The name nearest to what was written; null where none is near. */
export function nearest(written: string, names: readonly string[]): string | null {
  const most = Math.max(1, Math.floor(written.length / 3));
  let best: string | null = null;
  let least = most + 1;
  for (const name of names) {
    const distance = editDistance(written, name);
    if (distance < least) [best, least] = [name, distance];
  }
  return best;
}

/** What a shot was called by that the plan doesn't have, with what it may have been. */
export function noSuchShot(name: string, shots: readonly string[], file: string): WrongUse {
  const near = nearest(name, shots);
  const help = near ? message` Did you mean ${near}?` : message` Its shots: ${shots.join(', ')}.`;
  return new WrongUse(message`${file} has no shot "${name}".${shots.length === 0 ? '' : help}`);
}
