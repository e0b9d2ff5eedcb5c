/**
 * Where missing checks are written: what all shots need is listed once for every shot, what is done
 * once a day goes with the day's checks, and the rest to the shots that need it.
 */
import { type Field, ifKnown } from '../plan/field.ts';
import { below } from '../plan/place.ts';
import type { PlanEdit, PlanFix } from '../plan/problem.ts';
import { message } from '../words/message.ts';
import { KNOWN_CHECKS } from './checks-called-for.ts';
import type { PlanView, ShotSummary } from './plan-rule.ts';

/** Where a check is added. */
type Home = 'once' | 'every-shot' | 'shots';

/** Fewer shots than this share nothing: their checks are their own. */
const FEWEST_THAT_SHARE = 2;

/** One fix for all shots that lack checks; none where no shot does. */
export function addMissingChecks(view: Pick<PlanView, 'shots' | 'preflight'>): readonly PlanFix[] {
  const lacking = view.shots.filter(({ checks }) => checks.missing.length > 0);
  const [first] = lacking;
  if (!first) return [];
  const homes = new Map(
    KNOWN_CHECKS.map(({ name, daily }) => [name, homeOf(name, daily === true, view.shots)]),
  );
  const missing = new Set(lacking.flatMap(({ checks }) => checks.missing));
  const added = (home: Home): readonly string[] =>
    KNOWN_CHECKS.flatMap(({ name }) =>
      missing.has(name) && homes.get(name) === home ? [name] : [],
    );
  const edits = [
    ...toPlan(view.preflight, added('once'), added('every-shot')),
    ...lacking.flatMap(({ checks }) =>
      toMap(
        checks.own,
        checks.missing.filter((name) => homes.get(name) === 'shots'),
      ),
    ),
  ];
  const title =
    lacking.length === 1
      ? message`Add the missing checks of \`${first.shot}\``
      : message`Add the missing checks of ${lacking.length} shots`;
  return [{ title, edits }];
}

/**
 * A list for every shot is right only where every shot needs the check, and an acceptance stays true
 * only while nothing is added to its shot. A shot that is still being written has no say.
 */
function homeOf(name: string, daily: boolean, shots: readonly ShotSummary[]): Home {
  if (shots.some(({ checks }) => checks.accepted.includes(name))) return 'shots';
  if (daily) return 'once';
  const judged = shots.filter(({ checks }) => checks.judged);
  const isShared =
    judged.length >= FEWEST_THAT_SHARE &&
    judged.every(({ checks }) => checks.calledFor.includes(name)) &&
    judged.filter(({ checks }) => checks.missing.includes(name)).length >= FEWEST_THAT_SHARE;
  return isShared ? 'every-shot' : 'shots';
}

function toPlan(
  preflight: PlanView['preflight'],
  once: readonly string[],
  everyShot: readonly string[],
): readonly PlanEdit[] {
  if (once.length + everyShot.length === 0) return [];
  const said = ifKnown(preflight);
  if (!said || (said.once.state === 'missing' && said['every-shot'].state === 'missing')) {
    // Written as one: two edits would each make the section.
    const parts = [
      ...(once.length > 0 ? [`once:\n${once.map((name) => `  ${name}: open`).join('\n')}`] : []),
      ...(everyShot.length > 0 ? [`every-shot:\n${indentedItems(everyShot)}`] : []),
    ];
    return [{ op: 'set', at: preflight.at, text: parts.join('\n') }];
  }
  const { once: states, 'every-shot': list } = said;
  const daily = toMap({ at: states.at, count: ifKnown(states)?.size ?? 0 }, once);
  const shared = toList(list, everyShot);
  // A new key comes behind what is added to the one before it, at the same end of the section.
  return states.state === 'missing' ? [...shared, ...daily] : [...daily, ...shared];
}

const indentedItems = (names: readonly string[]): string =>
  names.map((name) => `  - ${name}`).join('\n');

/** Checks behind those of a mapping; all at once where none is yet. */
function toMap(
  { at, count }: ShotSummary['checks']['own'],
  names: readonly string[],
): readonly PlanEdit[] {
  if (names.length === 0) return [];
  if (count === 0)
    return [{ op: 'set', at, text: names.map((name) => `${name}: open`).join('\n') }];
  return names.map((name) => ({ op: 'set', at: below(at, name), text: 'open' }));
}

/** The same for a list. */
function toList(list: Field<readonly unknown[]>, names: readonly string[]): readonly PlanEdit[] {
  if (names.length === 0) return [];
  const { at } = list;
  if (list.state !== 'known' || list.value.length === 0)
    return [{ op: 'set', at, text: names.map((name) => `- ${name}`).join('\n') }];
  const { length } = list.value;
  return names.map((text, index) => ({ op: 'set', at: below(at, length + index), text }));
}
