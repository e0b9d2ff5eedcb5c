import { stat } from 'node:fs/promises';
import path from 'node:path';
import type { Checker, Core } from '../../shared/api/facade.ts';
import type { ExplainedRule } from '../../shared/report/explain.ts';
import { SEVERITIES, type Severity } from '../../shared/rules/rule.ts';
import { type LengthUnit, Say } from '../../shared/say/say.ts';
import { later, message } from '../../shared/words/message.ts';
import { FOUND, NOTHING_FOUND } from '../exit-status.ts';
import type { Create } from '../files/plan-set.ts';
import type { ClipReader } from '../media/clip-reader.ts';
import type { Terminal } from '../terminal.ts';
import { type OptionSpec, type Parsed, WrongUse } from './options.ts';

/** What a check needs. */
export interface CheckSurroundings<C extends Checker = Checker> {
  readonly terminal: Terminal;
  readonly createCore: Create<C>;
  /** All rules, to be explained. */
  readonly rules: readonly ExplainedRule[];
}

export interface Surroundings extends CheckSurroundings<Core> {
  /** Made by the command that reads clips, and by no other. */
  readonly createClipReader: () => ClipReader;
  /** What makes the page of the sheet one to fill in; read by the command that writes it. */
  readonly sheetScript: () => string;
  /** What takes comments in the page of a comparison; read as that is. */
  readonly reviewScript: () => string;
}

export interface Command<S extends CheckSurroundings = Surroundings> {
  readonly name: string;
  /** How it is called, one form a line. */
  readonly usage: readonly string[];
  readonly about: string;
  /** In the order of the help. */
  readonly options: Readonly<Record<string, OptionSpec>>;
  /** @returns the exit status; throws `WrongUse` where it was called wrongly */
  run(parsed: Parsed, surroundings: S): Promise<number>;
}

export const FORMAT: OptionSpec = {
  oneOf: ['text', 'json'],
  about: later`text (default) or json`,
};
export const LENGTHS: OptionSpec = {
  oneOf: ['mm', 'inches'] satisfies LengthUnit[],
  about: later`Unit for lengths in text: mm (default) or inches. JSON is always in millimetres.`,
};
export const ROOT: OptionSpec = {
  value: later`folder`,
  shown: 'DIR',
  about: later`Folder that plans may use files from. Default: the repository's root, else the plan's folder.`,
};
export const FAIL_ON: OptionSpec = {
  oneOf: ['error', 'warning', 'note'] satisfies Severity[],
  about: later`Lowest severity that makes the exit status 1. Default: error.`,
};
export const OUTPUT: OptionSpec = {
  value: later`file`,
  short: 'o',
  shown: 'FILE',
  about: later`Output file. Default: standard output.`,
};

export const FORCE: OptionSpec = {
  about: later`Replaces any file of that name. Default: only a file that Lamella wrote.`,
};

export const lengthsIn = ({ lengths }: Parsed['options']): LengthUnit =>
  (lengths as LengthUnit | undefined) ?? 'mm';

/** Words in the units that were asked for. */
export const sayIn = (options: Parsed['options']): Say => new Say(() => lengthsIn(options));

/** The exit status by the most severe of what was found, against the bar of `--fail-on`. */
export function statusOf(
  findings: Iterable<{ readonly severity: Severity }>,
  options: Parsed['options'],
): number {
  const bar = SEVERITIES.indexOf((options['fail-on'] as Severity | undefined) ?? 'error');
  for (const { severity } of findings) if (SEVERITIES.indexOf(severity) <= bar) return FOUND;
  return NOTHING_FOUND;
}

/** The folder that an option names, absolute; null: it was left out. */
export async function folderIn(
  { cwd }: Terminal,
  option: string,
  { options }: Parsed,
): Promise<string | null> {
  const named = options[option];
  if (typeof named !== 'string') return null;
  const folder = path.resolve(cwd, named);
  const isFolder = await stat(folder).then(
    (found) => found.isDirectory(),
    () => false,
  );
  if (!isFolder) throw new WrongUse(message`--${option} ${named}: no such folder.`);
  return folder;
}
