import { nearestIso } from '../exposure/remedies.ts';
import { setTo } from '../plan/fixes.ts';
import { message } from '../words/message.ts';
import { AT_INTERVALS } from './fewer-frames.ts';
import { canBeSet, isoRangeOf } from './needed-iso.ts';
import type { ShotRule } from './shot-rule.ts';

interface Facts {
  /** null: not known. */
  readonly isoNeeded: number | null;
}

export const timeLapseOnAuto: ShotRule<Facts> = {
  name: 'time-lapse-on-auto',
  severity: 'warning',
  docs: {
    when: 'ISO is automatic in a time-lapse.',
    why: 'The body meters every frame anew and sets ISO in steps, so the finished clip flickers in brightness. A ramp from day to dark is not calculated.',
    remedy: 'Set ISO for the whole time-lapse, and keep the light from changing.',
    bad: [{ says: 'automatic ISO', change: { ...AT_INTERVALS, 'shots/frost/iso': 'auto' } }],
    good: [{ says: 'a fixed ISO', change: AT_INTERVALS }],
  },
  check({ bench, figures: { isoNeeded } }) {
    if (!bench.timeLapse || !bench.iso.known || bench.iso.value !== 'auto') return [];
    return [
      {
        at: bench.fields.iso.at,
        facts: { isoNeeded: isoNeeded.known ? isoNeeded.value : null },
      },
    ];
  },
  words: () => ({
    what: message`Automatic ISO flickers in a time-lapse.`,
    why: message`The body meters every frame anew and sets ISO in steps.`,
  }),
  numbers: ({ isoNeeded }) => ({ ...(isoNeeded !== null && { isoNeeded }) }),
  fixes({ at, facts: { isoNeeded } }, { bench }) {
    if (isoNeeded === null) return [];
    const iso = nearestIso(isoNeeded);
    return canBeSet(iso, isoRangeOf(bench))
      ? [setTo(message`Set ISO ${iso}`, at, String(iso))]
      : [];
  },
};
