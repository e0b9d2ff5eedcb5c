/**
 * Days at plans, a million edits in all: single cores that thousands of edits have aged say of every
 * text what a fresh core says of it.
 */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { Day, type Difference } from '../laws/day.ts';

export interface DaysResult {
  readonly edits: number;
  readonly days: number;
  readonly failures: readonly (Difference & { readonly plan: string; readonly seed: number })[];
}

const EDITS_A_DAY = 5_000;
/** All answers are compared once in so many edits: a fresh core takes as long as twenty edits. */
const EVERY = 50;
const MOST_FAILURES = 5;

export function workDays(edits: number, root: string, seed: number): DaysResult {
  const folder = path.join(root, 'samples');
  const texts = readdirSync(folder)
    .filter((name) => name.endsWith('.shootplan.yaml'))
    .map((name) => [name, readFileSync(path.join(folder, name), 'utf8')] as const);
  const others = Object.fromEntries(texts);
  const days = Math.ceil(edits / EDITS_A_DAY);
  const failures: DaysResult['failures'][number][] = [];
  for (let day = 0; day < days && failures.length < MOST_FAILURES; day++) {
    const [plan, text] = texts[day % texts.length]!;
    const options = { seed: seed + day, edits: EDITS_A_DAY, every: EVERY, plan: text, others };
    const found = new Day(options).run();
    if (found) failures.push({ ...found, plan, seed: options.seed });
  }
  return { edits: days * EDITS_A_DAY, days, failures };
}
