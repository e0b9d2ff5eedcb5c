/** From shots with their figures and findings to the sheet: a function of them and nothing else. */

import type { Drawing } from '../../api/drawing.ts';
import type { Check, Order, SheetFinding, ShotSheet, ShotState } from '../../api/sheet.ts';
import { isKnown } from '../../plan/field.ts';
import type { Preflight } from '../../plan/generated/types.ts';
import { kindOf } from '../../quantity/index.ts';
import { KNOWN_CHECKS } from '../../rules/checks-called-for.ts';
import type { Severity } from '../../rules/rule.ts';
import { inLanguage } from '../../words/message.ts';
import { apertureDrawing } from './drawings/aperture.ts';
import { coloursDrawing } from './drawings/colours.ts';
import { depthDrawing } from './drawings/depth.ts';
import { frameDrawing } from './drawings/frame.ts';
import { lifeDrawing, tiltDrawing } from './drawings/gauges.ts';
import { lightDrawing } from './drawings/light.ts';
import { rigDrawing } from './drawings/rig.ts';
import { otherViewDrawing, setUpDrawing } from './drawings/set-up.ts';
import { tiltDistanceDrawing } from './drawings/tilt-distance.ts';
import { limitsOf } from './limits.ts';
import { changesBetween, rebuilds, type SetUp, shootingOrder } from './order.ts';
import { endsOf, type SaidShot } from './said.ts';
import { benchOf, settingsOf } from './settings.ts';

/** The margins first, which are short and fill a page's end; then from the whole to the detail. */
const DRAWINGS: readonly ((shot: SaidShot) => Drawing | null)[] = [
  tiltDrawing,
  lifeDrawing,
  coloursDrawing,
  depthDrawing,
  setUpDrawing,
  otherViewDrawing,
  frameDrawing,
  rigDrawing,
  apertureDrawing,
  tiltDistanceDrawing,
  lightDrawing,
];

/** Hints are for who types; the sheet is for who shoots. */
const onSheet = ({ severity }: SheetFinding): boolean => severity !== 'hint';

/** A shot whose text can't be read. */
const UNREAD = {
  about: null,
  state: 'unread',
  ...{ settings: [], bench: [], checks: [], takes: 0, limits: [], drawings: [] },
  ...{ takeS: null, lifeS: null },
} as const;

export function shotSheet(
  name: string,
  shot: SaidShot | null,
  findings: readonly SheetFinding[],
  once: States | undefined,
  clips: readonly string[],
): ShotSheet {
  const said = findings.filter(onSheet);
  if (!shot) return { ...UNREAD, name, clips, findings: said };
  const { about } = shot.bench.fields;
  return {
    name,
    about: isKnown(about) ? about.value : null,
    state: stateOf(said),
    settings: settingsOf(shot),
    bench: benchOf(shot),
    checks: checksOf(shot, once),
    takes: clips.length > 0 ? 0 : takesOf(shot),
    takeS: takeSecondsOf(shot),
    lifeS: lifeOf(shot),
    limits: limitsOf(shot),
    clips,
    findings: said,
    drawings: DRAWINGS.flatMap((draw) => draw(shot) ?? []),
  };
}

function stateOf(findings: readonly SheetFinding[]): ShotState {
  const has = (severity: Severity): boolean => findings.some((one) => one.severity === severity);
  if (has('error')) return 'not-ready';
  return has('warning') ? 'look' : 'ready';
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
function checksOf({ bench }: SaidShot, once: States | undefined): readonly Check[] {
  const own = bench.fields.preflight;
  const has = (states: States | undefined, name: string): boolean =>
    states !== undefined && isKnown(states) && states.value.has(name);
  return [...bench.checks].flatMap(([name, state]) =>
    has(once, name) && !has(own, name) ? [] : [checkOf(name, own, state === 'done')],
  );
}

export function onceChecks(states: States | undefined): readonly Check[] {
  if (!states || !isKnown(states)) return [];
  return [...states.value].flatMap(([name, state]) =>
    isKnown(state) ? [checkOf(name, states, state.value !== 'open')] : [],
  );
}

/** The order that rebuilds least, with what changes before each shot and how long it takes. */
export function orderOf(shots: readonly SaidShot[]): Order {
  const setUps = shots.map(setUpOf);
  const times = new Map(shots.map((shot) => [shot.bench.shot, secondsOf(shot)]));
  const ordered = shootingOrder(setUps);
  const known = [...times.values()].filter((seconds) => seconds !== null);
  return {
    steps: ordered.map((setUp, index) => ({
      shot: setUp.shot,
      changes: changesBetween(index === 0 ? NOTHING_UP : ordered[index - 1]!, setUp),
      seconds: times.get(setUp.shot) ?? null,
    })),
    seconds: known.reduce((sum, seconds) => sum + seconds, 0),
    untimed: times.size - known.length,
    changes: rebuilds(ordered),
    changesAsWritten: rebuilds(setUps),
  };
}

const NOTHING_UP: SetUp = { shot: '', rig: null, parts: [], lights: [], subject: null };

function setUpOf({ bench }: SaidShot): SetUp {
  const { rigName, parts, lights, filters, subject, carriers } = bench;
  return {
    shot: bench.shot,
    rig: rigName ?? null,
    parts: [
      ...(parts.known ? parts.value.map(({ name }) => name) : []),
      ...(filters.known ? filters.value.map(({ name }) => name) : []),
      ...[carriers.head, carriers.stand].flatMap((carrier) => carrier?.name ?? []),
    ],
    lights: lights.known
      ? lights.value.map(({ name, fields, dimmedStops }) => ({
          name,
          place: JSON.stringify([
            isKnown(fields.at)
              ? Object.values(fields.at.value).map((one) => isKnown(one) && one.value)
              : null,
            dimmedStops.known ? dimmedStops.value : null,
          ]),
        }))
      : [],
    subject: subject?.name ?? null,
  };
}

/** One where the plan doesn't say how many. */
function takesOf({ bench }: SaidShot): number {
  const { take } = bench.fields;
  const count = isKnown(take) ? take.value.count : undefined;
  return count && isKnown(count) ? count.value : 1;
}

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

function secondsOf({ bench }: SaidShot): number | null {
  const { take } = bench.fields;
  if (!isKnown(take) || !isKnown(take.value.duration)) return null;
  const { duration, count, settle } = take.value;
  const once = duration.value + (isKnown(settle) ? settle.value : 0);
  return once * (isKnown(count) ? count.value : 1);
}
