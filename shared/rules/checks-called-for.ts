/**
 * The checks that a shot needs because of its subject, its light, its moves and its rig. Common
 * practice throughout.
 */

import type { Bench } from '../figures/bench.ts';
import { isRigOverhead } from '../figures/carried.ts';
import { isOfStills } from '../figures/stills.ts';
import { natureOf } from '../figures/subject-kinds.ts';
import { type Field, ifKnown, isKnown } from '../plan/field.ts';
import { later } from '../words/message.ts';

export interface CheckCalledFor {
  readonly name: string;
  /** The check as an order. */
  readonly what: string;
  /** What of the shot calls for it. */
  readonly because: string;
  /** Done once a day and not before each shot. */
  readonly daily?: true;
}

type Condition = (bench: Bench) => boolean;

const isLiquid: Condition = ({ subject }) => natureOf(subject)?.isLiquid === true;

const isMirrorLike: Condition = (bench) =>
  (natureOf(bench.subject)?.mirrors === 'always' && natureOf(bench.subject)?.shape === 'flat') ||
  (bench.subject && ifKnown(bench.subject.fields.finish)) === 'mirror';

const moveKind = ({ fields }: Bench): string | undefined => {
  const move = ifKnown(fields.move);
  return move && ifKnown(move.kind);
};

const lightSays =
  (test: (light: { fields: Record<string, unknown> }) => boolean): Condition =>
  ({ lights }) =>
    lights.known && lights.value.some((light) => test(light as never));

/** The value of a light's key. A value that can't be read is no reason to require a check. */
const field = (light: { fields: Record<string, unknown> }, key: string): unknown => {
  const said = light.fields[key] as Field<unknown>;
  return said.state === 'invalid' ? 'none' : ifKnown(said);
};

const hasLongRig: Condition = ({ parts }) =>
  parts.known && parts.value.some(({ kind }) => kind === 'tube' || kind === 'converter');

const atIntervals: Condition = ({ timeLapse }) => timeLapse !== null;

const hangsOverhead: Condition = (bench) =>
  isRigOverhead(bench) ||
  (bench.lights.known && bench.lights.value.some(({ isOverhead }) => isOverhead));

type Feature = 'stabiliser' | 'autofocus' | 'focus-by-wire';

/** Whether body or lens of the shot has it. */
const hasFeature =
  (feature: Feature): Condition =>
  ({ body, lens }) =>
    [body?.fields.has, lens?.fields.has].some((list) =>
      (list && ifKnown(list))?.some((one) => ifKnown(one) === feature),
    );

const isSupported: Condition = ({ fields, rig }) =>
  (ifKnown(fields.support) ?? (rig && ifKnown(rig.fields.support))) !== undefined;

const isInvalid = (light: { fields: Record<string, unknown> }, key: string): boolean =>
  (light.fields[key] as { state: string }).state === 'invalid';

const CHECKS: readonly (CheckCalledFor & { readonly when: Condition })[] = [
  {
    name: 'focus-at-full-size',
    what: later`Punch in (magnify the viewfinder) and check focus`,
    because: later`every shot`,
    when: () => true,
  },
  {
    name: 'record-setting-read-back',
    what: later`Confirm resolution and frame rate on the camera`,
    because: later`every shot of video`,
    when: (bench) => !isOfStills(bench),
  },
  {
    name: 'exposure-confirmed',
    what: later`Check exposure on the subject`,
    because: later`every shot`,
    when: () => true,
  },
  {
    name: 'white-balance-fixed',
    what: later`Set white balance manually`,
    because: later`every shot`,
    when: () => true,
  },
  {
    name: 'card-and-battery',
    what: later`Check card and battery`,
    because: later`every day`,
    daily: true,
    when: () => true,
  },
  {
    name: 'background-clear',
    what: later`Clear the background: what shows through the subject, and what it mirrors`,
    because: later`a liquid or a mirror`,
    when: (bench) => isLiquid(bench) || isMirrorLike(bench),
  },
  {
    name: 'flicker-checked',
    what: later`Check for lamp flicker at this shutter speed`,
    because: later`a light that may flicker`,
    when: lightSays(
      (light) =>
        field(light, 'modulation') !== 'none' &&
        field(light, 'kind') !== 'daylight' &&
        // A value that can't be read has its own finding, and may say that the light doesn't
        // flicker.
        !['modulation', 'kind'].some((key) => isInvalid(light, key)),
    ),
  },
  {
    name: 'solution-ready',
    what: later`Prepare film solution and holder, with a spare`,
    because: later`a film or bubble`,
    when: ({ subject }) => natureOf(subject)?.isFilm === true,
  },
  {
    name: 'lens-not-in-mirror',
    what: later`Check that the lens is not reflected in the subject`,
    because: later`a mirror-like subject`,
    when: isMirrorLike,
  },
  {
    name: 'move-rehearsed',
    what: later`Rehearse the move and set end stops`,
    because: later`a move`,
    when: (bench) => moveKind(bench) !== undefined && moveKind(bench) !== 'focus-pull',
  },
  {
    name: 'focus-ends-marked',
    what: later`Mark both ends of the focus pull`,
    because: later`a focus pull`,
    when: (bench) => moveKind(bench) === 'focus-pull',
  },
  {
    name: 'stack-ends-checked',
    what: later`Check focus at the first and the last frame of the stack; then touch nothing but the step`,
    because: later`a focus stack`,
    when: ({ stack }) => stack !== null,
  },
  {
    name: 'foot-balanced',
    what: later`Balance the rig over its foot; no lens weight hanging on the mounts`,
    because: later`tubes or a converter`,
    when: hasLongRig,
  },
  {
    name: 'stabiliser-off',
    what: later`Switch the stabiliser off: on a support it drifts`,
    because: later`a stabiliser on a support`,
    when: (bench) => isSupported(bench) && hasFeature('stabiliser')(bench),
  },
  {
    name: 'autofocus-off',
    what: later`Switch autofocus off and focus by hand`,
    because: later`a body or lens with autofocus`,
    when: hasFeature('autofocus'),
  },
  {
    name: 'focus-by-wire-set-again',
    what: later`Set focus again after every power-off; a ring without stops forgets its place`,
    because: later`a lens that focuses by wire`,
    when: hasFeature('focus-by-wire'),
  },
  {
    name: 'overhead-tethered',
    what: later`Fit a safety cable to everything overhead. Follow local rules and the advice of a qualified person`,
    because: later`a load overhead`,
    when: hangsOverhead,
  },
  {
    name: 'mains-clear-of-liquid',
    what: later`Keep mains cables away from liquid. Follow local rules and the advice of a qualified person`,
    because: later`a mains light near liquid`,
    when: (bench) =>
      isLiquid(bench) && lightSays((light) => field(light, 'supply') === 'mains')(bench),
  },
  {
    name: 'aperture-held',
    what: later`Open the aperture fully, or hold its setting mechanically; an iris that closes anew for each frame flickers`,
    because: later`a time-lapse`,
    when: atIntervals,
  },
  {
    name: 'light-steady',
    what: later`Shut out daylight, warm the lamps up and feed them from a steady supply`,
    because: later`a time-lapse`,
    when: atIntervals,
  },
  {
    name: 'rig-at-room-temperature',
    what: later`Let rig and room reach their temperature, then focus and lock the ring`,
    because: later`a time-lapse`,
    when: atIntervals,
  },
  {
    name: 'power-lasts',
    what: later`Fit a full battery or a mains adapter, an empty card, and turn automatic switch-off off`,
    because: later`a time-lapse`,
    when: atIntervals,
  },
  {
    name: 'room-left-alone',
    what: later`Agree how the room stays until the last frame: doors, heating, lamps, and nobody near the rig`,
    because: later`a time-lapse`,
    when: atIntervals,
  },
];

export const checksCalledFor = (bench: Bench): readonly CheckCalledFor[] =>
  CHECKS.filter(({ when }) => when(bench));

/** Every check that Lamella knows, with its order. */
export const KNOWN_CHECKS: readonly CheckCalledFor[] = CHECKS;

/** The needed checks that neither the shot nor the plan lists, under `every-shot` or `once`. */
export const missingChecks = (bench: Bench): readonly CheckCalledFor[] =>
  bench.checksUnread ? [] : checksCalledFor(bench).filter(({ name }) => !bench.checks.has(name));

export const openChecks = (bench: Bench): readonly string[] =>
  [...bench.checks].flatMap(([name, state]) => (state === 'open' ? [name] : []));

const hasSubjectAndRig = ({ fields }: Bench): boolean =>
  isKnown(fields.subject) && isKnown(fields.rig);

/** Whether what a shot lacks can be told: it names a subject and a rig that are there. */
export const isJudged = (bench: Bench): boolean =>
  hasSubjectAndRig(bench) &&
  bench.subject !== undefined &&
  bench.rig !== undefined &&
  !bench.checksUnread;
