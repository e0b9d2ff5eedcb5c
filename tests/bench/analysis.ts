/** The core alone, in this process: what an edit, an opening and a question cost. */
import { parseDocument } from 'yaml';
import type { Core } from '../../shared/api/facade.ts';
import { createCore } from '../../shared/core/core.ts';
import { lineOf, planOf, TOO_BRIGHT, WELL_EXPOSED } from './plan-of.ts';
import { type Spread, spread, timed } from './statistics.ts';

export const SIZES = [10, 100, 1000, 5000] as const;
const FILE = 'file:///w/plan.shootplan.yaml';
const EDITS = 200;

export interface AnalysisResult {
  readonly shots: number;
  readonly kilobytes: number;
  readonly findings: number;
  readonly open: Spread;
  readonly edit: Spread;
  readonly breaking: Spread;
  readonly hover: Spread;
  readonly hints: Spread;
  readonly completion: Spread;
  readonly symbols: Spread;
  readonly parseDocument: Spread;
}

const freshCore = (): Core => createCore({ rootOf: () => 'file:///w' });

/** Lines of the `iso` of some shots, spread over the plan. */
function isoLines(text: string, shots: number): readonly number[] {
  const some = Array.from({ length: Math.min(20, shots) }, (_, k) =>
    Math.floor((k * shots) / Math.min(20, shots)),
  );
  return some.map((index) => lineOf(text, index, 'iso'));
}

/** Edits one shot after another; each writes something else than stands there. */
function edits(
  core: Core,
  lines: readonly number[],
  values: readonly [string, string],
  then: (line: number) => void = () => {},
) {
  const times: number[] = [];
  for (let round = 0; round < EDITS; round++) {
    const line = lines[round % lines.length]!;
    const before = core.line(FILE, line);
    const value = before.slice(9) === values[0] ? values[1] : values[0];
    const range = {
      start: { line, character: 9 },
      end: { line, character: before.length },
    };
    times.push(
      timed(() => {
        core.edit(FILE, range, value);
        core.findings(FILE);
        then(line);
      }),
    );
  }
  return spread(times);
}

export function benchAnalysis(shots: number): AnalysisResult {
  const text = planOf(shots);
  const rounds = shots >= 1000 ? 5 : 15;
  const opened: number[] = [];
  let core = freshCore();
  for (let round = 0; round < rounds; round++) {
    core = freshCore();
    opened.push(
      timed(() => {
        core.give(FILE, text);
        core.findings(FILE);
      }),
    );
  }
  const lines = isoLines(text, shots);
  const values = [String(WELL_EXPOSED), String(TOO_BRIGHT)] as const;
  /** The aperture of the shot that was typed in, two lines above its ISO. */
  const hover = (line: number) => core.hover(FILE, { line: line - 2, character: 16 });
  const hints = (line: number) =>
    core.hints(FILE, {
      start: { line: Math.max(0, line - 30), character: 0 },
      end: { line: line + 30, character: 0 },
    });
  /** Apertures for that shot, each with what it comes to. */
  const completion = (line: number) => core.completions(FILE, { line: line - 2, character: 14 });
  const parse = Array.from({ length: shots >= 1000 ? 3 : 10 }, () =>
    timed(() => parseDocument(text)),
  );
  return {
    shots,
    kilobytes: text.length / 1000,
    findings: core.findings(FILE).filter(({ severity }) => severity !== 'hint').length,
    open: spread(opened),
    edit: edits(core, lines, values),
    breaking: edits(core, lines, ['500', '"500']),
    hover: edits(core, lines, values, hover),
    hints: edits(core, lines, values, hints),
    completion: edits(core, lines, values, completion),
    symbols: edits(core, lines, values, () => core.symbols(FILE)),
    parseDocument: spread(parse),
  };
}

export interface MemoryResult {
  readonly shots: number;
  readonly after1000: number;
  readonly after10000: number;
}

/** Heap in MB, garbage collected, after so many edits each followed by its findings. */
export function benchMemory(shots: number): MemoryResult {
  const text = planOf(shots);
  const core = freshCore();
  core.give(FILE, text);
  core.findings(FILE);
  const lines = isoLines(text, shots);
  const run = (count: number) => {
    for (let round = 0; round < count; round++) {
      const line = lines[round % lines.length]!;
      const end = core.line(FILE, line).length;
      core.edit(
        FILE,
        { start: { line, character: 9 }, end: { line, character: end } },
        String(100 + (round % 400)),
      );
      core.findings(FILE);
    }
    globalThis.gc?.();
    return process.memoryUsage().heapUsed / 1e6;
  };
  return { shots, after1000: run(1000), after10000: run(9000) };
}
