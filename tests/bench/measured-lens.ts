/** The core alone on a plan whose shots share one lens with ten rows: what an edit in a row costs. */
import type { Core } from '../../shared/api/facade.ts';
import { createCore } from '../../shared/core/core.ts';
import { planOf } from './plan-of.ts';
import { type Spread, spread, timed } from './statistics.ts';

const FILE = 'file:///w/plan.shootplan.yaml';
const EDITS = 60;
/** Of plans in which an edit takes long. */
const FEW_EDITS = 15;
/** Of the server: server/ahead.ts. */
const SLICE_MS = 25;

export interface MeasuredLensResult {
  readonly shots: number;
  readonly open: Spread;
  /** A reading of one row: the lens is fitted again, and all of its shots follow. */
  readonly row: Spread;
  /** Of that, the longest that a host waits which works ahead in slices, as the server does. */
  readonly wait: Spread;
  /** A value of the same lens without rows: nothing is fitted, and all of its shots follow. */
  readonly lens: Spread;
  /** A setting of one shot: nothing is fitted. */
  readonly shot: Spread;
}

/** Of the lens that every shot of the plan has: 50 mm, 0.15x at its closest. */
const ROWS = [
  ...['field: 241 mm', 'from-sensor: 451 mm', 'magnification: 0.149x'].map(
    (read) => `with: [body-a], ring: closest, ${read}`,
  ),
  ...['field: 87 mm', 'magnification: 0.415x', 'effective-f-number: 11.3, marked: f/8'].map(
    (read) => `with: [body-a, tube-20], ring: infinity, ${read}`,
  ),
  ...['field: 65 mm', 'magnification: 0.553x'].map(
    (read) => `with: [body-a, tube-20], ring: closest, ${read}`,
  ),
  ...['field: 51.6 mm', 'effective-f-number: 13.8, marked: f/8'].map(
    (read) => `with: [body-a, tube-36], ring: infinity, ${read}`,
  ),
];

const measured = (shots: number): string =>
  planOf(shots).replace(
    '      mass: 0.3 kg\n',
    `      mass: 0.3 kg\n      bench:\n${ROWS.map((row) => `        - { ${row} }\n`).join('')}`,
  );

export function benchMeasuredLens(shots: number): MeasuredLensResult {
  const text = measured(shots);
  const open = spread(Array.from({ length: 5 }, () => timed(() => void opened(text))));
  const edits = shots < 1000 ? EDITS : FEW_EDITS;
  const look = (core: Core): number => timed(() => void core.findings(FILE));
  const [core, plain] = [opened(text), opened(planOf(shots))];
  const row: Edit = { line: 'field: 241 mm', values: ['241', '240.6'] };
  return {
    shots,
    open,
    row: edited(core, edits, row, look),
    wait: edited(core, edits, row, (it) => Math.max(...slices(it), look(it))),
    lens: edited(plain, edits, { line: 'loss: 0.2 stops', values: ['0.2', '0.3'] }, look),
    shot: edited(core, edits, { line: '    iso: 500', values: ['500', '640'] }, look),
  };
}

function opened(text: string): Core {
  const core = createCore({ rootOf: () => 'file:///w' });
  core.give(FILE, text);
  core.findings(FILE);
  return core;
}

interface Edit {
  /** Part of the first line that it is made in. */
  readonly line: string;
  /** What stands there, and what is written instead and back again. */
  readonly values: readonly [string, string];
}

function edited(
  core: Core,
  edits: number,
  { line: part, values }: Edit,
  then: (core: Core) => number,
): Spread {
  const lines = core.text(FILE)!.split('\n');
  const line = lines.findIndex((each) => each.includes(part));
  const before = lines[line]!;
  const times = Array.from({ length: edits }, (_, round) => {
    const end = core.line(FILE, line).length;
    const range = { start: { line, character: 0 }, end: { line, character: end } };
    const written = before.replace(values[0], values[(round + 1) % 2]!);
    return timed(() => core.edit(FILE, range, written)) + then(core);
  });
  core.edit(
    FILE,
    { start: { line, character: 0 }, end: { line, character: core.line(FILE, line).length } },
    before,
  );
  return spread(times);
}

/** How long each slice takes until nothing is left. */
function slices(core: Core): readonly number[] {
  const times: number[] = [];
  for (let isDone = false; !isDone; )
    times.push(
      timed(() => {
        const end = performance.now() + SLICE_MS;
        isDone = core.prepare(FILE, () => performance.now() > end);
      }),
    );
  return times;
}
