import type { Asked, NeedOf } from '../figures/needs.ts';
import { above, entryAt, WHOLE_FILE } from '../plan/entry-id.ts';
import type { Place } from '../plan/place.ts';
import { inLanguage, later, message } from '../words/message.ts';
import type { PlanRule, PlanView, ShotSummary } from './plan-rule.ts';
import { placeKey } from './shot-rule.ts';

interface Facts {
  /** The value to give next, and whose it is. */
  readonly key: string;
  readonly of: string;
  /** Shots or cuts that wait for it, by name or number. */
  readonly waiting: number;
  readonly waiter: 'shot' | 'cut';
  /** What it would make known. */
  readonly wantedFor: readonly Asked[];
  /** Findings that are only probable without it. */
  readonly settles: number;
  /** Other values that are missing, or uncertain where a finding depends on them. */
  readonly others: number;
}

const WANTED: Readonly<Record<Asked, string>> = {
  'working-distance': later`the working distance`,
  field: later`the field`,
  depth: later`the depth of field`,
  'depth-needed': later`the depth of field needed`,
  contrast: later`the contrast after diffraction`,
  exposure: later`the exposure`,
  'shutter-angle': later`the shutter angle`,
  flicker: later`flicker`,
  'focus-pull': later`the focus pull`,
  stack: later`the time of the focus stack`,
  life: later`whether the film outlasts the take`,
};
/** Number of figures that are named; of more, only that there are more. */
const MOST_NAMED = 2;

export const notKnown: PlanRule<Facts> = {
  name: 'not-known',
  severity: 'note',
  docs: {
    when: 'values are missing that calculations need, or findings are only probable because a value is uncertain. There is one finding in a plan: the value that makes most shots sure.',
    why: "A figure is calculated from what is given, bounded where a usual value is assumed, or unknown. It is never guessed. Everything that doesn't need the missing value is still calculated.",
    remedy:
      'Look the value up or measure it, then see what comes next. The hover of a shot and `lamella figures` list the rest. A plan may have gaps.',
    bad: [
      {
        says: 'a battery lamp that may pulse',
        change: { 'lights/panel/modulation': null },
      },
      { says: 'a shot without its shutter', change: { 'shots/frost/shutter': null } },
    ],
    good: [
      { says: 'everything that calculations need', change: {} },
      {
        says: 'a lens without its light loss, which is much the same in all',
        change: { 'kit/lenses/macro-100/loss': null },
      },
    ],
  },
  check(view) {
    const candidates = [...byPlace(view.shots, view.unsure).values(), ...inEdit(view.edit)];
    const best = candidates.reduce<Candidate | undefined>(
      (most, next) => (most && weight(most) >= weight(next) ? most : next),
      undefined,
    );
    if (!best) return [];
    const { key, of, waiting, waiter, wantedFor, settles } = best;
    const facts = {
      key,
      of,
      waiting,
      waiter,
      wantedFor: [...wantedFor],
      settles,
      others: candidates.length - 1,
    };
    return [{ at: entryPlace(best), facts }];
  },
  words: (facts) => ({
    what: waitingWords(facts),
    why: [
      facts.wantedFor.length > 0 ? message`It makes ${listed(facts.wantedFor)} known.` : '',
      settledWords(facts.settles),
      othersWords(facts.others),
    ]
      .filter(Boolean)
      .join(' '),
  }),
  numbers: ({ waiting, waiter, settles, others }) => ({
    [`${waiter}sWaiting`]: waiting,
    settles,
    others,
  }),
};

/** A value that could be given next, and what it would do. */
interface Candidate {
  readonly key: string;
  readonly of: string;
  readonly at: Place;
  readonly waiting: number;
  readonly waiter: 'shot' | 'cut';
  readonly wantedFor: ReadonlySet<Asked>;
  readonly settles: number;
}

/** What is unknown counts before what is only uncertain. */
const weight = ({ waiting, settles }: Candidate): number => waiting + settles / 1000;

function byPlace(
  shots: readonly ShotSummary[],
  unsure: PlanView['unsure'],
): ReadonlyMap<string, Candidate> {
  const found = new Map<string, Candidate>();
  const add = (key: string, of: string, at: Place, more: Partial<Candidate>): void => {
    const place = placeKey(at);
    const known = found.get(place);
    found.set(place, {
      key,
      of,
      at,
      waiter: 'shot',
      waiting: (known?.waiting ?? 0) + (more.waiting ?? 0),
      wantedFor: new Set([...(known?.wantedFor ?? []), ...(more.wantedFor ?? [])]),
      settles: (known?.settles ?? 0) + (more.settles ?? 0),
    });
  };
  for (const { needs } of shots)
    for (const { key, of, at, wantedFor } of needs as readonly NeedOf[])
      add(key, of, at, { waiting: 1, wantedFor: new Set(wantedFor) });
  for (const { key, of, at } of unsure) add(key, of, at, { settles: 1 });
  return found;
}

function waitingWords({ key, of, waiting, waiter, settles }: Facts): string {
  // What is the plan's own has no name.
  const value = /^[a-z][a-z0-9-]*$/.test(of)
    ? message`\`${key}\` of \`${of}\``
    : message`\`${key}\` of ${of}`;
  if (waiter === 'cut')
    return waiting === 1
      ? message`Give ${value} next: ${waiting} cut can't be placed without it.`
      : message`Give ${value} next: ${waiting} cuts can't be placed without it.`;
  if (waiting === 0)
    return settles === 1
      ? message`Give ${value} next: ${settles} finding is only probable without it.`
      : message`Give ${value} next: ${settles} findings are only probable without it.`;
  return waiting === 1
    ? message`Give ${value} next: ${waiting} shot waits for it.`
    : message`Give ${value} next: ${waiting} shots wait for it.`;
}

const settledWords = (settles: number): string =>
  settles === 0
    ? ''
    : settles === 1
      ? message`It makes ${settles} probable finding sure.`
      : message`It makes ${settles} probable findings sure.`;

const othersWords = (others: number): string =>
  others === 0
    ? ''
    : others === 1
      ? message`${others} other value is missing or uncertain.`
      : message`${others} other values are missing or uncertain.`;

/** The first of what waits, by name. */
function listed(wanted: readonly Asked[]): string {
  const named = wanted.slice(0, MOST_NAMED).map((one) => inLanguage(WANTED[one]));
  const [first = '', second] = named;
  if (second === undefined) return first;
  return wanted.length > MOST_NAMED
    ? message`${first}, ${second} and more`
    : message`${first} and ${second}`;
}

/** What the edit needs before a cut has its place: the rate, the tempo, a length. */
function inEdit(edit: PlanView['edit']): readonly Candidate[] {
  const unknown = edit?.cuts.findIndex(({ track }) => !track.known) ?? -1;
  const track = edit?.cuts[unknown]?.track;
  if (!edit || !track || track.known) return [];
  const [need] = track.needs;
  if (!need) return [];
  const { key, of, at } = need;
  const waiting = edit.cuts.length - unknown;
  return [{ key, of, at, waiting, waiter: 'cut', wantedFor: new Set(), settles: 0 }];
}

/** The entry's key where there is one; a value of the plan itself is told at what waits for it. */
function entryPlace({ at: { file, entry, path }, waiter }: Candidate): Place {
  if (above(entry) !== null && (waiter === 'shot' || path.length > 0))
    return { file, entry, path: [], part: 'key' };
  return waiter === 'cut'
    ? { file, entry: entryAt('edit'), path: [], part: 'key' }
    : { file, entry: WHOLE_FILE, path: [] };
}
