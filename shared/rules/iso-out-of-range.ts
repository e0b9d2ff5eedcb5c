import { message } from '../words/message.ts';
import { relatedTo, type ShotRule, setTo } from './shot-rule.ts';

/** Third-stop marks are rounded; a body's end mark answers for itself. */
const DEAD_BAND = 0.03;

interface Facts {
  readonly iso: number;
  /** `auto`: what the body would have to choose. */
  readonly chosenBy: 'plan' | 'body';
  readonly limit: number;
  readonly which: 'lowest' | 'highest' | 'clean-to';
  readonly body: string;
}

export const isoOutOfRange: ShotRule<Facts> = {
  name: 'iso-out-of-range',
  severity: 'error',
  docs: {
    when: 'the ISO set, or needed with `auto`, lies beyond what the body has; a warning beyond what it holds clean.',
    why: 'Light that a narrow aperture costs can be bought back with ISO only as far as the body goes, and past `clean-to` noise takes the shadows.',
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
    };
    const { lowest, highest, cleanTo } = limits;
    const say = (which: Facts['which'], limit: number, from: typeof lowest) => [
      {
        at,
        severity: which === 'clean-to' ? ('warning' as const) : ('error' as const),
        facts: { ...base, which, limit },
        related: from.known ? relatedTo(at, from) : [],
      },
    ];
    if (highest.known && value > highest.value * (1 + DEAD_BAND))
      return say('highest', highest.value, highest);
    if (lowest.known && value < lowest.value * (1 - DEAD_BAND))
      return say('lowest', lowest.value, lowest);
    if (cleanTo.known && value > cleanTo.value * (1 + DEAD_BAND))
      return say('clean-to', cleanTo.value, cleanTo);
    return [];
  },
  words({ iso, chosenBy, limit, which, body }, say) {
    const value = message`ISO ${say.iso(iso)}`;
    const needed = chosenBy === 'body';
    if (which === 'clean-to')
      return {
        what: needed
          ? message`The shot needs ${value}; ${body} is clean to ISO ${say.iso(limit)}.`
          : message`${value} is noisier than ${body} can be clean: up to ISO ${say.iso(limit)}.`,
        why: message`That is ${say.stops(Math.log2(iso / limit))} past it.`,
      };
    return {
      what: needed
        ? message`The shot needs ${value}, beyond ${body}: its ${which} is ${say.iso(limit)}.`
        : message`${value} is beyond ${body}: its ${which} is ${say.iso(limit)}.`,
      ...(chosenBy === 'body' && {
        why:
          which === 'highest'
            ? message`That is ${say.stops(Math.log2(iso / limit))} short of light.`
            : message`That is ${say.stops(Math.log2(iso / limit))} too much light.`,
      }),
    };
  },
  size: ({ iso, limit }) => ({ kind: 'stops', value: Math.abs(Math.log2(iso / limit)) }),
  numbers: ({ iso, limit }) => ({ iso, limit }),
  fixes: ({ at, facts: { chosenBy, limit } }) =>
    chosenBy === 'plan' ? [setTo(message`Set ISO ${limit}`, at, String(limit))] : [],
};
