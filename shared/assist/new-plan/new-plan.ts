/**
 * A whole plan from three choices. Its shot is worked out, not written down: put together as a
 * new shot is, and given the checks that it calls for.
 */
import type { Core, CoreOptions } from '../../api/facade.ts';
import { ownKit } from './base.ts';
import type { Body, Lens, SubjectKind } from './kit.ts';

interface PlanChoice {
  readonly body: Body;
  readonly lens: Lens;
  readonly subject: SubjectKind;
  /** Lines of a light by its sheet; left out: the usual light for the subject. */
  readonly light?: string;
}

const ROOT = 'plan:///';
const FILE = `${ROOT}new.shootplan.yaml`;
const SHOT = 'first';

/** By its name, among those that there are. */
export const pieceOf = <T extends { readonly name: string }>(
  pieces: readonly T[],
  name: unknown,
): T | undefined => pieces.find((piece) => piece.name === name);

/** @param createCore one that the plan is tried out in */
export function newPlan(createCore: (options: CoreOptions) => Core, choice: PlanChoice): string {
  const core = createCore({ rootOf: () => ROOT });
  const base = ownKit(choice.body, choice.lens, choice.subject, choice.light ?? null);
  core.give(FILE, base);
  const shot = core.newShot(FILE, choice.subject.fieldMm);
  if (shot === null) throw new Error('a new plan has no subject or no rig');
  // Where nothing says how close the rig comes, the subject decides the field, if the rig can.
  const framed = /^(?:field|magnification|ring):/m.test(shot)
    ? shot
    : shot.replace(/^rig: .*$/m, `$&\nfield: ${choice.subject.fieldMm} mm`);
  const give = (lines: string): void =>
    core.give(
      FILE,
      base.replace(/^preflight:/m, `shots:\n  ${SHOT}:\n${indented(lines, 4)}\n\npreflight:`),
    );
  give(framed);
  if (core.findings(FILE).some(({ severity }) => severity === 'error')) give(shot);
  mend(core);
  return core.text(FILE) ?? base;
}

const indented = (text: string, columns: number): string =>
  text.replace(/^(?=.)/gm, ' '.repeat(columns));

/** More fixes than this would be going round in a circle. */
const MOST_FIXES = 8;

/** What can be mended without a price: the checks that are missing, first of all. */
function mend(core: Core): void {
  for (let count = 0; count < MOST_FIXES; count++) {
    const fix = core
      .findings(FILE)
      .filter(({ severity }) => severity !== 'hint')
      .flatMap((finding) => core.fixesOf(finding))
      .find(({ sideEffects }) => sideEffects === undefined);
    if (!fix) return;
    edit(core, fix.edits);
  }
}

/** From the end on, so that no edit moves the next. */
function edit(core: Core, edits: ReturnType<Core['fixesOf']>[number]['edits']): void {
  const fromEnd = [...edits].sort(
    (a, b) =>
      b.range.start.line - a.range.start.line || b.range.start.character - a.range.start.character,
  );
  for (const { file, range, text } of fromEnd) core.edit(file, range, text);
}
