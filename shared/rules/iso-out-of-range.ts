import { message } from '../words/message.ts';
import { type IsoRange, isoRangeOf, needsIso } from './needed-iso.ts';
import { relatedTo, type ShotRule, setTo } from './shot-rule.ts';

/** Third-stop marks are rounded; a body's end mark answers for itself. */
const DEAD_BAND = 0.03;

interface Facts {
  readonly iso: number;
  /** `auto`: what the body would have to choose. */
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
    when: 'the ISO set, or needed with `auto`, lies beyond what the body has; a warning beyond what it holds clean.',
    why: 'Light that a narrow aperture costs can be bought back with ISO only as far as the body goes, and past `usable-to` noise takes the shadows.',
    remedy:
      'Add light, open up, or expose longer; or lower the ISO and say why the noise may stay.',
    bad: [
      {
        says: 'noise expected',
        change: { 'shots/frost/iso': '6400', 'shots/frost/aperture': 'f/22' },
      },
      { says: 'beyond the body', change: { 'shots/frost/iso': '102400' } },
    ],
    good: [{ says: 'within the clean range', change: { 'shots/frost/iso': '800' } }],
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
          ? message`The shot ${needsIso(iso, settable, say)}; ${body} is clean to ISO ${say.iso(limit)}.`
          : message`${value} is noisier than ${body} can be clean: up to ISO ${say.iso(limit)}.`,
        why: message`That is ${say.stops(Math.log2(iso / limit))} past it.`,
      };
    if (!needed)
      return { what: message`${value} is beyond ${body}: its ${which} is ${say.iso(limit)}.` };
    const off = say.stops(Math.log2(iso / limit));
    return {
      what:
        which === 'highest'
          ? message`At ISO ${say.iso(limit)}, the highest of ${body}, the shot is ${off} too dark.`
          : message`At ISO ${say.iso(limit)}, the lowest of ${body}, the shot is ${off} too bright.`,
    };
  },
  size: ({ iso, limit }) => ({ kind: 'stops', value: Math.abs(Math.log2(iso / limit)) }),
  numbers: ({ iso, limit }) => ({ iso, limit }),
  fixes: ({ at, facts: { chosenBy, limit } }) =>
    chosenBy === 'plan' ? [setTo(message`Set ISO ${limit}`, at, String(limit))] : [],
};
