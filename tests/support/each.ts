/**
 * One law over many cases, as one test: every case is tried, and those that break the law are listed with
 * what is wrong with each of them.
 */
import { inspect } from 'node:util';
import { it } from 'vitest';

/** What stands for a case in the list where nothing else is said. */
const plainly = (one: unknown): string =>
  typeof one === 'string' ? one : Array.isArray(one) ? plainly(one[0]) : inspect(one, { depth: 1 });

/**
 * @param cases at least one: a law over nothing holds of everything
 * @param check throws, as `expect` does, where a case breaks the law
 * @param nameOf what to call a case; its text, or the first of its parts, where left out
 */
export function each<const T>(
  cases: readonly T[],
  check: (one: T) => void,
  nameOf: (one: T) => string = plainly,
): void {
  tell(
    cases.length,
    cases.flatMap((one) => {
      try {
        const late: unknown = check(one);
        if (late instanceof Promise) throw new TypeError('a check that is awaited: eachAwaited');
        return [];
      } catch (cause) {
        return [offence(nameOf(one), cause)];
      }
    }),
  );
}

/** The same where the check is awaited: one case after the other. */
export async function eachAwaited<const T>(
  cases: readonly T[],
  check: (one: T) => Promise<void>,
  nameOf: (one: T) => string = plainly,
): Promise<void> {
  const offences: string[] = [];
  for (const one of cases) {
    try {
      await check(one);
    } catch (cause) {
      offences.push(offence(nameOf(one), cause));
    }
  }
  tell(cases.length, offences);
}

/** One case's part of a law: its check, and what is added to the case's name. */
export type Law = (law: string, check: () => void | Promise<void>, of?: string) => void;

/**
 * Several laws over the same cases: one test a law, in which all cases are tried.
 *
 * @param made what is prepared of each case, once, and which laws it is held to
 */
export function laws<const T>(
  cases: readonly T[],
  nameOf: (one: T) => string,
  made: (one: T, law: Law) => void,
): void {
  const found = new Map<string, { name: string; check: () => void | Promise<void> }[]>();
  for (const one of cases)
    made(one, (law, check, of) => {
      const name = of === undefined ? nameOf(one) : `${nameOf(one)}: ${of}`;
      found.set(law, [...(found.get(law) ?? []), { name, check }]);
    });
  if (found.size === 0) throw new Error('There is no case: no law is tried on anything.');
  for (const [law, checks] of found)
    it(law, () =>
      eachAwaited(
        checks,
        async ({ check }) => check(),
        ({ name }) => name,
      ),
    );
}

function tell(count: number, offences: readonly string[]): void {
  if (count === 0) throw new Error('There is no case: the law was tried on nothing.');
  if (offences.length > 0)
    throw new Error(`${offences.length} of ${count} break the law:\n${offences.join('\n')}`);
}

/** The case, what was said of it, the line of its check, and both sides where they are long. */
function offence(name: string, cause: unknown): string {
  if (!(cause instanceof Error)) return `- ${name}: ${inspect(cause)}`;
  const { expected, actual } = cause as { expected?: unknown; actual?: unknown };
  const line = /(?<![^\s(/])(tests\/[^\s?)]+?\.ts)(?:\?[^:)]*)?:(\d+)/.exec(
    (cause.stack ?? '')
      .replaceAll(process.cwd(), '')
      .replaceAll('\\', '/')
      .replace(/.*\/tests\/support\/each\.ts.*/g, ''),
  );
  const sides =
    cause.message.includes('…') || /to (?:deeply )?(?:equal|match|be)\b/.test(cause.message)
      ? [
          ...(expected === undefined ? [] : [`    expected ${shown(expected)}`]),
          ...(actual === undefined ? [] : [`    received ${shown(actual)}`]),
        ]
      : [];
  const at = line ? ` (${line[1]}:${line[2]})` : '';
  return [`- ${name}: ${cause.message}${at}`, ...sides].join('\n');
}

const shown = (value: unknown): string =>
  inspect(value, { depth: 6, maxStringLength: 2000, maxArrayLength: 50 }).replaceAll(
    '\n',
    '\n    ',
  );
