/** `lamella check --fix`: makes the fixes that nobody needs to choose or weigh, and says which. */
import type { Checker, OfferedFix } from '../../shared/api/facade.ts';
import type { FileId } from '../../shared/plan/place.ts';
import { inertLine } from '../../shared/report/inert.ts';
import { withEdits } from '../../shared/text/apply-edits.ts';
import { message } from '../../shared/words/message.ts';
import { freeFixes } from '../../shared/workspace/free-fixes.ts';
import type { PlanSet } from '../files/plan-set.ts';
import { NotReplaced, replaceFile } from '../files/replace-file.ts';
import { pathOfUri } from '../files/uri.ts';
import { patchOf } from '../patch.ts';
import { reasonNotWritten } from './write-output.ts';

/** Rounds of checking and fixing: each leaves only what was in conflict to the next. */
const MOST_ROUNDS = 100;

/** A file whose text is another now. */
interface FixedFile {
  readonly file: FileId;
  readonly before: string;
  readonly after: string;
}

/** A fix that was made: which files it changed, and a line that says it. */
interface Done {
  readonly files: readonly FileId[];
  readonly line: string;
}

interface Fixed {
  readonly files: readonly FixedFile[];
  /** In the order in which it was done. */
  readonly done: readonly Done[];
}

/**
 * Fixes the named plans in `plans`, in memory: what conflicts is done one after the other, with a
 * check between, until nothing is left that can be done.
 * @param named the files that may be changed
 */
export async function fixPlans(plans: PlanSet<Checker>, named: readonly FileId[]): Promise<Fixed> {
  const texts = new Map(named.map((file) => [file, plans.text(file)]));
  const mayEdit = (file: FileId): boolean => typeof texts.get(file) === 'string';
  const seen = new Set<string>([stateOf(plans, named)]);
  const done: Done[] = [];
  for (let round = 0; round < MOST_ROUNDS; round++) {
    let isChanged = false;
    for (const file of named) {
      if (!mayEdit(file)) continue;
      const fixes = freeFixes(plans.core, file, mayEdit);
      if (fixes.length === 0) continue;
      const said = fixes.map((fix) => doneBy(plans, fix));
      const undo = apply(plans, fixes);
      await plans.follow();
      // Fixes that lead back to where they began would go on for ever.
      const state = stateOf(plans, named);
      if (seen.has(state)) {
        undo();
        continue;
      }
      seen.add(state);
      isChanged = true;
      done.push(...said);
    }
    if (!isChanged) break;
  }
  const files = named.flatMap((file): FixedFile[] => {
    const [before, after] = [texts.get(file), plans.text(file)];
    return typeof before === 'string' && after !== null && before !== after
      ? [{ file, before, after }]
      : [];
  });
  return { files, done };
}

const stateOf = (plans: PlanSet<Checker>, named: readonly FileId[]): string =>
  JSON.stringify(named.map((file) => plans.text(file)));

/** Makes the fixes; answers with what gives the texts back as they were. */
function apply(plans: PlanSet<Checker>, fixes: readonly OfferedFix[]): () => void {
  const edits = fixes.flatMap((fix) => fix.edits);
  const before = [...new Set(edits.map(({ file }) => file))].map((file) => ({
    file,
    text: plans.text(file) ?? '',
  }));
  for (const { file, text } of before)
    plans.give(
      file,
      withEdits(
        text,
        edits.filter((edit) => edit.file === file),
      ),
    );
  return () => {
    for (const { file, text } of before) plans.give(file, text);
  };
}

/** As findings are told: where, then what; the line is that of the text when it was done. */
function doneBy(plans: PlanSet<Checker>, { finding, title, edits }: OfferedFix): Done {
  const { line, character } = finding.range.start;
  const at = `${plans.nameOf(finding.file)}:${line + 1}:${character + 1}`;
  return {
    files: [...new Set(edits.map(({ file }) => file))],
    line: `${inertLine(at)}: ${inertLine(title)} (${finding.rule})`,
  };
}

/**
 * Writes the fixed files; one that can't be written is given back to `plans` as it is on the disk.
 * @returns what is fixed on the disk now, and what could not be written, and why
 */
export async function writeFixed(
  plans: PlanSet<Checker>,
  { files, done }: Fixed,
): Promise<Fixed & { readonly problems: readonly string[] }> {
  const problems: string[] = [];
  const failed = new Set<FileId>();
  for (const { file, before, after } of files) {
    const name = plans.nameOf(file);
    try {
      await replaceFile(pathOfUri(file) ?? '', plans.rootOf(file), before, after);
    } catch (cause) {
      const why = cause instanceof NotReplaced ? cause.message : reasonNotWritten(name, cause);
      problems.push(message`${name} can't be written: ${why}.`);
      plans.give(file, before);
      failed.add(file);
    }
  }
  return {
    files: files.filter(({ file }) => !failed.has(file)),
    done: done.filter((one) => !one.files.some((file) => failed.has(file))),
    problems,
  };
}

/** All changes as one unified diff, in the form that `patch -p1` and `git apply` take. */
export const diffOf = (plans: PlanSet<Checker>, { files }: Fixed): string =>
  files
    .map(({ file, before, after }) => {
      const name = plans.nameOf(file);
      return patchOf(name, before, after);
    })
    .join('');

/** What was done, a line each, and how much that was. */
export const fixedWords = (fixed: Fixed, isDry: boolean): string =>
  [...fixed.done.map(({ line }) => line), summary(fixed, isDry)]
    .map((line) => `${line}\n`)
    .join('');

function summary({ files, done }: Fixed, isDry: boolean): string {
  const count = done.length;
  if (count === 0) return message`Nothing to fix without a choice.`;
  const fixes = count === 1 ? message`${count} fix` : message`${count} fixes`;
  const inFiles =
    files.length === 1 ? message`${files.length} file` : message`${files.length} files`;
  return isDry
    ? message`${fixes} in ${inFiles}; nothing was written.`
    : message`${fixes} in ${inFiles}.`;
}
