/** What one entry must satisfy beyond the shape of each of its keys. */

import { KINDS } from '../quantity/index.ts';
import { message } from '../words/message.ts';
import { type Field, isKnown } from './field.ts';
import { removal } from './fixes.ts';
import type { DefName } from './generated/names.ts';
import type { Day, Lens, Shot, Subject } from './generated/types.ts';
import type { ShapeProblem } from './problem.ts';

type Check = (fields: never) => readonly ShapeProblem[];

const CHECKS: Partial<Record<DefName, Check>> = {
  shot: (shot: Shot) => [
    ...askedTwice(shot),
    ...panUpright(shot),
    ...lapseTwice(shot),
    ...stackChecks(shot),
  ],
  lens: (lens: Lens) => apertureTurned(lens),
  subject: (subject: Subject) => filmElsewhere(subject),
};

export function checkKeys(def: DefName, fields: unknown): readonly ShapeProblem[] {
  return CHECKS[def]?.(fields as never) ?? [];
}

export const checkDay = (day: Field<Day>): readonly ShapeProblem[] =>
  isKnown(day) ? breaksOutside(day.value) : [];

/** Exactly one of field, magnification and ring is decided; the others follow from it. */
function askedTwice(shot: Shot): readonly ShapeProblem[] {
  const asked = (['field', 'magnification', 'ring'] as const).filter(
    (key) => shot[key].state !== 'missing',
  );
  if (asked.length < 2) return [];
  const keys = asked.map((key) => `\`${key}\``).join(message` and `);
  const last = shot[asked.at(-1)!];
  return [
    {
      rule: 'wrong-value',
      code: 'asked-twice',
      at: last.at,
      args: { keys },
      fixes: asked
        .toReversed()
        .map((key) =>
          removal(message`Remove ${key}`, shot[key].at, message`what ${key} says is lost`),
        ),
    },
  ];
}

/** A time-lapse has one length, stills have no recording mode, and its takes no other duration. */
function lapseTwice(shot: Shot): readonly ShapeProblem[] {
  const lapse = shot['time-lapse'];
  if (!isKnown(lapse)) return [];
  const { duration, frames, mode } = lapse.value;
  const isStills = !isKnown(mode) || mode.value === 'stills';
  const take = isKnown(shot.take) ? shot.take.value.duration : undefined;
  const pairs: readonly (readonly [words: string, keys: string, field: Field<unknown>])[] = [
    ...(duration.state !== 'missing' && frames.state !== 'missing'
      ? [['duration', message`\`duration\` and \`frames\``, duration] as const]
      : []),
    ...(isStills && mode.state !== 'invalid' && shot.record.state !== 'missing'
      ? [['record', message`\`record\` and a \`time-lapse\` of stills`, shot.record] as const]
      : []),
    ...(take && take.state !== 'missing'
      ? [['duration', message`\`duration\` of the \`take\` and a \`time-lapse\``, take] as const]
      : []),
  ];
  return pairs.map(([key, keys, { at }]) => ({
    rule: 'wrong-value',
    code: 'asked-twice',
    at,
    args: { keys },
    fixes: [removal(message`Remove ${key}`, at, message`what ${key} says is lost`)],
  }));
}

/** A pan along the upright axis is a tilt, by the name that camera crews give it. */
function panUpright({ move }: Shot): readonly ShapeProblem[] {
  if (!isKnown(move)) return [];
  const { kind, along } = move.value;
  if (!isKnown(kind) || kind.value !== 'pan' || !isKnown(along) || along.value !== 'upright')
    return [];
  return [
    {
      rule: 'usual-spelling',
      code: 'usual-spelling',
      at: kind.at,
      args: { key: 'kind', text: 'pan, along: upright', usual: 'tilt' },
      fixes: [
        {
          title: message`Call it \`tilt\``,
          edits: [
            { op: 'set', at: kind.at, text: 'tilt' },
            { op: 'remove', at: { ...along.at, part: 'pair' } },
          ],
        },
      ],
    },
  ];
}

const DAY_S = 86_400;
const printHours = KINDS.hours.print;

/** A break is a part of the day. */
function breaksOutside({ breaks, start, end }: Day): readonly ShapeProblem[] {
  if (!isKnown(breaks)) return [];
  const [from, to] = [start, end].map((field) => (isKnown(field) ? field.value : undefined));
  return breaks.value.flatMap((one): ShapeProblem[] => {
    if (!isKnown(one)) return [];
    const { value, at } = one;
    const fix = removal(message`Remove the break`, at);
    const text = printHours(value);
    const of = { rule: 'wrong-value', at, args: { text }, fixes: [fix] } as const;
    if (value.from === value.to) return [{ ...of, code: 'break-empty' }];
    if (from === undefined || to === undefined) return [];
    const room = to > from ? to - from : to - from + DAY_S;
    const begins = (value.from - from + DAY_S) % DAY_S;
    return begins < room ? [] : [{ ...of, code: 'break-outside' }];
  });
}

/** A film floats on a liquid surface alone; a film that hangs in air says all of itself. */
function filmElsewhere({ kind, film }: Subject): readonly ShapeProblem[] {
  if (film.state === 'missing' || !isKnown(kind) || kind.value === 'surface') return [];
  return [
    {
      rule: 'wrong-value',
      code: 'film-elsewhere',
      at: film.at,
      args: { text: kind.value },
      fixes: [removal(message`Remove film`, film.at, message`what film says is lost`)],
    },
  ];
}

/** A stack gets on from frame to frame, and is no take. */
function stackChecks({ stack, take }: Shot): readonly ShapeProblem[] {
  if (!isKnown(stack)) return [];
  const { overlap } = stack.value;
  const never: ShapeProblem = {
    rule: 'wrong-value',
    code: 'overlap-whole',
    at: overlap.at,
    args: {},
    fixes: [
      {
        title: message`Set overlap to 30%`,
        edits: [{ op: 'set', at: overlap.at, text: '30 %' }],
      },
    ],
  };
  const both: ShapeProblem = {
    rule: 'wrong-value',
    code: 'stack-and-take',
    at: { ...take.at, part: 'key' },
    args: {},
    fixes: [removal(message`Remove take`, take.at, message`what take says is lost`)],
  };
  return [
    ...(isKnown(overlap) && overlap.value >= 1 ? [never] : []),
    ...(take.state === 'missing' ? [] : [both]),
  ];
}

function apertureTurned({ aperture }: Lens): readonly ShapeProblem[] {
  const field: Field<{ readonly from: number; readonly to: number }> = aperture;
  if (!isKnown(field) || field.value.from <= field.value.to) return [];
  const { from, to } = field.value;
  return [
    {
      rule: 'wrong-value',
      code: 'range-turned',
      at: field.at,
      args: { key: 'aperture' },
      fixes: [
        {
          title: message`Write f/${to} to ${from}`,
          edits: [{ op: 'set', at: field.at, text: `f/${to} to ${from}` }],
        },
      ],
    },
  ];
}
