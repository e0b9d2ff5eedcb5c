/**
 * Fixes of a finding. A rule proposes them, and each is tried before it is offered: it removes its
 * finding and adds no error. Its side effects, what else it adds or worsens, are named.
 */

import type { LocatedFix } from '../api/located.ts';
import type { Bench } from '../figures/bench.ts';
import { figuresOf } from '../figures/compute.ts';
import { readBench } from '../figures/read-bench.ts';
import type { UncertainShot } from '../figures/uncertain.ts';
import { idOf } from '../plan/entry-id.ts';
import type { FileId } from '../plan/place.ts';
import type { PlanFix } from '../plan/problem.ts';
import type { Ref } from '../plan/ref.ts';
import { worstOf } from '../rules/certainty.ts';
import { fieldOutOfReach } from '../rules/field-out-of-reach.ts';
import { PLAN_RULES, SHOT_RULES } from '../rules/registry.ts';
import type { Finding } from '../rules/rule.ts';
import { placeKey, type ShotRule, type ShotView } from '../rules/shot-rule.ts';
import { fixTitle } from '../rules/text/fix-words.ts';
import type { TextFix } from '../text/problem.ts';
import { asAside } from '../words/aside.ts';
import { message } from '../words/message.ts';
import type { CheckContext } from './context.ts';
import { locatedEdits } from './located-edits.ts';
import { FindingLocator } from './located-findings.ts';
import { identityOf, type Outcome, tryOut } from './trial.ts';

/** Number of side effects named in a title; if there are more, the title says how many. */
const MOST_NAMED = 2;

/** What a rule proposes: for the middle of what is known, and where it finds most. */
interface RuleFixes {
  readonly plain: readonly PlanFix[];
  readonly worst: readonly PlanFix[];
}

function worstFixes(
  rule: ShotRule<unknown>,
  finding: Finding,
  uncertain: UncertainShot,
): readonly PlanFix[] {
  const worst = worstOf(rule, finding, uncertain);
  return worst ? (rule.fixes?.(worst.finding, worst.view) ?? []) : [];
}

/** Two fixes that write other values at the same places. */
const isLike = (a: PlanFix, b: PlanFix): boolean =>
  a.edits.length === b.edits.length &&
  a.edits.every((edit, index) => {
    const other = b.edits[index]!;
    if (edit.op === 'add-entry' || other.op === 'add-entry') return false;
    return edit.op === other.op && placeKey(edit.at) === placeKey(other.at);
  }) &&
  JSON.stringify(a.edits) !== JSON.stringify(b.edits);

export class FixMaker {
  readonly #context: CheckContext;
  readonly #places: FindingLocator;

  constructor(context: CheckContext) {
    this.#context = context;
    this.#places = new FindingLocator(context.locator, context.say);
  }

  of(finding: Finding): readonly LocatedFix[] {
    const titles = new Set<string>();
    return this.#offered(finding).flatMap((fix) => {
      if (!fix || titles.has(fix.title)) return [];
      titles.add(fix.title);
      return [fix];
    });
  }

  #offered(finding: Finding): readonly (LocatedFix | undefined)[] {
    if (finding.fixes)
      return finding.fixes.map((fix) =>
        this.#tried(finding, isTextFix(fix) ? this.#fromText(finding, fix) : this.#fromPlan(fix)),
      );
    const { plain, worst } = this.#ruleFixes(finding);
    return plain.map((fix) => {
      const surer = worst.find((other) => isLike(other, fix));
      return surer
        ? this.#surest(finding, fix, surer)
        : this.#tried(finding, this.#priced(finding, fix));
    });
  }

  /** The fix that holds in the worst case where it costs no more, else the one for the middle; which. */
  #surest(finding: Finding, fix: PlanFix, surer: PlanFix): LocatedFix | undefined {
    const middle = this.#tried(finding, this.#priced(finding, fix));
    const sure = this.#tried(finding, this.#priced(finding, surer));
    if (sure && (!middle || !sure.sideEffects || sure.sideEffects === middle.sideEffects))
      return { ...sure, title: message`${sure.title}, enough in the worst case` };
    return middle && { ...middle, title: message`${middle.title}, probably enough` };
  }

  #ruleFixes(finding: Finding): RuleFixes {
    const { analysis, store, trials } = this.#context;
    const identity = identityOf(finding);
    const shotRule = SHOT_RULES.find(({ name }) => name === finding.rule);
    const planRule = PLAN_RULES.find(({ name }) => name === finding.rule);
    for (const file of store.files()) {
      if (planRule?.fixes && this.#identities(file).has(identity)) {
        const view = trials.kept(`view ${file}`, () => analysis.planView(file));
        return { plain: planRule.fixes(finding, view), worst: [] };
      }
      if (!shotRule?.fixes || finding.shot === undefined) continue;
      const shot = idOf('shots', finding.shot);
      if (!analysis.shotFindings(file, shot).some((one) => identityOf(one) === identity)) continue;
      const bench = analysis.bench(file, shot);
      const figures = analysis.figures(file, shot);
      if (!bench || !figures) continue;
      const withRig = (rig: string) => this.#withRig(bench, rig);
      const uncertain = analysis.uncertain(file, shot);
      return {
        plain: shotRule.fixes(finding, { bench, figures, withRig }),
        worst: uncertain ? worstFixes(shotRule, finding, uncertain) : [],
      };
    }
    return { plain: [], worst: [] };
  }

  /** Of all findings of a plan: what stays as long as only trials change the plan. */
  #identities(file: FileId): ReadonlySet<string> {
    const { analysis, trials } = this.#context;
    return trials.kept(
      `found ${file}`,
      () => new Set(analysis.findings(file).map((one) => identityOf(one))),
    );
  }

  #withRig({ file, shot, at, fields }: Bench, rig: string): ShotView {
    const known = { state: 'known', value: rig as Ref, at: fields.rig.at } as const;
    const other = { ...fields, rig: known };
    const { entry } = at;
    const named = { name: shot, group: 'shots', file, entry, fields: other } as const;
    const bench = readBench(this.#context.analysis.reader(file), named);
    return { bench, figures: figuresOf(bench) };
  }

  #fromText(finding: Finding, fix: TextFix): LocatedFix {
    const { file, entry } = finding.at;
    const edits = fix.edits.map(({ span, text }) => ({
      file,
      range: this.#context.locator.rangeIn(file, { chunk: entry, span }),
      text,
    }));
    return { title: fixTitle(fix.title), edits };
  }

  #fromPlan(fix: PlanFix): LocatedFix {
    return { ...fix, edits: fix.edits.flatMap((edit) => locatedEdits(this.#context.store, edit)) };
  }

  /**
   * A rule's fix, with a word where a trial can't tell what it costs: blur, depth and exposure of a shot
   * without a magnification are unknown before and after, so nothing gets worse.
   */
  #priced(finding: Finding, fix: PlanFix): LocatedFix {
    const located = this.#fromPlan(fix);
    const isBlind =
      finding.rule !== fieldOutOfReach.name && setsPicture(fix) && this.#isUnframed(finding.shot);
    if (!isBlind) return located;
    const unknown = message`the shot has no magnification yet, so other effects are unknown`;
    return { ...located, sideEffects: [fix.sideEffects, unknown].filter(Boolean).join('; ') };
  }

  #isUnframed(shot: string | undefined): boolean {
    const { analysis, store } = this.#context;
    if (shot === undefined) return false;
    return [...store.files()].some(
      (file) => analysis.figures(file, idOf('shots', shot))?.magnification.known === false,
    );
  }

  /** Whether fixes without side effects have none together either: two settings may add up. */
  areFree(fixes: readonly { readonly finding: Finding; readonly fix: LocatedFix }[]): boolean {
    const edits = fixes.flatMap(({ fix }) => fix.edits);
    const mends = fixes.some(({ finding }) => isOfText(finding) && finding.severity === 'error');
    return addedBy(tryOut(this.#context, edits), mends).every(isHint);
  }

  /** The fix with all its side effects; undefined if the finding stays as grave as it was. */
  #tried(finding: Finding, fix: LocatedFix): LocatedFix | undefined {
    if (fix.edits.length === 0) return undefined;
    const identity = identityOf(finding);
    const isGone = ({ before, after }: Pick<Outcome, 'before' | 'after'>): boolean => {
      const left = after.get(identity) ?? [];
      const isFewer = left.length < (before.get(identity)?.length ?? 0);
      return isFewer || (finding.severity === 'error' && left.length > 0 && left.every(isSaid));
    };
    const outcome = tryOut(this.#context, fix.edits, isGone);
    if (!isGone(outcome)) return undefined;
    const added = addedBy(outcome, isOfText(finding));
    if (added.some(({ severity }) => severity === 'error')) return undefined;
    const consequences = added.filter((other) => !isHint(other));
    const sideEffects = [fix.sideEffects, this.#namedPrice(consequences)]
      .filter((part) => part)
      .join('; ');
    const { title, edits } = fix;
    return { title, ...(sideEffects && { sideEffects }), edits };
  }

  #namedPrice(added: readonly Finding[]): string {
    // Several shots may say the same: once is enough.
    const all = [...new Set(added.map((finding) => asAside(this.#places.locate(finding).what)))];
    const named = all.slice(0, MOST_NAMED);
    const more = all.length - named.length;
    return [...named, ...(more > 0 ? [message`and ${more} more`] : [])].join('; ');
  }
}

/** Settings that depth, blur, exposure or reflections follow from. */
const OF_PICTURE: ReadonlySet<string | number> = new Set([
  'aperture',
  'shutter',
  'iso',
  'tilt',
  'at',
  'dimmed',
]);

const setsPicture = ({ edits }: PlanFix): boolean =>
  edits.some((edit) => edit.op !== 'add-entry' && edit.at.path.some((key) => OF_PICTURE.has(key)));

/** What a mended text lets be seen again was there before: it is no price of mending it. */
const addedBy = (outcome: Outcome, ofText: boolean): readonly Finding[] =>
  outcome.worse.filter((finding) => !ofText || isOfText(finding));

/** What is meant is still told, but stops nobody. */
const isSaid = ({ severity }: Finding): boolean => severity === 'note' || severity === 'hint';

const isHint = ({ severity }: Finding): boolean => severity === 'hint';

const isOfText = (finding: Finding): boolean => finding.fixes !== undefined;

const isTextFix = (fix: TextFix | PlanFix): fix is TextFix => typeof fix.title !== 'string';
