/** From shots with their figures and findings to the sheet: a function of them and nothing else. */

import type { Drawing } from '../../api/drawing.ts';
import type { Check, Order, SheetFinding, ShotSheet } from '../../api/sheet.ts';
import { upFor } from '../../day/beside.ts';
import { NOTHING_UP, type SetUp } from '../../day/set-up.ts';
import type { DayJson } from '../../figures/day-json.ts';
import { setUpOf } from '../../figures/day-set-up.ts';
import { valueIn } from '../../figures/figure.ts';
import { takesOf as plannedTakes, takeLengthOf } from '../../figures/take-length.ts';
import { isKnown } from '../../plan/field.ts';
import type { Preflight } from '../../plan/generated/types.ts';
import { kindOf } from '../../quantity/index.ts';
import { KNOWN_CHECKS } from '../../rules/checks-called-for.ts';
import { ownChecks, type Readiness } from '../../rules/readiness.ts';
import { inLanguage } from '../../words/message.ts';
import { hourWords } from '../day-words.ts';
import { commentsOf, REVIEW_RULE } from '../review.ts';
import { apertureDrawing } from './drawings/aperture.ts';
import { coloursDrawing } from './drawings/colours.ts';
import { depthDrawing } from './drawings/depth.ts';
import { frameDrawing } from './drawings/frame.ts';
import { lifeDrawing, tiltDrawing } from './drawings/gauges.ts';
import { lightDrawing } from './drawings/light.ts';
import { railDrawing } from './drawings/rail.ts';
import { retardationDrawing } from './drawings/retardation.ts';
import { rigDrawing } from './drawings/rig.ts';
import { otherViewDrawing, setUpDrawing } from './drawings/set-up.ts';
import { tiltDistanceDrawing } from './drawings/tilt-distance.ts';
import { focusMarks } from './focus-marks.ts';
import { limitsOf } from './limits.ts';
import { changesBetween, rebuilds } from './order.ts';
import { exposureAsked, lifetimeAsked, plannedSettings } from './planned.ts';
import { inOrder, type Planned, type Run } from './running.ts';
import { endsOf, type SaidShot } from './said.ts';
import { benchOf, settingsOf } from './settings.ts';
import { lackWords } from './words.ts';

/** The margins first, which are short and fill a page's end; then from the whole to the detail. */
const DRAWINGS: readonly ((shot: SaidShot) => Drawing | null)[] = [
  tiltDrawing,
  lifeDrawing,
  coloursDrawing,
  retardationDrawing,
  depthDrawing,
  railDrawing,
  setUpDrawing,
  otherViewDrawing,
  frameDrawing,
  rigDrawing,
  lightDrawing,
  apertureDrawing,
  tiltDistanceDrawing,
];

/** Hints are for who types; the sheet is for who shoots. */
const onSheet = ({ severity }: SheetFinding): boolean => severity !== 'hint';

/** A shot whose text can't be read. */
const UNREAD = {
  about: null,
  state: 'unread',
  lacks: [],
  ...{ settings: [], bench: [], checks: [], takes: 0, limits: [], focus: null, drawings: [] },
  ...{ takeS: null, lifeS: null, planned: {}, exposureAsked: null, lifetimeAsked: null },
  review: [],
} as const;

/** What is said of a shot that its figures don't hold. */
export interface Beside {
  readonly findings: readonly SheetFinding[];
  readonly readiness: Readiness;
  readonly clips: readonly string[];
}

export function shotSheet(
  name: string,
  shot: SaidShot | null,
  { findings, readiness, clips }: Beside,
): ShotSheet {
  const said = findings.filter(onSheet);
  if (!shot) return { ...UNREAD, name, clips, findings: said };
  const { about } = shot.bench.fields;
  return {
    name,
    about: isKnown(about) ? about.value : null,
    state: readiness.state,
    lacks: lackWords(readiness),
    settings: settingsOf(shot),
    planned: plannedSettings(shot),
    exposureAsked: exposureAsked(shot),
    lifetimeAsked: lifetimeAsked(shot),
    bench: benchOf(shot),
    checks: checksOf(shot),
    takes: clips.length > 0 ? 0 : takesOf(shot),
    takeS: takeSecondsOf(shot),
    lifeS: lifeOf(shot),
    limits: limitsOf(shot),
    focus: focusMarks(shot),
    clips,
    review: commentsOf(shot.bench.fields.review),
    // Listed as comments, with those that have their answer.
    findings: said.filter(({ rule }) => rule !== REVIEW_RULE),
    drawings: DRAWINGS.flatMap((draw) => draw(shot) ?? []),
  };
}

const asked = new Map(KNOWN_CHECKS.map(({ name, what }) => [name, what]));

/** A check that Lamella doesn't know is asked by its own name. */
const askedBy = (name: string): string => {
  const known = asked.get(name);
  if (known !== undefined) return inLanguage(known);
  const words = name.replaceAll('-', ' ');
  return words.charAt(0).toUpperCase() + words.slice(1);
};

export type States = Preflight['once'];

function checkOf(name: string, states: States | undefined, done: boolean): Check {
  const state = states && isKnown(states) ? states.value.get(name) : undefined;
  const record = state && isKnown(state) && state.value !== 'open' ? state.value : null;
  const parts = record
    ? [
        isKnown(record.done) ? kindOf('date').print(record.done.value) : '',
        isKnown(record.by) ? record.by.value : '',
      ].filter((part) => part !== '')
    : [];
  return { name, what: askedBy(name), done, by: parts.length > 0 ? parts.join(', ') : null };
}

/** The shot's own checks and those of every shot; what is done once stands at the head. */
const checksOf = ({ bench }: SaidShot): readonly Check[] =>
  ownChecks(bench).map(([name, state]) => checkOf(name, bench.fields.preflight, state === 'done'));

export function onceChecks(states: States | undefined): readonly Check[] {
  if (!states || !isKnown(states)) return [];
  return [...states.value].flatMap(([name, state]) =>
    isKnown(state) ? [checkOf(name, states, state.value !== 'open')] : [],
  );
}

/**
 * Time-lapses first; the rest in the order that rebuilds least, with what changes before each shot
 * and how long it takes. A day has an order of its own, which keeps hours and priorities too.
 */
export function orderOf(all: readonly SaidShot[], day: DayJson | null): Order {
  const shots = all.filter(({ bench }) => !day?.notToday?.includes(bench.shot));
  const setUps = shots.map(({ bench }) => setUpOf(bench));
  const times = new Map(shots.map((shot) => [shot.bench.shot, secondsOf(shot)]));
  const { runs, planned } = day ? inDay(setUps, day) : inOrder(setUps);
  const begins = new Map(
    day?.shots.map((step) => [step.shot, hourWords(step.begins, step.beginsS)]),
  );
  const known = [...times.values()].filter((seconds) => seconds !== null);
  const lasts = ({ shot }: SetUp): number => times.get(shot) ?? 0;
  // What is shot beside a time-lapse takes no time of its own, as far as that runs.
  const saved = runs.map(({ lapse, beside }) =>
    Math.min(lasts(lapse), sum(beside.map((one) => lasts(one)))),
  );
  return {
    steps: planned.map(({ setUp, changes }) => ({
      shot: setUp.shot,
      changes,
      seconds: times.get(setUp.shot) ?? null,
      begins: begins.get(setUp.shot) ?? null,
    })),
    running: runs.map(({ lapse, beside }) => ({
      shot: lapse.shot,
      beside: beside.map(({ shot }) => shot),
    })),
    seconds: sum(known) - sum(saved),
    untimed: times.size - known.length,
    changes: rebuilds(planned.map(({ setUp }) => setUp)),
    changesAsWritten: rebuilds(setUps),
  };
}

const sum = (values: readonly number[]): number => values.reduce((all, one) => all + one, 0);

/** The day's order; shots that it can't place come last. */
function inDay(
  setUps: readonly SetUp[],
  { shots }: DayJson,
): { readonly runs: readonly Run[]; readonly planned: readonly Planned[] } {
  const places = new Map(shots.map(({ shot }, index) => [shot, index]));
  const place = ({ shot }: SetUp): number => places.get(shot) ?? shots.length;
  const sorted = [...setUps].sort((a, b) => place(a) - place(b));
  const runsBeside = ({ shot }: SetUp, lapse: SetUp): boolean =>
    shots[places.get(shot) ?? -1]?.beside.includes(lapse.shot) ?? false;
  return {
    runs: sorted
      .map((lapse) => ({ lapse, beside: sorted.filter((one) => runsBeside(one, lapse)) }))
      .filter(({ beside }) => beside.length > 0),
    planned: sorted.map((setUp, index, all) => ({
      setUp,
      changes: changesBetween(upFor(all[index - 1] ?? NOTHING_UP, setUp), setUp),
    })),
  };
}

/** One where the plan doesn't say how many. */
const takesOf = ({ bench }: SaidShot): number => valueIn(plannedTakes(bench)) ?? 1;

function takeSecondsOf({ bench }: SaidShot): number | null {
  const { take } = bench.fields;
  return isKnown(take) && isKnown(take.value.duration) ? take.value.duration.value : null;
}

/** By the shortest life that is likely, as the list of what to watch for has it. */
function lifeOf(shot: SaidShot): ShotSheet['lifeS'] {
  const { lifeS } = shot.figures;
  if (lifeS.known) return endsOf(shot, (of) => of.lifeS)?.low ?? lifeS.value;
  return lifeS.applies === false ? null : 'unknown';
}

function secondsOf({ bench, figures }: SaidShot): number | null {
  if (bench.stack) return valueIn(figures.stackTimeS) ?? null;
  const { take } = bench.fields;
  const [length, count] = [valueIn(takeLengthOf(bench)), valueIn(plannedTakes(bench))];
  if (length === undefined) return null;
  const settle = isKnown(take) && isKnown(take.value.settle) ? take.value.settle.value : 0;
  return (length + settle) * (count ?? 1);
}
