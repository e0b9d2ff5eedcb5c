/** The core as hosts see it: texts in, findings, figures and what the editor shows out. */

import type { Core, CoreOptions, OfferedFix } from '../api/facade.ts';
import type { LocatedFinding, Range } from '../api/located.ts';
import { coloursIn } from '../assist/colours.ts';
import { completionsAt } from '../assist/completion/complete.ts';
import { explain } from '../assist/completion/explain.ts';
import { newShot } from '../assist/completion/new-shot.ts';
import { dropClips } from '../assist/drop-clips.ts';
import { formatFile, formatNewLine } from '../assist/format.ts';
import { drawnFrame, startFrame } from '../assist/frame.ts';
import { hintsIn } from '../assist/hints.ts';
import { hoverAt } from '../assist/hover.ts';
import { lensesIn, lensWords } from '../assist/lenses.ts';
import { knownLabel, knownWords, measureAdvice } from '../assist/measure.ts';
import { nameTokens } from '../assist/name-tokens.ts';
import { linksIn } from '../assist/navigation/links.ts';
import { movedPaths } from '../assist/navigation/moved.ts';
import { definitionOf, referencesOf } from '../assist/navigation/references.ts';
import { renamable, rename } from '../assist/navigation/rename.ts';
import { selectionAt } from '../assist/navigation/selection.ts';
import { findEntries } from '../assist/navigation/workspace-symbols.ts';
import { placeInShot, placeOfCut, shotAt, shownAt } from '../assist/sheet.ts';
import { setInShot, tickCheck } from '../assist/sheet-edits.ts';
import { solveShot, startSolving } from '../assist/solve.ts';
import { symbolsOf } from '../assist/symbols.ts';
import { timelineOf } from '../assist/timeline.ts';
import { figuresJson } from '../figures/contract.ts';
import { dayJson } from '../figures/day-contract.ts';
import { editJson } from '../figures/edit-contract.ts';
import { recordingJson } from '../figures/recording-json.ts';
import { nameOf } from '../plan/entry-id.ts';
import type { FileId } from '../plan/place.ts';
import { startChecking } from '../workspace/checker.ts';
import { clipFindings, clipsIn, cutCoverage, testClipFindings } from '../workspace/clips.ts';
import type { Context } from '../workspace/context.ts';
import { FormerValues } from '../workspace/former-values.ts';
import { byPosition } from '../workspace/located-findings.ts';
import { lookAskFor } from '../workspace/looked.ts';
import { EFFORT_OF_MENU, fixesWithin } from '../workspace/most-tried.ts';
import { wholePlan } from './whole-plan.ts';

export function createCore(options: CoreOptions): Core {
  const { context: checking, checker, report, originOf } = startChecking(options);
  const { store, analysis } = checking;
  const { findings } = checker;
  const former = new FormerValues(
    store,
    (file, chunk) => analysis.entries.parsed(file, chunk).tree,
  );
  const context: Context = { ...checking, former };

  /** Of every file that `file` uses, itself first. */
  const allFindings = (file: FileId): readonly LocatedFinding[] =>
    analysis.names.reaches(file).flatMap(findings);

  return {
    ...checker,
    ...wholePlan(context, allFindings, originOf),
    give: (file, text) => {
      former.forget(file);
      checker.give(file, text);
    },
    edit: (file, range, newText) =>
      former.edit(file, range, newText, () => store.edit(file, range, newText)),
    refuse: (file, why) => {
      former.forget(file);
      checker.refuse(file, why);
    },
    close: (file) => {
      former.forget(file);
      store.close(file);
    },
    rootsChanged: () => analysis.names.rootsChanged(),
    reaches: (file) => analysis.names.reaches(file),
    fixesIn: (file, range) => {
      const touched = findings(file).filter((finding) => touches(finding.range, range));
      return fixesWithin(checker, touched, EFFORT_OF_MENU).flatMap((fixes, index) =>
        fixes.map((fix): OfferedFix => ({ ...fix, finding: touched[index]! })),
      );
    },
    hover: (file, position) => hoverAt(context, file, position),
    completions: (file, position) => completionsAt(context, file, position),
    explain: (file, about) => explain(context, file, about),
    solve: (file, shot) => solveShot(context, file, shot),
    startSolving: (file, shot) => startSolving(context, file, shot),
    measure: (file, lens) => measureAdvice(context, file, lens),
    measuredWords: (known) => [knownLabel(known), knownWords(known, context.say)],
    newShot: (file, fieldMm) => newShot(context, file, fieldMm),
    hints: (file, range) => hintsIn(context, file, range),
    lenses: (file) => lensesIn(context, file),
    lensWords: (file, shot, without) => lensWords(context, file, shot, without),
    colours: (file) => coloursIn(context, file),
    definition: (file, position) => definitionOf(context, file, position),
    references: (file, position) => referencesOf(context, file, position),
    renamable: (file, position) => renamable(context, file, position),
    rename: (file, position, newName) => rename(context, file, position, newName),
    links: (file) => linksIn(context, file, options.rootOf(file)),
    moved: (file, to) => movedPaths(context, file, to),
    dropClips: (file, position, clips) =>
      dropClips(context, file, position, clips, [
        options.rootOf(file),
        ...(options.otherRoots?.(file) ?? []),
      ]),
    names: (file, lines) => nameTokens(context, file, lines),
    format: (file, options, lines) => formatFile(context, file, options, lines),
    formatNewLine: (file, position) =>
      formatNewLine(file, position, (index) => checker.line(file, index)),
    selection: (file, position) => selectionAt(context, file, position),
    findEntries: (query) => findEntries(context, query),
    symbols: (file) => symbolsOf(context, file),
    figures: (file) =>
      new Map(
        analysis.shots(file).flatMap((id) => {
          const figures = analysis.figures(file, id);
          const uncertain = analysis.uncertain(file, id);
          return figures ? [[nameOf('shots', id), figuresJson(figures, uncertain)] as const] : [];
        }),
      ),
    recording: (file) => recordingJson(analysis.recording(file)),
    clips: (file) => clipsIn(analysis, file),
    checkClips: (file, readings) =>
      clipFindings(analysis, file, readings).map(report).sort(byPosition),
    lookAsk: (file, shot) => lookAskFor(analysis, file, shot) ?? null,
    cutCoverage: (file, readings) => cutCoverage(analysis, file, readings),
    testClip: (file, shot, path, reading) =>
      testClipFindings(analysis, file, { shot, path }, reading)?.map(report) ?? null,
    editFigures: (file) => editJson(analysis.edit(file)),
    dayFigures: (file) => dayJson(analysis.day(file)),
    timeline: (file, format, options) => timelineOf(context, file, format, options),
    frame: (file, shot, width) => drawnFrame(context, file, shot, width),
    startFrame: (file, shot, width) => startFrame(context, file, shot, width),
    placeInShot: (file, shot, key) => placeInShot(context, file, shot, key),
    setInShot: (file, shot, key, text) => setInShot(context, file, shot, key, text),
    tickCheck: (file, tick) => tickCheck(context, file, tick),
    placeOfCut: (file, cut) => placeOfCut(context, file, cut),
    shotAt: (file, position) => shotAt(context, file, position),
    shownAt: (file, position) => shownAt(context, file, position),
    prepare: (file, until) => analysis.prepare(file, until),
    text: (file) => store.text(file)?.text(),
  };
}

const before = (a: Range['start'], b: Range['start']): boolean =>
  a.line < b.line || (a.line === b.line && a.character < b.character);

const touches = (a: Range, b: Range): boolean => !before(a.end, b.start) && !before(b.end, a.start);
