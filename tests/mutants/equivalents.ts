/** Mutants that change nothing anybody can see, each with the reason: `equivalents.yaml`. */
import { parse } from 'yaml';
import { read } from '../tidy/support/project.ts';
import { linesOf, type Mutation } from './mutations.ts';

export interface Equivalent {
  readonly file: string;
  /** The line as it is, and as the mutant has it. */
  readonly line: string;
  readonly becomes: string;
  readonly why: string;
}

export const EQUIVALENTS_PATH = 'tests/mutants/equivalents.yaml';

export const equivalents = (): readonly Equivalent[] => parse(read(EQUIVALENTS_PATH)) ?? [];

export function isEquivalent(mutation: Mutation, known: readonly Equivalent[]): boolean {
  const [line, becomes] = linesOf(read(mutation.file), mutation);
  return known.some(
    (one) => one.file === mutation.file && one.line === line && one.becomes === becomes,
  );
}
