/** What some of the changes that solve a shot would do alone, for a preview where each is ticked. */
import type { TextEdit } from 'vscode-languageserver';
import { paragraph } from '../../shared/api/document.ts';
import type { Checker, Core } from '../../shared/api/facade.ts';
import type { LocatedFinding } from '../../shared/api/located.ts';
import type { FigureName } from '../../shared/figures/catalogue/catalogue.ts';
import type { FileId } from '../../shared/plan/place.ts';
import { shotFigureChanges } from '../../shared/report/compare/figures.ts';
import { followsWords } from '../../shared/report/compare/words.ts';
import { plainLines } from '../../shared/report/document/terminal.ts';
import { Say } from '../../shared/say/say.ts';
import type { Session } from '../session.ts';

export interface SolvePartlyParams {
  readonly textDocument: { readonly uri: string };
  readonly shot: string;
  /** Version of the plan that `edits` were made for. */
  readonly version: number;
  /** Edits of the ticked changes; they may not overlap. */
  readonly edits: readonly TextEdit[];
}

/** Answer to `lamella/solvePartly`; null: the plan has another version by now. */
export interface SolvedPartly {
  /** The plan's whole text with the edits. */
  readonly text: string;
  /** Errors and warnings of the shot that remain, and those that the edits bring elsewhere. */
  readonly left: readonly { readonly rule: string; readonly what: string }[];
  /** Results that differ, the light first: "depth of field: 2.1 mm → 4.2 mm". */
  readonly follows: readonly string[];
}

export function solvePartly(
  { core, documents, createCore, roots, settings }: Session,
  file: FileId,
  { shot, version, edits }: SolvePartlyParams,
): SolvedPartly | null {
  if (documents.version(file) !== version) return null;
  const trial = createCore({
    rootOf: (each) => roots.of(each),
    otherRoots: (each) => roots.beside(each),
    get lengths() {
      return settings.lengths;
    },
  });
  for (const each of core.reaches(file)) {
    const text = core.text(each);
    if (text === undefined) trial.refuse(each, 'unreadable');
    else trial.give(each, text);
  }
  for (const { range, newText } of lastFirst(edits)) trial.edit(file, range, newText);
  return {
    text: trial.text(file) ?? '',
    left: leftIn(core, trial, file, shot).map(({ rule, what }) => ({ rule, what })),
    follows: followsIn(core, trial, file, shot, new Say(() => settings.lengths)),
  };
}

/** So that none moves another; of those at one place, what comes later in the list stands later. */
const lastFirst = (edits: readonly TextEdit[]): readonly TextEdit[] =>
  edits
    .map((edit, index) => ({ edit, index, at: edit.range.start }))
    .sort((a, b) => b.at.line - a.at.line || b.at.character - a.at.character || b.index - a.index)
    .map(({ edit }) => edit);

function leftIn(core: Checker, trial: Checker, file: FileId, shot: string): LocatedFinding[] {
  const isTrouble = ({ severity }: LocatedFinding): boolean =>
    severity === 'error' || severity === 'warning';
  const known = ({ rule, shot: of = '', what }: LocatedFinding): string =>
    JSON.stringify([rule, of, what]);
  const before = new Set(core.findings(file).map(known));
  return trial
    .findings(file)
    .filter((one) => isTrouble(one) && (one.shot === shot || !before.has(known(one))));
}

/** What the changes of a shot's settings cost in light, depth, time and detail, in the order told. */
const COSTS: readonly FigureName[] = [
  'exposureErrorStops',
  'usableDepthMm',
  'stackTimeS',
  'smearPx',
  'flickerResidual',
  'contrast',
];

function followsIn(
  core: Core,
  trial: Core,
  file: FileId,
  shot: string,
  say: Say,
): readonly string[] {
  const [was, is] = [core, trial].map((one) => one.compared(file).shots.get(shot));
  if (!was || !is) return [];
  const changes = shotFigureChanges(was, is);
  const told = COSTS.flatMap((name) =>
    // Without bounds: it is one line in a list.
    changes.filter(({ figure }) => figure === name).map(({ bounds: _, ...change }) => change),
  );
  return plainLines(
    told
      .flatMap((change) => followsWords([change], say))
      .map(({ label, before, after }) => paragraph([label, ': ', before, ' \u2192 ', after])),
  );
}
