/** The core alone on a film of many cuts: what an edit of one cut in its middle costs. */
import { createCore } from '../../shared/core/core.ts';
import { planOf } from './plan-of.ts';
import { type Spread, spread, timed } from './statistics.ts';

const FILE = 'file:///w/plan.shootplan.yaml';
const EDITS = 100;

export interface CutsResult {
  readonly cuts: number;
  /** Where in its clip it begins: nothing of the film moves. */
  readonly from: Spread;
  /** How long it is: every cut behind it moves. */
  readonly duration: Spread;
}

/** Two cuts of each shot, each of two bars. */
const filmOf = (cuts: number): string => `${planOf(cuts / 2)}
edit:
  music: { tempo: 100 bpm, first-beat: 0 s, bar: 4 beats }
  cuts:
${Array.from({ length: cuts }, (_, index) => `    cut-${index}:\n      shot: shot-${index % (cuts / 2)}\n      from: 2 s\n      duration: 2 bars\n`).join('')}`;

export function benchCuts(cuts: number): CutsResult {
  const text = filmOf(cuts);
  const core = createCore({ rootOf: () => 'file:///w' });
  core.give(FILE, text);
  core.findings(FILE);
  const cut = text.split('\n').indexOf(`    cut-${cuts / 2}:`);
  const edited = (line: number, start: number, values: readonly [string, string]): Spread =>
    spread(
      Array.from({ length: EDITS }, (_, round) => {
        const end = core.line(FILE, line).length;
        return timed(() => {
          const range = {
            start: { line, character: start },
            end: { line, character: end },
          };
          core.edit(FILE, range, values[round % 2]!);
          core.findings(FILE);
        });
      }),
    );
  return {
    cuts,
    from: edited(cut + 2, '      from: '.length, ['3 s', '2 s']),
    duration: edited(cut + 3, '      duration: '.length, ['4 s', '2 bars']),
  };
}
