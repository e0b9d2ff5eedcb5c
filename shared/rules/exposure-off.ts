import { nearestIso, remediesFor } from '../exposure/remedies.ts';
import { isLongerThanFrame } from '../exposure/shutter.ts';
import { MARKED_SHUTTER_RECIPROCALS } from '../exposure/shutter-marks.ts';
import type { Bench } from '../figures/bench.ts';
import { MARKED_APERTURES } from '../optics/apertures.ts';
import { setTo } from '../plan/fixes.ts';
import type { PlanFix } from '../plan/problem.ts';
import { asFound } from '../say/figures.ts';
import { message } from '../words/message.ts';
import { isDarkAndShallow } from './at-odds.ts';
import { lightFixes } from './light-fixes.ts';
import { canBeSet, type IsoRange, isoRangeOf } from './needed-iso.ts';
import { relatedTo, type ShotRule } from './shot-rule.ts';

/** One-third stop: the smallest step on most cameras, so smaller errors can't be corrected. */
const NOTICED_STOPS = 1 / 3;
const SPOILT_STOPS = 2 / 3;
/** Accuracy of readings and marked settings, so that no finding depends on rounding. */
const DEAD_BAND_STOPS = 0.04;

interface Facts {
  readonly errorStops: number;
  readonly iso: number;
  /** null: not known. */
  readonly marked: number | null;
  /** null: no limit. */
  readonly isoNeeded: number | null;
  readonly settable: IsoRange;
  /** null: unknown; a reading through the rig doesn't need it. */
  readonly effective: number | null;
  /** The effective f-number was measured. */
  readonly isMeasured: boolean;
  readonly lossStops: number;
  /** Stopping down for depth would make it darker still. */
  readonly isShallow: boolean;
}

export const exposureOff: ShotRule<Facts> = {
  name: 'exposure-off',
  severity: 'warning',
  docs: {
    when: 'the settings over- or underexpose the shot by more than 1/3 stop. A note above 1/3 stop, a warning above 2/3.',
    why: 'Exposure follows from the effective f-number, the light lost in glass and filters, the shutter and ISO. They are compared with the reading or the data of the light: N²/t = E·S/C with C 250, N²/t = L·S/K with K 12.5.',
    remedy:
      'Change the shutter, ISO, light or aperture by the stops given; each has its own side effects.',
    bad: [
      { says: 'two stops underexposed', change: { 'shots/frost/iso': '200' } },
      { says: 'two stops overexposed', change: { 'shots/frost/iso': '3200' } },
    ],
    good: [{ says: 'auto ISO', change: { 'shots/frost/iso': 'auto' } }],
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
          marked: bench.marked.known ? bench.marked.value : null,
          isoNeeded: isoNeeded.known ? isoNeeded.value : null,
          settable: isoRangeOf(bench),
          effective: effectiveFNumber.known ? effectiveFNumber.value : null,
          isMeasured: effectiveFNumber.known && effectiveFNumber.measured === true,
          lossStops: lightLossStops.known ? lightLossStops.value : 0,
          isShallow: isDarkAndShallow(figures),
        },
        related: () => relatedTo(at, exposureErrorStops),
      },
    ];
  },
  words(facts, say) {
    const { errorStops, marked, isoNeeded, settable, effective, isMeasured, lossStops } = facts;
    const iso =
      isoNeeded !== null && canBeSet(isoNeeded, settable)
        ? message`Correct exposure needs about ISO ${say.iso(isoNeeded)}.`
        : message`No ISO from ${say.iso(settable.lowest)} to ${say.iso(settable.highest)} gives correct exposure.`;
    const at =
      effective === null
        ? ''
        : asFound(isMeasured ? { measured: true } : {}, say.fNumber(effective));
    const aperture =
      effective === null
        ? ''
        : lossStops > 0.05 && marked !== null
          ? message`The effective aperture is ${at}, ${say.stops(lossStops)} slower than the marked ${say.fNumber(marked)}. `
          : message`The effective aperture is ${at}. `;
    return {
      what:
        errorStops > 0
          ? message`The shot is ${say.stops(errorStops)} overexposed.`
          : message`The shot is ${say.stops(errorStops)} underexposed.`,
      why:
        aperture +
        iso +
        (facts.isShallow
          ? message` Solve this shot (\`lamella solve\`) looks for light and depth together.`
          : ''),
    };
  },
  size: ({ errorStops }) => ({ kind: 'stops', value: Math.abs(errorStops) }),
  side: ({ errorStops }) => (errorStops > 0 ? 'over' : 'under'),
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
      fixes.push(setTo(message`Set shutter to ${text}`, bench.fields.shutter.at, text));
    } else if (bench.timeLapse) fixes.push(...longExposure(bench, change.timeS));
    const onLens = bench.marksOnLens;
    if (onLens.length > 0) {
      const mark = onLens.reduce((best, next) =>
        Math.abs(Math.log2(next / change.fNumber)) < Math.abs(Math.log2(best / change.fNumber))
          ? next
          : best,
      );
      if (mark !== marked.value && MARKED_APERTURES.includes(mark))
        fixes.push(
          setTo(
            mark < marked.value ? message`Open up to f/${mark}` : message`Stop down to f/${mark}`,
            bench.fields.aperture.at,
            `f/${mark}`,
          ),
        );
    }
    fixes.push(...lightFixes(bench, facts.errorStops));
    return fixes;
  },
};

const markedReciprocal = (wanted: number): number =>
  MARKED_SHUTTER_RECIPROCALS.reduce((best, next) =>
    Math.abs(Math.log2(next / wanted)) < Math.abs(Math.log2(best / wanted)) ? next : best,
  );

/** A frame at intervals may be exposed for seconds; the interval limits it. */
function longExposure({ fields, recordRate }: Bench, seconds: number): readonly PlanFix[] {
  if (seconds < 1 || !recordRate.known || isLongerThanFrame(seconds, recordRate.value)) return [];
  const text = `${seconds < 10 ? Number(seconds.toFixed(1)) : Math.round(seconds)} s`;
  return [setTo(message`Set shutter to ${text}`, fields.shutter.at, text)];
}
