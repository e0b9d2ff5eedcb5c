/** What plans with many of one thing cost to open, and their fixes to find, in processor time. */
import { createCore } from '../../shared/core/core.ts';
import { EFFORT_OF_FILE, fixesWithin } from '../../shared/workspace/most-tried.ts';
import { SHAPES } from './shapes.ts';

const FILE = 'file:///w/plan.shootplan.yaml';

export const SHAPE_SIZES = [100, 300, 1000] as const;

/** Milliseconds of the processor, which other programs lengthen less than those of a clock. */
interface ShapeCost {
  readonly open: number;
  /** Of all findings, as far as a check tries them. */
  readonly fixes: number;
  /** Of the finding in the middle. */
  readonly atCursor: number;
}

export interface ShapeResult {
  readonly shape: string;
  /** At each of `SHAPE_SIZES`. */
  readonly costs: readonly ShapeCost[];
}

function processed(work: () => void): number {
  const before = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}

function costOf(text: string): ShapeCost {
  const core = createCore({ rootOf: () => 'file:///w' });
  const open = processed(() => {
    core.give(FILE, text);
    for (const file of core.wanted(FILE)) core.refuse(file, 'not-found');
    core.findings(FILE);
  });
  const findings = core.findings(FILE);
  const middle = findings[Math.floor(findings.length / 2)];
  const atCursor = processed(() => {
    if (middle) core.fixesIn(FILE, { start: middle.range.start, end: middle.range.start });
  });
  const fixes = processed(() => {
    fixesWithin(core, findings, EFFORT_OF_FILE);
  });
  return { open, fixes, atCursor };
}

export function benchShapes(): readonly ShapeResult[] {
  for (const make of Object.values(SHAPES)) costOf(make(20));
  return Object.entries(SHAPES).map(([shape, make]) => ({
    shape,
    costs: SHAPE_SIZES.map((size) => costOf(make(size))),
  }));
}
