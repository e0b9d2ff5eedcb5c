/** The outline of a long plan, as an editor asks for it after every key: in processor time. */
import { symbols } from '../../server/handlers/symbols.ts';
import { createCore } from '../../shared/core/core.ts';
import { lineOf, planOf } from './plan-of.ts';
import { type Spread, spread } from './statistics.ts';

const FILE = 'file:///w/plan.shootplan.yaml';
const ROUNDS = 40;

export interface OutlineResult {
  readonly shots: number;
  /** Nothing of the plan has been read yet. */
  readonly first: number;
  readonly value: Spread;
  /** A new line at the top moves all that is below it. */
  readonly line: Spread;
}

/** ms of the process: what else the machine does counts less than in time that passes. */
function processor(work: () => void): number {
  const before = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}

export function benchOutline(shots: number): OutlineResult {
  const text = planOf(shots);
  const core = createCore({ rootOf: () => 'file:///w' });
  core.give(FILE, text);
  const outline = (): void => {
    symbols(core, { hierarchicalSymbols: true }, FILE, FILE);
  };
  const first = processor(outline);
  const edited = (edit: (round: number) => void): Spread => {
    const times: number[] = [];
    for (let round = 0; round < 2 * ROUNDS; round++) {
      edit(round);
      const time = processor(outline);
      // The first half is for the compiler.
      if (round >= ROUNDS) times.push(time);
    }
    return spread(times);
  };
  const at = lineOf(text, Math.floor(shots / 2), 'iso');
  const from = '    iso: '.length;
  const value = edited((round) => {
    const end = core.line(FILE, at).length;
    const range = { start: { line: at, character: from }, end: { line: at, character: end } };
    core.edit(FILE, range, round % 2 ? '500' : '640');
  });
  const top = { line: 0, character: 0 };
  const line = edited(() => core.edit(FILE, { start: top, end: top }, '\n'));
  return { shots, first, value, line };
}
