import type { Need } from '../figures/figure.ts';
import type { Asked, NeedOf } from '../figures/needs.ts';
import { above, entryAt, WHOLE_FILE } from '../plan/entry-id.ts';
import type { EntryId, Place } from '../plan/place.ts';

import { inLanguage, later, message } from '../words/message.ts';
import type { PlanRule, PlanView } from './plan-rule.ts';
import type { Observation } from './rule.ts';

interface Facts {
  /** Keys that are missing, and whose they are. */
  readonly keys: readonly string[];
  readonly of: string;
  /** How many shots wait for them; null: they are the shot's own. */
  readonly waiting: number | null;
  /** What waits. */
  readonly waiter: 'shot' | 'cut';
  /** What they are missed for in a shot. */
  readonly wantedFor: readonly Asked[];
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
  life: later`whether the film outlasts the take`,
};
/** Named of what waits: of more it is enough to know that there are. */
const MOST_NAMED = 2;

export const notKnown: PlanRule<Facts> = {
  name: 'not-known',
  severity: 'note',
  docs: {
    when: 'a value that calculations need is missing. There is one finding for each entry that lacks it, with the number of shots affected.',
    why: "A value is calculated or it is unknown; it is never guessed. Everything that doesn't need the missing value is still calculated.",
    remedy: 'Look the value up or measure it with this rig. A plan may have gaps.',
    bad: [
      { says: 'a lens without its glass loss', change: { 'kit/lenses/macro-100/loss': null } },
      { says: 'a shot without its shutter', change: { 'shots/frost/shutter': null } },
    ],
    good: [{ says: 'everything that calculations need', change: {} }],
  },
  check({ shots, edit }) {
    const byEntry = new Map<string, { needs: Map<string, NeedOf>; shots: Set<string> }>();
    const observations: Observation<Facts>[] = [];
    for (const { shot, at, needs } of shots) {
      const own = needs.filter((need) => isOf(need, at));
      if (own.length > 0)
        observations.push({
          at: { ...at, part: 'key' },
          facts: {
            keys: keysOf(own),
            of: shot,
            waiting: null,
            waiter: 'shot',
            wantedFor: wantedFor(own),
          },
        });
      for (const need of needs) {
        if (isOf(need, at)) continue;
        const entry = `${need.at.file} ${need.at.entry}`;
        const group = byEntry.get(entry) ?? { needs: new Map(), shots: new Set() };
        group.needs.set(need.at.path.join('.'), need);
        group.shots.add(shot);
        byEntry.set(entry, group);
      }
    }
    for (const { needs, shots: waiting } of byEntry.values()) {
      const list = [...needs.values()];
      const [first] = list;
      if (!first) continue;
      const { file, entry } = first.at;
      observations.push({
        at: entryPlace(file, entry, first.at),
        facts: {
          keys: keysOf(list),
          of: first.of,
          waiting: waiting.size,
          waiter: 'shot',
          wantedFor: wantedFor(list),
        },
      });
    }
    return [...observations, ...inEdit(edit)];
  },
  words: ({ keys, of, waiting, waiter, wantedFor }) => ({
    what: message`Unknown: ${keys.map((key) => `\`${key}\``).join(', ')} of ${of}.`,
    why:
      waiting === null
        ? message`Still unknown without it: ${listed(wantedFor)}.`
        : waiter === 'cut'
          ? cutsWait(waiting)
          : shotsWait(waiting, listed(wantedFor)),
  }),
  numbers: ({ waiting, waiter }): Readonly<Record<string, number>> =>
    waiting === null ? {} : { [`${waiter}sWaiting`]: waiting },
};

const shotsWait = (waiting: number, figures: string): string =>
  waiting === 1
    ? message`Still unknown in ${waiting} shot: ${figures}.`
    : message`Still unknown in ${waiting} shots: ${figures}.`;

const cutsWait = (waiting: number): string =>
  waiting === 1
    ? message`Without it ${waiting} cut can't be placed.`
    : message`Without it ${waiting} cuts can't be placed.`;

/** The first of what is waited for, by name. */
function listed(wanted: readonly Asked[]): string {
  const named = wanted.slice(0, MOST_NAMED).map((one) => inLanguage(WANTED[one]));
  const [first = '', second] = named;
  if (second === undefined) return first;
  return wanted.length > MOST_NAMED
    ? message`${first}, ${second} and more`
    : message`${first} and ${second}`;
}

const wantedFor = (needs: readonly NeedOf[]): readonly Asked[] => [
  ...new Set(needs.flatMap((need) => need.wantedFor)),
];

/** What the edit needs before a cut has its place: the rate, the tempo, a length. */
function inEdit(edit: PlanView['edit']): readonly Observation<Facts>[] {
  const unknown = edit?.cuts.findIndex(({ track }) => !track.known) ?? -1;
  const track = edit?.cuts[unknown]?.track;
  if (!edit || !track || track.known) return [];
  const [need] = track.needs;
  if (!need) return [];
  const { file, entry } = need.at;
  const waiting = edit.cuts.length - unknown;
  return [
    {
      at:
        above(entry) !== null && need.at.path.length > 0
          ? entryPlace(file, entry, need.at)
          : { file, entry: entryAt('edit'), path: [], part: 'key' },
      facts: { keys: [need.key], of: need.of, waiting, waiter: 'cut', wantedFor: [] },
    },
  ];
}

const isOf = (need: Need, shot: Place): boolean =>
  need.at.file === shot.file && need.at.entry === shot.entry;

const keysOf = (needs: readonly Need[]): readonly string[] => [
  ...new Set(needs.map((need) => need.key)),
];

/** The entry's key where there is one; for fields of the plan itself, the whole file. */
const entryPlace = (file: string, entry: EntryId, at: Place): Place =>
  above(entry) === null
    ? { ...at, entry: WHOLE_FILE, path: [] }
    : { file, entry, path: [], part: 'key' };
