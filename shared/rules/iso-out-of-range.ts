import { setTo } from '../plan/fixes.ts';
import { message } from '../words/message.ts';
import { type IsoRange, isoRangeOf, needsIso } from './needed-iso.ts';
import { relatedTo, type ShotRule } from './shot-rule.ts';

/** Third-stop marks are rounded; at an end of the range, the body's own mark counts. */
const DEAD_BAND = 0.03;

interface Facts {
  readonly iso: number;
  /** With `auto`, the ISO that the body would need. */
  readonly chosenBy: 'plan' | 'body';
  readonly limit: number;
  readonly which: 'lowest' | 'highest' | 'usable-to';
  readonly body: string;
  readonly settable: IsoRange;
}

export const isoOutOfRange: ShotRule<Facts> = {
  name: 'iso-out-of-range',
  severity: 'error',
  docs: {
    when: 'the ISO set, or needed with `auto`, is outside the range of the body. A warning above its usable limit.',
    why: 'ISO can replace the light lost by stopping down only up to the limit of the camera. Above `usable-to`, shadows turn noisy.',
    remedy:
      'Add light, open up or use a slower shutter. If the noise is intended, accept it with `allow` and a reason.',
    bad: [
      {
        says: 'above the usable limit',
        change: { 'shots/frost/iso': '6400', 'shots/frost/aperture': 'f/22' },
      },
      { says: 'above the highest ISO', change: { 'shots/frost/iso': '102400' } },
    ],
    good: [{ says: 'within the usable range', change: { 'shots/frost/iso': '800' } }],
  },
  check({ bench, figures }) {
    const { body, iso } = bench;
    const limits = bench.isoLimits;
    if (!body || !iso.known) return [];
    const needed = iso.value === 'auto' ? figures.isoNeeded : iso;
    if (!needed.known || needed.value === 'auto') return [];
    const value = needed.value;
    const at = bench.fields.iso.at;
    const base = {
      iso: value,
      chosenBy: iso.value === 'auto' ? ('body' as const) : ('plan' as const),
      body: body.name,
      settable: isoRangeOf(bench),
    };
    const { lowest, highest, cleanTo } = limits;
    const say = (which: Facts['which'], limit: number, from: typeof lowest) => [
      {
        at,
        severity: which === 'usable-to' ? ('warning' as const) : ('error' as const),
        facts: { ...base, which, limit },
        related: from.known ? relatedTo(at, from) : [],
      },
    ];
    if (highest.known && value > highest.value * (1 + DEAD_BAND))
      return say('highest', highest.value, highest);
    if (lowest.known && value < lowest.value * (1 - DEAD_BAND))
      return say('lowest', lowest.value, lowest);
    if (cleanTo.known && value > cleanTo.value * (1 + DEAD_BAND))
      return say('usable-to', cleanTo.value, cleanTo);
    return [];
  },
  words({ iso, chosenBy, limit, which, body, settable }, say) {
    const needed = chosenBy === 'body';
    const value = message`ISO ${say.iso(iso)}`;
    if (which === 'usable-to')
      return {
        what: needed
          ? message`Correct exposure ${needsIso(iso, settable, say)}; ${body} is usable up to ISO ${say.iso(limit)}.`
          : message`${value} is above ${body}'s usable limit, ISO ${say.iso(limit)}.`,
        why: message`That is ${say.stops(Math.log2(iso / limit))} above the limit, so shadows turn noisy.`,
      };
    if (!needed)
      return {
        what:
          which === 'highest'
            ? message`${value} is above ${body}'s highest ISO, ${say.iso(limit)}.`
            : message`${value} is below ${body}'s lowest ISO, ${say.iso(limit)}.`,
      };
    const off = say.stops(Math.log2(iso / limit));
    return {
      what:
        which === 'highest'
          ? message`At ISO ${say.iso(limit)}, the highest of ${body}, the shot is ${off} underexposed.`
          : message`At ISO ${say.iso(limit)}, the lowest of ${body}, the shot is ${off} overexposed.`,
    };
  },
  size: ({ iso, limit }) => ({ kind: 'stops', value: Math.abs(Math.log2(iso / limit)) }),
  numbers: ({ iso, limit }) => ({ iso, limit }),
  fixes: ({ at, facts: { chosenBy, limit } }) =>
    chosenBy === 'plan' ? [setTo(message`Set ISO ${limit}`, at, String(limit))] : [],
};
