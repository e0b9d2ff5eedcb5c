/**
 * Written plans and what the command line says of them: in this process by the core, as JSON has it; and as it is
 * shipped, in a process of its own (tests/published/cli-same.test.ts holds the two together).
 */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { ShotFiguresJson } from '../../../shared/figures/json.ts';
import {
  type CheckReport,
  checkJson,
  type FiguresReport,
  figuresReport,
  type JsonFinding,
} from '../../../shared/report/json.ts';
import { coreWith, PLAN } from '../../support/plans.ts';

const SHIPPED = fileURLToPath(new URL('../../../dist/lamella.cjs', import.meta.url));

export interface Ran {
  readonly status: number | null;
  readonly out: string;
  readonly err: string;
}

/** Runs the shipped bundle; a plan is put into a folder that is gone afterwards. */
export function lamella(args: readonly string[], files: Readonly<Record<string, PlanBytes>>): Ran {
  if (!existsSync(SHIPPED)) throw new Error('dist/lamella.cjs is missing: run npm run build.');
  const folder = mkdtempSync(join(tmpdir(), 'lamella-'));
  try {
    for (const [name, content] of Object.entries(files)) writeFileSync(join(folder, name), content);
    const ran = spawnSync(process.execPath, [SHIPPED, ...args], {
      cwd: folder,
      encoding: 'utf8',
      env: { PATH: process.env.PATH ?? '' },
      maxBuffer: 1 << 28,
    });
    return { status: ran.status, out: ran.stdout, err: ran.stderr };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

export type PlanBytes = string | Uint8Array;

const NAME = 'written.shootplan.yaml';

/** `lamella figures`: every shot's figures, by its name. */
export function figuresByCommand(plan: PlanBytes): Readonly<Record<string, ShotFiguresJson>> {
  const { status, out, err } = lamella(['figures', NAME, '--format', 'json'], { [NAME]: plan });
  if (status !== 0) throw new Error(`lamella figures: ${status} ${err}`);
  return (JSON.parse(out) as FiguresReport).shots;
}

/** The same figures by the core, through the report that the command prints. */
export function figuresOfPlan(plan: string): Readonly<Record<string, ShotFiguresJson>> {
  const core = coreWith(plan);
  const report = figuresReport(
    NAME,
    core.figures(PLAN),
    core.recording(PLAN),
    core.editFigures(PLAN),
    core.dayFigures(PLAN),
  );
  return (JSON.parse(report) as FiguresReport).shots;
}

/** The same findings by the core, their fixes aside. */
export function findingsOfPlan(plan: string): readonly JsonFinding[] {
  const findings = coreWith(plan)
    .findings(PLAN)
    .map((finding) => ({ finding, fixes: [] }));
  const [file] = checkJson([{ name: NAME, findings, nameOf: () => NAME }]).files;
  return file?.findings ?? [];
}

export interface Checked {
  readonly status: number | null;
  readonly findings: readonly JsonFinding[];
}

/** `lamella check`: the plan's findings and the exit status. */
export function checkedByCommand(plan: PlanBytes, ...options: readonly string[]): Checked {
  const args = ['check', NAME, '--format', 'json', ...options];
  const { status, out, err } = lamella(args, { [NAME]: plan });
  if (err !== '') throw new Error(`lamella check: ${status} ${err}`);
  const [file] = (JSON.parse(out) as CheckReport).files;
  return { status, findings: file?.findings ?? [] };
}

/** A figure by its name, `depthMm.total` for one in a group. */
export const figureIn = (figures: ShotFiguresJson | undefined, name: string): unknown =>
  name
    .split('.')
    .reduce<unknown>((at, key) => (at as Record<string, unknown> | undefined)?.[key], figures);

/** A figure that must be a number. */
export function numberIn(figures: ShotFiguresJson | undefined, name: string): number {
  const value = figureIn(figures, name);
  if (typeof value === 'number') return value;
  const why = figures?.notKnown[name];
  throw new Error(`${name} is ${JSON.stringify(value)}: ${why ?? 'no reason given'}`);
}
