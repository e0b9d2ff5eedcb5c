import { entryAt } from '../plan/entry-id.ts';
import { asAside } from '../words/aside.ts';
import { allOf } from '../words/listed.ts';
import { inLanguage, message } from '../words/message.ts';
import { addMissingChecks } from './add-checks.ts';
import { KNOWN_CHECKS } from './checks-called-for.ts';
import type { PlanRule } from './plan-rule.ts';

interface Facts {
  /** Every shot that lacks checks, with their names. */
  readonly shots: readonly { readonly shot: string; readonly checks: readonly string[] }[];
}

/** Checks that a shot may need; a plan may add others under names of its own. */
const listed = `Known checks are ${KNOWN_CHECKS.map(({ name, what }) => `\`${name}\` (${what.charAt(0).toLowerCase()}${what.slice(1)})`).join(', ')}; you may add checks of your own`;

export const checkMissing: PlanRule<Facts> = {
  name: 'check-missing',
  severity: 'warning',
  docs: {
    when: 'checks that shots need are missing from the checklists of those shots, from `every-shot` and from `once`. There is one finding for the whole plan. The hover of a shot lists what that shot lacks.',
    why: 'A film that lasts half a minute leaves no second take after a forgotten setting. The checks follow from the subject, the light, the move and the rig.',
    remedy: `Add the checks and tick them on the day. The fix adds what all shots need to \`every-shot\`, checks of the day to \`once\`, and the rest to the shots. ${listed}.`,
    bad: [{ says: 'a film without its checks', change: { 'shots/skin/preflight': null } }],
    good: [
      { says: 'all of them', change: {} },
      {
        says: 'a shot that is accepted without them',
        change: {
          'shots/skin/preflight': null,
          'shots/skin/allow': '{ check-missing: { because: a test of the flow } }',
        },
      },
    ],
  },
  check({ file, shots, preflight }) {
    const lacking = shots.filter(({ checks }) => checks.missing.length > 0);
    if (lacking.length === 0) return [];
    const entry = preflight.state === 'missing' ? 'shots' : 'preflight';
    return [
      {
        at: { file, entry: entryAt(entry), path: [], part: 'key' as const },
        facts: {
          shots: lacking.map(({ shot, checks }) => ({ shot, checks: checks.missing })),
        },
      },
    ];
  },
  words({ shots }) {
    const names = namesIn(shots);
    return {
      what: whatIs(names, shots),
      why:
        names.length === 1
          ? message`Missing: ${plainWords(names)}. Add it and tick it on the day. In an editor, the hover of a shot says what calls for it.`
          : message`Missing: ${plainWords(names)}. Add them and tick them on the day. In an editor, the hover of a shot says what calls for each.`,
    };
  },
  numbers: ({ shots }) => ({ missing: namesIn(shots).length, shots: shots.length }),
  beyond(now, then) {
    const known = new Map(then.shots.map(({ shot, checks }) => [shot, checks]));
    const shots = now.shots.flatMap(({ shot, checks }) => {
      const more = checks.filter((name) => !known.get(shot)?.includes(name));
      return more.length > 0 ? [{ shot, checks: more }] : [];
    });
    return shots.length > 0 ? { shots } : null;
  },
  fixes: (_, view) => addMissingChecks(view),
};

/** Each check once, in the order of the list of known checks. */
function namesIn(shots: Facts['shots']): readonly string[] {
  const missing = new Set(shots.flatMap(({ checks }) => checks));
  return KNOWN_CHECKS.flatMap(({ name }) => (missing.has(name) ? [name] : []));
}

/** Checks as orders within a sentence, those of the list of known checks. */
const plainWords = (names: readonly string[]): string =>
  KNOWN_CHECKS.filter(({ name }) => names.includes(name))
    // What follows the order is for the list itself.
    .map(({ what }) => asAside(inLanguage(what).split(/[;.]/)[0]!))
    .join('; ');

/** More shots than this are counted. */
const MOST_NAMED = 3;
/** Room for the names in a message's first sentence, characters. */
const ROOM = 48;

function whatIs(names: readonly string[], shots: Facts['shots']): string {
  const named = allOf(shots.map(({ shot }) => `\`${shot}\``));
  if (shots.length <= MOST_NAMED && (shots.length === 1 || named.length <= ROOM))
    return names.length === 1
      ? message`A check is missing in ${named}: \`${names.join()}\`.`
      : message`${names.length} checks are missing in ${named}.`;
  return names.length === 1
    ? message`A check is missing in ${shots.length} shots: \`${names.join()}\`.`
    : message`${names.length} checks are missing in ${shots.length} shots.`;
}
