import type { Place } from '../plan/place.ts';
import type { Sec } from '../quantity/brands.ts';
import { KINDS } from '../quantity/index.ts';
import type { Say } from '../say/say.ts';
import { allOf } from '../words/listed.ts';
import { message } from '../words/message.ts';
import { type BetterMode, betterMode, type Gains } from './better-mode.ts';
import type { PlanRule } from './plan-rule.ts';

/** A shot that records in the lesser mode. */
interface InShot extends BetterMode {
  readonly shot: string;
  readonly at: Place;
}

interface Facts {
  /** Of one body, in the same mode. */
  readonly shots: readonly [InShot, ...InShot[]];
}

export const betterRecordingMode: PlanRule<Facts> = {
  name: betterMode.name,
  severity: betterMode.severity,
  docs: {
    when: 'the body has a recording mode that is better in resolution, frame rate or bit rate and worse in none. There is one finding for all shots that use the same mode of a body.',
    why: "More frames allow slow motion and more pixels allow reframing. Both can be discarded later, but what wasn't recorded can't be recovered.",
    remedy:
      'Use the better recording mode, or accept the finding with a reason (card, heat, unwanted crop), in a shot or for the whole plan.',
    bad: [
      {
        says: 'a lower bit rate than the body offers',
        change: { 'shots/frost/record': 'thin-25' },
      },
    ],
    good: [
      { says: 'the best recording mode', change: { 'shots/frost/record': 'full-25' } },
      {
        says: 'a shot that is accepted with it',
        change: {
          'shots/frost/record': 'thin-25',
          'shots/frost/allow': '{ better-recording-mode: { because: the card is small } }',
        },
      },
    ],
  },
  check({ shots }) {
    const byMode = new Map<string, [InShot, ...InShot[]]>();
    for (const { shot, betterMode: found } of shots) {
      if (!found) continue;
      const its = { shot, at: found.at, ...found.facts };
      const key = JSON.stringify([its.body, its.chosen, its.better]);
      const others = byMode.get(key);
      if (others) others.push(its);
      else byMode.set(key, [its]);
    }
    return [...byMode.values()].map((all) => ({
      at: all[0].at,
      facts: { shots: all },
      related: all.slice(1).map(({ shot, at }) => ({ at, words: message`\`record\` of ${shot}` })),
    }));
  },
  words({ shots: [first, ...others] }, say) {
    const { chosen, better, gains, playback } = first;
    const gained = message`It has ${gainsWords(gains, playback, say).join(message` and `)}.`;
    return {
      what: message`A better recording mode is available: \`${better}\` instead of \`${chosen}\`.`,
      why: others.length === 0 ? gained : `${gained} ${alsoWords(others)}`,
    };
  },
  numbers: ({ shots }) => ({ shots: shots.length }),
  beyond(now, then) {
    const known = new Set(then.shots.map(({ shot }) => shot));
    const [first, ...others] = now.shots.filter(({ shot }) => !known.has(shot));
    return first ? { shots: [first, ...others] } : null;
  },
  fixes({ facts: { shots } }) {
    const [{ better }] = shots;
    const sideEffects = priceWords(shots);
    return [
      {
        title:
          shots.length === 1
            ? message`Record with ${better}`
            : message`Record all ${shots.length} shots with ${better}`,
        ...(sideEffects !== undefined && { sideEffects }),
        edits: shots.map(({ at }) => ({ op: 'set', at, text: better })),
      },
    ];
  },
};

/** More shots than this are counted. */
const MOST_NAMED = 3;

const alsoWords = (others: readonly InShot[]): string =>
  others.length <= MOST_NAMED
    ? message`The same goes for ${allOf(others.map(({ shot }) => `\`${shot}\``))}.`
    : message`The same goes for ${others.length} other shots.`;

const gainsWords = (
  { pixels, fps, mbPerS }: Gains,
  playback: number | null,
  say: Say,
): readonly string[] => [
  ...(pixels ? [message`${pixels.width} × ${pixels.height} pixels (room to reframe)`] : []),
  ...(fps === undefined
    ? []
    : [
        playback === null
          ? `${Number(fps.toFixed(3))} fps`
          : message`${Number(fps.toFixed(3))} fps (plays back at ${say.percent(playback)} speed)`,
      ]),
  ...(mbPerS === undefined ? [] : [`${Number(mbPerS.toFixed(1))} Mb/s`]),
];

/** "2 times the data; 1/50 s is then 360°"; undefined where nothing of it is known. */
function priceWords(shots: readonly BetterMode[]): string | undefined {
  const words = shots.flatMap(({ data, shutter }) => [
    ...(data !== null && data > 1 ? [message`${Number(data.toPrecision(2))} times the data`] : []),
    ...(shutter === null
      ? []
      : [
          message`${KINDS.shutter.print({ kind: 'time', seconds: shutter.seconds as Sec })} is then a shutter angle of ${Math.round(shutter.angleDeg)}°`,
        ]),
  ]);
  return words.length > 0 ? [...new Set(words)].join('; ') : undefined;
}
