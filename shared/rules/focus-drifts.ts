import { substitute } from '../figures/bench.ts';
import { figuresOf } from '../figures/compute.ts';
import { ifKnown } from '../plan/field.ts';
import { setTo } from '../plan/fixes.ts';
import { below } from '../plan/place.ts';
import type { PlanFix } from '../plan/problem.ts';
import { message } from '../words/message.ts';
import { relatedTo, type ShotRule } from './shot-rule.ts';

/** Accuracy of the depth. */
const DEAD_BAND = 0.05;

interface Facts {
  readonly travelMm: number;
  readonly depthMm: number;
  readonly seconds: number;
}

export const focusDrifts: ShotRule<Facts> = {
  name: 'focus-drifts',
  severity: 'warning',
  docs: {
    when: 'a move shifts the subject along the lens axis by more than the depth of field.',
    why: 'A slide along a tilted plane shifts focus by speed × duration × sine of the tilt. At 2 mm/s for 60 s, a film tilted 4° drifts 8.4 mm. A push-in moves entirely along the axis.',
    remedy: 'Angle the slider to match the subject plane, shorten the move, or pull focus with it.',
    bad: [
      {
        says: 'a long slide along a tilted film',
        change: {
          'shots/skin/move': '{ kind: slide, speed: 2.5 mm/s, along: upright }',
          'preflight/once/move-rehearsed': 'open',
          'shots/skin/take': '{ duration: 35 s }',
          'shots/skin/shutter': '1/200 s',
          'shots/skin/iso': 'auto',
          'kit/bodies/body-a/iso/usable-to': '12800',
        },
      },
    ],
    good: [
      {
        says: 'the slider angled to match the film',
        change: {
          'shots/skin/move': '{ kind: slide, speed: 0.5 mm/s, along: upright, rail-angle: 4 deg }',
          'preflight/once/move-rehearsed': 'open',
        },
      },
    ],
  },
  check({ bench, figures }) {
    const { travelMm, usableDepthMm } = figures;
    if (!travelMm.known || !usableDepthMm.known) return [];
    if (travelMm.value <= usableDepthMm.value * (1 + DEAD_BAND)) return [];
    const at = below(bench.fields.move.at, 'speed');
    return [
      {
        at,
        facts: {
          travelMm: travelMm.value,
          depthMm: usableDepthMm.value,
          seconds: movingSeconds(bench) ?? 0,
        },
        related: () => relatedTo(at, travelMm),
      },
    ];
  },
  words: ({ travelMm, depthMm, seconds }, say) => {
    const [travel, depth] = say.lengths2(travelMm, depthMm);
    return {
      what: message`Focus will drift ${travel} along the lens axis; depth of field is ${depth}.`,
      ...(seconds > 0 && {
        why: message`The move shifts the subject that far in ${say.seconds(seconds)}.`,
      }),
    };
  },
  size: ({ travelMm, depthMm }) => ({ kind: 'length', value: travelMm - depthMm }),
  numbers: ({ travelMm, depthMm }) => ({ travelMm, depthMm }),
  fixes({ facts: { travelMm, depthMm, seconds } }, { bench, figures }) {
    const { move, take } = bench.fields;
    if (move.state !== 'known') return [];
    const fixes: PlanFix[] = [];
    const tilt = bench.tiltRad.known ? (bench.tiltRad.value * 180) / Math.PI : 0;
    if (ifKnown(move.value.kind) === 'slide' && tilt !== 0) {
      const text = `${Number(tilt.toFixed(2))} deg`;
      fixes.push(
        setTo(
          message`Angle the slider ${text.replace(' deg', '°')} to match the subject plane`,
          below(move.at, 'rail-angle'),
          text,
        ),
      );
    }
    // The depth that the subject itself needs is kept; the move may use the rest.
    const still = figuresOf(
      substitute(bench, { fields: { ...bench.fields, move: { state: 'missing', at: move.at } } }),
    );
    const own = still.depthMm.needed.known ? still.depthMm.needed.value : 0;
    const shorter = Math.floor((seconds * Math.max(0, depthMm - own)) / travelMm);
    const timed = move.value.duration.state === 'missing' ? take : move;
    const at = below(timed.at, 'duration');
    if (shorter >= 1 && figures.travelMm.known)
      fixes.push(setTo(message`Limit the move to ${shorter} s`, at, `${shorter} s`));
    return fixes;
  },
};

function movingSeconds({
  fields: { move, take },
}: Parameters<typeof focusDrifts.check>[0]['bench']) {
  const own = move.state === 'known' ? ifKnown(move.value.duration) : undefined;
  return own ?? (take.state === 'known' ? ifKnown(take.value.duration) : undefined);
}
