/** The core as hosts see it: texts in, findings, figures and what the editor shows out. */
import { coloursIn } from '../assist/colours.ts';
import { comparedPlan } from '../assist/compare.ts';
import { completionsAt } from '../assist/completion/complete.ts';
import { explain } from '../assist/completion/explain.ts';
import { newShot } from '../assist/completion/new-shot.ts';
import { hintsIn } from '../assist/hints.ts';
import { hoverAt } from '../assist/hover.ts';
import { lensesIn, lensWords } from '../assist/lenses.ts';
import type { LocatedFinding, LocatedFix, Range } from '../assist/located.ts';
import { definitionOf, referencesOf } from '../assist/navigation/references.ts';
import { renamable, rename } from '../assist/navigation/rename.ts';
import { selectionAt } from '../assist/navigation/selection.ts';
import { findEntries } from '../assist/navigation/workspace-symbols.ts';
import { settleShot } from '../assist/settle.ts';
import { placeInShot, placeOfCut, sheetOf, shotAt } from '../assist/sheet.ts';
import { symbolsOf } from '../assist/symbols.ts';
import { timelineOf } from '../assist/timeline.ts';
import { figuresJson } from '../figures/contract.ts';
import { editJson } from '../figures/edit-json.ts';
import { recordingJson } from '../figures/recording-json.ts';
import type { FileId } from '../plan/place.ts';
import type { Finding } from '../rules/rule.ts';
import { Say } from '../rules/say.ts';
import { unusedName } from '../rules/unused-name.ts';
import { Analysis } from './analysis.ts';
import { clipFindings, clipsIn, cutCoverage, testClipFindings } from './clips.ts';
import type { Core, CoreOptions, OfferedFix } from './facade.ts';
import { FixMaker } from './fixes.ts';
import { FormerValues } from './former-values.ts';
import { Locator } from './locate.ts';
import { byPosition, FindingLocator, standingIn, withoutDoubles } from './located-findings.ts';
import { Store } from './store.ts';

export function createCore(options: CoreOptions): Core {
  const store = new Store();
  const analysis = new Analysis(store, options.rootOf);
  const locator = new Locator(store, analysis.entries);
  const say = new Say(() => options.lengths ?? 'mm');
  const hostFiles = () => options.planFiles?.() ?? [];
  const former = new FormerValues(
    store,
    (file, chunk) => analysis.entries.parsed(file, chunk).tree,
  );
  const context = { store, analysis, locator, say, former, hostFiles };
  const fixes = new FixMaker(context);
  const places = new FindingLocator(locator, say);
  const locate = (finding: Finding): LocatedFinding => places.locate(finding);

  /** The file's own findings, and what other plans that use it cause there. */
  const rawFindings = (file: FileId): readonly Finding[] => {
    const own = standingIn(file, analysis.findings(file));
    const causedFrom = store
      .files()
      .filter((other) => other !== file && analysis.names.reaches(other).includes(file));
    if (causedFrom.length === 0) return own;
    // What a shared file holds is for all its users: nothing in it is left over.
    const shared = own.filter(({ rule }) => rule !== unusedName.name);
    const caused = causedFrom.flatMap((other) => standingIn(file, analysis.findings(other)));
    return withoutDoubles([...shared, ...caused]);
  };

  const findings = (file: FileId): readonly LocatedFinding[] =>
    rawFindings(file).map(locate).sort(byPosition);

  /** Of every file that `file` uses, itself first. */
  const allFindings = (file: FileId): readonly LocatedFinding[] =>
    analysis.names.reaches(file).flatMap(findings);

  const fixesOf = (located: LocatedFinding): readonly LocatedFix[] => {
    const finding = places.originOf(located);
    return finding ? fixes.of(finding) : [];
  };

  return {
    give: (file, text) => {
      former.forget(file);
      store.give(file, text);
    },
    edit: (file, range, newText) =>
      former.edit(file, range, newText, () => store.edit(file, range, newText)),
    refuse: (file, why) => {
      former.forget(file);
      store.refuse(file, why);
    },
    close: (file) => {
      former.forget(file);
      store.close(file);
    },
    rootsChanged: () => analysis.names.rootsChanged(),
    wanted: (file) =>
      analysis.names.reaches(file).filter((one) => store.state(one).state === 'unknown'),
    reaches: (file) => analysis.names.reaches(file),
    findings,
    fixesOf,
    fixesIn: (file, range) =>
      findings(file)
        .filter((finding) => touches(finding.range, range))
        .flatMap((finding) => fixesOf(finding).map((fix): OfferedFix => ({ ...fix, finding }))),
    hover: (file, position) => hoverAt(context, file, position),
    completions: (file, position) => completionsAt(context, file, position),
    explain: (file, about) => explain(context, file, about),
    settle: (file, shot) => settleShot(context, file, shot),
    newShot: (file, fieldMm) => newShot(context, file, fieldMm),
    hints: (file, range) => hintsIn(context, file, range),
    lenses: (file) => lensesIn(context, file),
    lensWords: (file, shot) => lensWords(context, file, shot),
    colours: (file) => coloursIn(context, file),
    definition: (file, position) => definitionOf(context, file, position),
    references: (file, position) => referencesOf(context, file, position),
    renamable: (file, position) => renamable(context, file, position),
    rename: (file, position, newName) => rename(context, file, position, newName),
    selection: (file, position) => selectionAt(context, file, position),
    findEntries: (query) => findEntries(context, query),
    symbols: (file) => symbolsOf(context, file),
    figures: (file) =>
      new Map(
        analysis.shots(file).flatMap((id) => {
          const figures = analysis.figures(file, id);
          return figures ? [[id.slice('shots/'.length), figuresJson(figures)] as const] : [];
        }),
      ),
    recording: (file) => recordingJson(analysis.recording(file)),
    clips: (file) => clipsIn(analysis, file),
    verify: (file, readings) => clipFindings(analysis, file, readings).map(locate).sort(byPosition),
    cutCoverage: (file, readings) => cutCoverage(analysis, file, readings),
    testClip: (file, shot, path, reading) =>
      testClipFindings(analysis, file, { shot, path }, reading)?.map(locate) ?? null,
    editFigures: (file) => editJson(analysis.edit(file)),
    timeline: (file, format) => timelineOf(context, file, format),
    compared: (file) => comparedPlan(context, file, allFindings(file)),
    sheet: (file) => sheetOf(context, file, allFindings(file)),
    placeInShot: (file, shot, key) => placeInShot(context, file, shot, key),
    placeOfCut: (file, cut) => placeOfCut(context, file, cut),
    shotAt: (file, position) => shotAt(context, file, position),
    state: (file) => analysis.state(file),
    prepare: (file, until) => analysis.prepare(file, until),
    text: (file) => store.text(file)?.text(),
    line: (file, index) => lineOf(store, file, index),
  };
}

const before = (a: Range['start'], b: Range['start']): boolean =>
  a.line < b.line || (a.line === b.line && a.character < b.character);

const touches = (a: Range, b: Range): boolean => !before(a.end, b.start) && !before(b.end, a.start);

function lineOf(store: Store, file: FileId, index: number): string {
  const text = store.text(file);
  if (!text || index < 0 || index >= text.lineCount) return '';
  const { index: at, offset } = text.locate({ line: index, character: 0 });
  const rest = text.chunks[at]!.text.slice(offset);
  return rest.split(/\r\n|\r|\n/, 1)[0] ?? '';
}
