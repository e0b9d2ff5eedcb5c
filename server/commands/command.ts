import type { Checker, Core } from '../../shared/api/facade.ts';
import type { ExplainedRule } from '../../shared/report/explain.ts';
import { later } from '../../shared/words/message.ts';
import type { Create } from '../files/plan-set.ts';
import type { ClipReader } from '../media/clip-reader.ts';
import type { Terminal } from '../terminal.ts';

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
}

export interface Command<S extends CheckSurroundings = Surroundings> {
  readonly name: string;
  /** How it is called, one form a line. */
  readonly usage: readonly string[];
  readonly about: string;
  /** Option to explanation, in the order of the help. */
  readonly options: readonly (readonly [option: string, about: string])[];
  /** @returns the exit status; throws `WrongUse` where it was called wrongly */
  run(args: readonly string[], surroundings: S): Promise<number>;
}

export const LENGTHS = ['mm', 'inches'] as const;
export const FORMATS = ['text', 'json'] as const;

export const FORMAT_HELP = [
  '--format text|json',
  later`For people (default) or for programs.`,
] as const;
export const LENGTHS_HELP = [
  '--lengths mm|inches',
  later`The unit that text shows lengths in; JSON is always in millimetres.`,
] as const;
export const ROOT_HELP = [
  '--root DIR',
  later`The folder that plans may use files from; else the nearest repository's root, else the plan's folder.`,
] as const;
