import { nearestIso, remediesFor } from '../exposure/remedies.ts';
import { isLongerThanFrame } from '../exposure/shutter.ts';
import { MARKED_SHUTTER_RECIPROCALS } from '../exposure/shutter-marks.ts';
import { MARKED_APERTURES } from '../optics/apertures.ts';
import type { PlanFix } from '../plan/problem.ts';
import { message } from '../words/message.ts';
import { lightFixes } from './light-fixes.ts';
import { canBeSet, type IsoRange, isoRangeOf } from './needed-iso.ts';
import { relatedTo, type ShotRule, setTo } from './shot-rule.ts';

/** The step of every setting. Within it nothing can be set better. */
const NOTICED_STOPS = 1 / 3;
const SPOILT_STOPS = 2 / 3;
/** What readings and marked settings are good to, so that nothing flips at a rounding. */
const DEAD_BAND_STOPS = 0.04;

interface Facts {
  readonly errorStops: number;
  readonly iso: number;
  /** null: beyond all numbers. */
  readonly isoNeeded: number | null;
  readonly settable: IsoRange;
  /** null: not known; a reading through the rig does without. */
  readonly effective: number | null;
  /** The effective f-number was measured. */
  readonly isMeasured: boolean;
  readonly lossStops: number;
}

export const exposureOff: ShotRule<Facts> = {
  name: 'exposure-off',
  severity: 'warning',
  docs: {
    when: 'what the light gives and what the settings ask for differ by more than a third of a stop; a warning over two thirds.',
    why: 'The balance counts the effective f-number, the glass of lens and converter, filters, shutter and ISO against the reading or the light’s own data: N²/t = E·S/C with C 250, N²/t = L·S/K with K 12.5.',
    remedy:
      'Change shutter, ISO, light or aperture by the stops given; each has its own sideEffects.',
    bad: [
      { says: 'two stops dark', change: { 'shots/frost/iso': '200' } },
      { says: 'two stops bright', change: { 'shots/frost/iso': '3200' } },
    ],
    good: [{ says: 'left to the body', change: { 'shots/frost/iso': 'auto' } }],
  },
  check({ bench, figures }) {
    const { exposureErrorStops, isoNeeded, effectiveFNumber, lightLossStops } = figures;
    const { iso } = bench;
    if (!exposureErrorStops.known) return [];
    if (!iso.known || iso.value === 'auto') return [];
    const error = exposureErrorStops.value;
    if (Math.abs(error) <= NOTICED_STOPS + DEAD_BAND_STOPS) return [];
    const at = bench.fields.iso.at;
    return [
      {
        at,
        severity: Math.abs(error) > SPOILT_STOPS + DEAD_BAND_STOPS ? 'warning' : 'note',
        facts: {
          errorStops: error,
          iso: iso.value,
          isoNeeded: isoNeeded.known ? isoNeeded.value : null,
          settable: isoRangeOf(bench),
          effective: effectiveFNumber.known ? effectiveFNumber.value : null,
          isMeasured: effectiveFNumber.known && effectiveFNumber.measured === true,
          lossStops: lightLossStops.known ? lightLossStops.value : 0,
        },
        related: relatedTo(at, exposureErrorStops),
      },
    ];
  },
  words({ errorStops, isoNeeded, settable, effective, isMeasured, lossStops }, say) {
    const iso =
      isoNeeded !== null && canBeSet(isoNeeded, settable)
        ? message`ISO ${say.iso(isoNeeded)} would balance it.`
        : message`No ISO from ${say.iso(settable.lowest)} to ${say.iso(settable.highest)} balances it.`;
    const aperture =
      effective === null
        ? ''
        : message`The aperture ${say.worksAs(effective, isMeasured)}` +
          (lossStops > 0.05 ? message`, ${say.stops(lossStops)} under the marked one` : '') +
          '. ';
    return {
      what:
        errorStops > 0
          ? message`The shot is ${say.stops(errorStops)} too bright.`
          : message`The shot is ${say.stops(errorStops)} too dark.`,
      why: aperture + iso,
    };
  },
  size: ({ errorStops }) => ({ kind: 'stops', value: Math.abs(errorStops) }),
  numbers: ({ errorStops, isoNeeded, effective }) => ({
    exposureErrorStops: errorStops,
    ...(isoNeeded !== null && { isoNeeded }),
    ...(effective !== null && { effectiveFNumber: effective }),
  }),
  fixes({ at, facts }, { bench, figures }) {
    const fixes: PlanFix[] = [];
    if (facts.isoNeeded === null) return fixes;
    const iso = nearestIso(facts.isoNeeded);
    if (iso !== facts.iso && canBeSet(iso, facts.settable))
      fixes.push(setTo(message`Set ISO ${iso}`, at, String(iso)));
    const { shutterSeconds } = figures;
    const { marked } = bench;
    if (!shutterSeconds.known || !marked.known) return fixes;
    const change = remediesFor(facts.errorStops, {
      timeS: shutterSeconds.value,
      iso: facts.iso,
      fNumber: marked.value,
    });
    const rate = bench.recordRate;
    if (change.timeS < 1 && !(rate.known && isLongerThanFrame(change.timeS, rate.value))) {
      const text = `1/${markedReciprocal(1 / change.timeS)} s`;
      fixes.push(setTo(message`Shutter ${text}`, bench.fields.shutter.at, text));
    }
    const onLens = bench.marksOnLens;
    if (onLens.length > 0) {
      const mark = onLens.reduce((best, next) =>
        Math.abs(Math.log2(next / change.fNumber)) < Math.abs(Math.log2(best / change.fNumber))
          ? next
          : best,
      );
      if (mark !== marked.value && MARKED_APERTURES.includes(mark))
        fixes.push(setTo(message`Aperture f/${mark}`, bench.fields.aperture.at, `f/${mark}`));
    }
    fixes.push(...lightFixes(bench, facts.errorStops));
    return fixes;
  },
};

const markedReciprocal = (wanted: number): number =>
  MARKED_SHUTTER_RECIPROCALS.reduce((best, next) =>
    Math.abs(Math.log2(next / wanted)) < Math.abs(Math.log2(best / wanted)) ? next : best,
  );
