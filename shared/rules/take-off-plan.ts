import { ifKnown } from '../plan/field.ts';
import type { Clip } from '../plan/generated/types.ts';
import type { Say } from '../say/say.ts';
import { allOf } from '../words/listed.ts';
import { message } from '../words/message.ts';
import { accept } from './acceptance.ts';
import { apertureNotOnLens } from './aperture-not-on-lens.ts';
import { depthShort, depthThere } from './depth-short.ts';
import { diffractionEatsDetail } from './diffraction-eats-detail.ts';
import { exposureOff } from './exposure-off.ts';
import { highlightClips } from './highlight-clips.ts';
import { isoOutOfRange } from './iso-out-of-range.ts';
import { lampFlicker } from './lamp-flicker.ts';
import { lensReflected } from './lens-reflected.ts';
import { smear } from './motion-blur.ts';
import { withoutSilenced } from './precedence.ts';
import { type Finding, type Observation, relatedIn } from './rule.ts';
import type { ShotRule, ShotView } from './shot-rule.ts';
import { shutterTooSlow } from './shutter-too-slow.ts';
import { sourceTooSmall } from './source-too-small.ts';
import { type Otherwise, settingWords, takenOtherwise } from './taken.ts';

/** The rules about what the settings of a take decide. */
const RULES: readonly ShotRule<unknown>[] = [
  apertureNotOnLens,
  depthShort,
  diffractionEatsDetail,
  exposureOff,
  isoOutOfRange,
  highlightClips,
  shutterTooSlow,
  lampFlicker,
  smear,
  lensReflected,
  sourceTooSmall,
];
const JUDGED = new Map(RULES.map((rule) => [rule.name, rule]));

/** The example's shot with a take. */
const withTake = (take: string): Readonly<Record<string, string>> => ({
  'shots/frost/allow': '{ check-open: { because: a test clip } }',
  clips: `{ frost: [${take}] }`,
});

/** What a take may be worse than planned and still be the same finding. */
const NO_WORSE = 1.02;

/** Nobody sees less. */
const RIGHT_STOPS = 0.1;

type Loss = Pick<Finding, 'rule' | 'facts'>;

interface Facts {
  /** As counted on the day, else from 1 in the list. */
  readonly take: number;
  readonly otherwise: readonly Otherwise[];
  /** What no longer holds, or is worse than planned. */
  readonly lost: readonly Loss[];
  /** Figures of the take that its settings changed; null: not known, or as planned. */
  readonly depth: { readonly thereMm: number; readonly neededMm: number } | null;
  readonly errorStops: number | null;
  readonly smearPx: number | null;
}

export const takeOffPlan: ShotRule<Facts> = {
  name: 'take-off-plan',
  severity: 'note',
  docs: {
    when: 'a take was shot with other settings than planned. A note; a warning where a kept take no longer meets what the shot needs. Rejected takes are not judged.',
    why: 'The figures of the shot are calculated again with the settings in `set` of the clip, and judged by the same rules. The rest of the setup is assumed to be as planned.',
    remedy:
      'Shoot the take again while the setup is in place, or keep it knowingly and accept this with a reason. If all takes are to be shot so, change the plan.',
    bad: [
      {
        says: 'a kept take two stops more open',
        change: withTake(
          '{ file: media/0001.mp4, verdict: keep, set: { aperture: f/4, iso: 320 } }',
        ),
      },
      {
        says: 'a take with another white balance',
        change: withTake('{ file: media/0001.mp4, set: { white-balance: 4300 K } }'),
      },
    ],
    good: [
      {
        says: 'settings as planned',
        change: withTake('{ file: media/0001.mp4, verdict: keep, set: { aperture: f/8 } }'),
      },
      {
        says: 'a rejected take',
        change: withTake('{ file: media/0001.mp4, verdict: reject, set: { aperture: f/2.8 } }'),
      },
    ],
  },
  check(view) {
    const { bench } = view;
    if (!bench.hasClips) return [];
    const planned = new Map<string, Finding>();
    let isJudged = false;
    return bench.source.reader.clipsOf(bench.shot).flatMap((clip): Observation<Facts>[] => {
      const verdict = ifKnown(clip.verdict);
      const taken = verdict === 'reject' ? null : takenOtherwise(view, clip);
      if (!taken) return [];
      if (!isJudged) for (const one of judged(view)) planned.set(one.rule, one);
      isJudged = true;
      const lost = judged(taken.view).filter((one) => isWorse(one, planned.get(one.rule)));
      const isLoud = lost.some(({ severity }) => severity === 'warning' || severity === 'error');
      return [
        {
          at: taken.at,
          severity: verdict === 'keep' && isLoud ? 'warning' : 'note',
          facts: {
            take: ifKnown(clip.take) ?? placeInList(clip) + 1,
            otherwise: taken.otherwise,
            lost: lost.map(({ rule, facts }) => ({ rule, facts })),
            ...figuresThatMatter(view, taken.view),
          },
          related: taken.otherwise.map(({ key }) => ({
            at: bench.fields[key].at,
            words: message`\`${key}\` as planned`,
          })),
        },
      ];
    });
  },
  words(facts, say) {
    const { take, otherwise, lost, depth } = facts;
    const of = (side: 'taken' | 'planned') =>
      allOf(otherwise.map((one) => settingWords(one.key, one[side], say)));
    const isDepth = otherwise.length === 1 && lost.some(isShort);
    const others = isDepth ? lost.filter((one) => !isShort(one)) : lost;
    const [there, needed] = depth ? say.lengths2(depth.thereMm, depth.neededMm) : ['', ''];
    const told = [...lostWords(others, say), ...figureWords(facts, say)];
    return {
      what:
        isDepth && depth
          ? message`Take ${take} was shot at ${of('taken')}, planned ${of('planned')}: depth ${there} of ${needed} needed.`
          : otherwise.length > 2
            ? message`Take ${take} was shot with ${otherwise.length} settings otherwise than planned.`
            : message`Take ${take} was shot at ${of('taken')}, planned ${of('planned')}.`,
      why:
        (otherwise.length > 2
          ? `${message`It was shot at ${of('taken')}, planned ${of('planned')}.`} `
          : '') + told.join(' '),
    };
  },
  numbers: ({ take, depth, errorStops, smearPx }) => ({
    take,
    ...(depth && { depthMm: depth.thereMm, neededMm: depth.neededMm }),
    ...(errorStops !== null && { exposureErrorStops: errorStops }),
    ...(smearPx !== null && { smearPx }),
  }),
};

/** From 0; one that can't be read counts too. */
const placeInList = ({ set }: Clip): number =>
  set.at.path.find((step) => typeof step === 'number') ?? 0;

const isShort = ({ rule }: Loss): boolean => rule === depthShort.name;

/** What the rules find in a shot, less what it or the plan accepts. */
function judged(view: ShotView): readonly Finding[] {
  const { bench } = view;
  const found = RULES.flatMap((rule) =>
    rule.check(view).map(
      (seen): Finding => ({
        rule: rule.name,
        severity: seen.severity ?? rule.severity,
        at: seen.at,
        shot: bench.shot,
        facts: seen.facts,
        related: relatedIn(seen),
      }),
    ),
  );
  if (found.length === 0) return found;
  const own = { name: bench.shot, allow: bench.fields.allow };
  const house = bench.source.reader.plan('allow');
  const { findings } = accept(found, own, house, (name) => JUDGED.get(name));
  return withoutSilenced(findings.filter(({ rule }) => JUDGED.has(rule)));
}

function isWorse(now: Finding, then: Finding | undefined): boolean {
  if (!then) return true;
  const rule = JUDGED.get(now.rule);
  const [size, before] = [rule?.size?.(now.facts)?.value, rule?.size?.(then.facts)?.value];
  if (rule?.side && rule.side(now.facts) !== rule.side(then.facts)) return true;
  return size !== undefined && before !== undefined && size > before * NO_WORSE;
}

function figuresThatMatter(
  { figures: then }: ShotView,
  { figures: now }: ShotView,
): Pick<Facts, 'depth' | 'errorStops' | 'smearPx'> {
  const [thereMm, neededMm] = [numberOf(depthThere(now)), numberOf(now.depthMm.needed)];
  const isSameDepth =
    thereMm === numberOf(depthThere(then)) && neededMm === numberOf(then.depthMm.needed);
  const other = (key: 'exposureErrorStops' | 'smearPx'): number | null => {
    const value = numberOf(now[key]);
    return value === numberOf(then[key]) ? null : value;
  };
  return {
    depth: thereMm === null || neededMm === null || isSameDepth ? null : { thereMm, neededMm },
    errorStops: other('exposureErrorStops'),
    smearPx: other('smearPx'),
  };
}

const numberOf = (figure: { readonly known: boolean; readonly value?: unknown }): number | null =>
  figure.known && typeof figure.value === 'number' ? figure.value : null;

/** What the rules say of the take, the first two. */
function lostWords(lost: readonly Loss[], say: Say): readonly string[] {
  const [first, second, ...more] = lost.flatMap(({ rule, facts }) => {
    const words = JUDGED.get(rule)?.words(facts, say);
    return words ? [words.what] : [];
  });
  return [
    ...(first === undefined ? [] : [first]),
    ...(second === undefined ? [] : [second]),
    ...(more.length === 0 ? [] : [message`And ${more.length} more.`]),
  ];
}

/** The figures that the losses don't tell already. */
function figureWords({ lost, depth, errorStops, smearPx }: Facts, say: Say): readonly string[] {
  const isTold = (rule: string) => lost.some((one) => one.rule === rule);
  const words: string[] = [];
  if (depth && !isTold(depthShort.name)) {
    const [there, needed] = say.lengths2(depth.thereMm, depth.neededMm);
    words.push(message`depth ${there} of ${needed} needed`);
  }
  if (errorStops !== null && !isTold(exposureOff.name))
    words.push(
      Math.abs(errorStops) < RIGHT_STOPS
        ? message`exposure correct`
        : errorStops > 0
          ? message`exposure ${say.stops(errorStops)} over`
          : message`exposure ${say.stops(errorStops)} under`,
    );
  if (smearPx !== null && smearPx > 0 && !isTold(smear.name))
    words.push(message`motion blur ${say.pixels(smearPx)}`);
  const holds = lost.length === 0 ? [message`What the shot needs still holds.`] : [];
  return words.length === 0
    ? holds
    : [...holds, message`With these settings: ${words.join(', ')}.`];
}
