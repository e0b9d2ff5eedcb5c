/**
 * Findings in texts and the fixes for them: the part of the core that a check needs, and the base
 * of the rest. It is separate, so that a command that only checks loads nothing else.
 */

import type { Checker, CoreOptions, OfferedFix } from '../api/facade.ts';
import type { LocatedFinding, LocatedFix } from '../api/located.ts';
import type { FileId } from '../plan/place.ts';
import type { Finding } from '../rules/rule.ts';
import { unusedName } from '../rules/unused-name.ts';
import { Say } from '../say/say.ts';
import { Analysis } from './analysis.ts';
import type { CheckContext } from './context.ts';
import { FixMaker } from './fixes.ts';
import { Locator } from './locate.ts';
import { FindingLocator, standingIn, withoutDoubles } from './located-findings.ts';
import { planState } from './plan-state.ts';
import { ShownFindings } from './shown-findings.ts';
import { Store } from './store.ts';
import { Trials } from './trials.ts';

interface Checking {
  readonly context: CheckContext;
  readonly checker: Checker;
  /** A finding of a report on clips, with its sentence uncut. */
  report(finding: Finding): LocatedFinding;
  /** The finding that a located finding was made from. */
  originOf(located: LocatedFinding): Finding | undefined;
}

export const createChecker = (options: CoreOptions): Checker => startChecking(options).checker;

export function startChecking(options: CoreOptions): Checking {
  const store = new Store();
  const analysis = new Analysis(store, options);
  const locator = new Locator(store, analysis.entries);
  const say = new Say(() => options.lengths ?? 'mm');
  const hostFiles = () => options.planFiles?.() ?? [];
  const trials = new Trials(store.graph);
  const context: CheckContext = { store, analysis, locator, say, trials, hostFiles };
  const fixes = new FixMaker(context);
  const places = new FindingLocator(locator, say);
  const shown = new ShownFindings(store, places, say);
  const reported = new FindingLocator(locator, say, { whole: true });
  const originOf = (located: LocatedFinding) => places.originOf(located);

  /** The file's own findings, and those that plans using it cause there. */
  const rawFindings = (file: FileId): readonly Finding[] => {
    const own = analysis.findings(file);
    const causedFrom = store
      .files()
      .filter((other) => other !== file && analysis.names.reaches(other).includes(file));
    if (causedFrom.length === 0) return own;
    // Entries of a shared file are for all its users, so none of them counts as unused.
    const shared = standingIn(file, own).filter(({ rule }) => rule !== unusedName.name);
    const caused = causedFrom.flatMap((other) => standingIn(file, analysis.findings(other)));
    return withoutDoubles([...shared, ...caused]);
  };

  const findings = (file: FileId): readonly LocatedFinding[] => shown.of(file, rawFindings(file));

  const fixesOf = (located: LocatedFinding): readonly LocatedFix[] => {
    const finding = originOf(located);
    return finding ? fixes.of(finding) : [];
  };

  const areFree = (offered: readonly OfferedFix[]): boolean =>
    fixes.areFree(
      offered.flatMap((fix) => {
        const finding = originOf(fix.finding);
        return finding ? [{ finding, fix }] : [];
      }),
    );

  const checker: Checker = {
    give: (file, text) => store.give(file, text),
    refuse: (file, why) => store.refuse(file, why),
    wanted: (file) =>
      analysis.names.reaches(file).filter((one) => store.state(one).state === 'unknown'),
    findings,
    fixesOf,
    effort: () => trials.effort,
    areFree,
    state: (file) => planState(analysis, file),
    line: (file, index) => lineOf(store, file, index),
  };
  return { context, checker, report: (finding) => reported.locate(finding), originOf };
}

function lineOf(store: Store, file: FileId, index: number): string {
  const text = store.text(file);
  if (!text || index < 0 || index >= text.lineCount) return '';
  const { index: at, offset } = text.locate({ line: index, character: 0 });
  const end = text.locate({ line: index, character: Number.MAX_SAFE_INTEGER });
  return text.chunks[at]!.text.slice(offset, end.offset);
}
