/** Checks before shooting: those that the shots call for first, and among them those not yet asked. */
import {
  type CheckCalledFor,
  checksCalledFor,
  KNOWN_CHECKS,
  missingChecks,
} from '../../rules/checks-called-for.ts';
import { inLanguage, message } from '../../words/message.ts';
import type { Proposal } from './item.ts';
import type { Where } from './where.ts';

/** Shots that are asked what they call for; the sum over more says nothing else. */
const MOST_SHOTS = 40;

/** Names of checks for a list or a mapping of them, none of `taken`. */
export function checksFor(where: Where, taken: readonly string[] = []): readonly Proposal[] {
  const calls = where.shot ? ofShot(where) : ofPlan(where);
  return KNOWN_CHECKS.flatMap(({ name, what }, index): Proposal[] => {
    if (taken.includes(name)) return [];
    const called = calls.get(name);
    const asks = inLanguage(what);
    const detail = called ? `${asks} · ${called.words}` : asks;
    const rank = (called?.rank ?? 100) + index / 100;
    return [{ text: name, detail, rank, kind: 'check', about: { kind: 'check', name } }];
  }).sort((a, b) => a.rank - b.rank);
}

export const checkItems = (where: Where): readonly Proposal[] => checksFor(where);

interface Called {
  readonly rank: number;
  readonly words: string;
}

function ofShot({ shot }: Where): ReadonlyMap<string, Called> {
  const bench = shot!.now.bench;
  const missing = new Set(missingChecks(bench).map(({ name }) => name));
  return new Map(
    checksCalledFor(bench).map(({ name }) => [
      name,
      missing.has(name)
        ? { rank: 0, words: message`needed for this shot` }
        : { rank: 10, words: message`already in the list` },
    ]),
  );
}

function ofPlan({ context, file }: Where): ReadonlyMap<string, Called> {
  const counts = new Map<string, { shots: number; missing: number }>();
  for (const entry of context.analysis.shots(file).slice(0, MOST_SHOTS)) {
    const bench = context.analysis.bench(file, entry);
    if (!bench) continue;
    const count = (check: CheckCalledFor, missing: number) => {
      const known = counts.get(check.name) ?? { shots: 0, missing: 0 };
      counts.set(check.name, {
        shots: known.shots + 1 - missing,
        missing: known.missing + missing,
      });
    };
    for (const check of checksCalledFor(bench)) count(check, 0);
    for (const check of missingChecks(bench)) count(check, 1);
  }
  return new Map(
    [...counts].map(([name, { shots, missing }]) => [
      name,
      {
        rank: missing > 0 ? 10 / missing : 20 + 10 / Math.max(1, shots),
        words: shots === 1 ? message`${shots} shot needs it` : message`${shots} shots need it`,
      },
    ]),
  );
}
