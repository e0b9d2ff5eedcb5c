import { type Bench, substitute } from '../figures/bench.ts';
import { figuresOf } from '../figures/compute.ts';
import { known } from '../figures/figure.ts';
import type { ShotFigures } from '../figures/shot-figures.ts';
import { ifKnown } from '../plan/field.ts';
import { setTo } from '../plan/fixes.ts';
import { below } from '../plan/place.ts';
import { message } from '../words/message.ts';
import { relatedTo, type ShotRule, type ShotView } from './shot-rule.ts';

/** Accuracy of the depth. */
const DEAD_BAND = 0.05;

interface Facts {
  /** What the frames have sharp together, and what the subject needs, mm. */
  readonly depthMm: number;
  readonly neededMm: number;
  /** What limits it. */
  readonly by:
    | { readonly kind: 'frames'; readonly frames: number; readonly stepMm: number }
    | { readonly kind: 'rail'; readonly rail: string; readonly travelMm: number }
    | { readonly kind: 'ring' };
  /** null: not named. */
  readonly subject: string | null;
}

export const stackShort: ShotRule<Facts> = {
  name: 'stack-short',
  severity: 'warning',
  docs: {
    when: "the frames of a focus stack don't reach the farthest point of the subject. They are too few, the rail is too short, or the ring can't be turned that far.",
    why: 'What no frame has sharp stays soft in the finished picture, and a soft band in a sharp subject is seen at once. The stack begins at the nearest point. Each frame adds the depth of field without the overlap.',
    remedy:
      'Take more frames, stop down, use a longer rail, or move the rig by the rail instead of turning the ring.',
    bad: [
      {
        says: 'too few frames',
        change: {
          'subjects/frost-plate/depth': '20 mm',
          'shots/frost/stack': '{ with: rail, frames: 3, settle: 2 s }',
          'preflight/once/stack-ends-checked': 'open',
        },
      },
      {
        says: 'a rail that is too short',
        change: {
          'subjects/frost-plate/depth': '20 mm',
          'kit/rails': '{ stub: { travel: 8 mm } }',
          'rigs/bench/support': '{ rail: stub }',
          'shots/frost/stack': '{ with: rail, settle: 2 s }',
          'preflight/once/stack-ends-checked': 'open',
        },
      },
    ],
    good: [
      {
        says: 'as many frames as it needs',
        change: {
          'subjects/frost-plate/depth': '20 mm',
          'shots/frost/stack': '{ with: rail, settle: 2 s }',
          'preflight/once/stack-ends-checked': 'open',
        },
      },
    ],
  },
  check(view) {
    const { bench, figures } = view;
    const { wholeDepthMm: needed, stackDepthMm } = figures;
    const found = shortest(view);
    if (!bench.stack || !found || !needed.known || !stackDepthMm.known) return [];
    if (found.depthMm >= needed.value * (1 - DEAD_BAND)) return [];
    const at = below(bench.stack.at, found.by.kind === 'frames' ? 'frames' : 'with');
    return [
      {
        at,
        facts: { ...found, neededMm: needed.value, subject: bench.subject?.name ?? null },
        related: () => relatedTo(at, needed, stackDepthMm),
      },
    ];
  },
  words: ({ depthMm, neededMm, by, subject }, say) => {
    const [reached, needed] = say.lengths2(depthMm, neededMm);
    return {
      what: message`The focus stack covers ${reached}; ${subject ?? message`the subject`} needs ${needed}.`,
      why:
        by.kind === 'frames'
          ? message`It has ${by.frames} frames, ${say.length(by.stepMm)} apart.`
          : by.kind === 'rail'
            ? message`\`${by.rail}\` moves ${say.length(by.travelMm)}.`
            : message`The focus ring can't move the plane of focus farther at this magnification.`,
    };
  },
  size: ({ depthMm, neededMm }) => ({ kind: 'length', value: neededMm - depthMm }),
  numbers: ({ depthMm, neededMm }) => ({ depthMm, neededMm }),
  fixes({ facts: { by } }, { bench }) {
    if (!bench.stack || by.kind === 'rail') return [];
    const { at } = bench.stack;
    if (by.kind === 'ring')
      return [setTo(message`Move the rig by its rail`, below(at, 'with'), 'rail')];
    const frames = framesNeeded(bench);
    return frames === undefined
      ? []
      : [setTo(message`Take ${frames} frames`, below(at, 'frames'), String(frames))];
  },
};

/** What limits the stack most, and how deep it is then. */
function shortest({ bench, figures }: ShotView): Pick<Facts, 'depthMm' | 'by'> | null {
  const { stackDepthMm, stackTravelMm, stackFrames, stackStepMm } = figures;
  if (!bench.stack || !stackDepthMm.known || !stackTravelMm.known) return null;
  const rail = railOf(bench);
  if (rail && rail.travelMm < stackTravelMm.value)
    return {
      depthMm: stackDepthMm.value - stackTravelMm.value + rail.travelMm,
      by: { kind: 'rail', ...rail },
    };
  const written = bench.stack.frames;
  const isWritten = written.known && written.value !== undefined;
  // Fewer marks than frames: the ring ended before.
  const isFull = isWritten && stackFrames.known && stackFrames.value >= written.value!;
  return {
    depthMm: stackDepthMm.value,
    by:
      isFull && stackFrames.known && stackStepMm.known
        ? { kind: 'frames', frames: stackFrames.value, stepMm: stackStepMm.value }
        : { kind: 'ring' },
  };
}

function railOf({ stack, carriers: { rail } }: Bench) {
  if (!stack?.moves.known || stack.moves.value !== 'rail' || !rail) return null;
  const travelMm = ifKnown(rail.fields.travel);
  return travelMm === undefined ? null : { rail: rail.name, travelMm };
}

/** As many as the stack would have with none written. */
function framesNeeded(bench: Bench): number | undefined {
  if (!bench.stack) return undefined;
  const { stackFrames }: ShotFigures = figuresOf(
    substitute(bench, { stack: { ...bench.stack, frames: known(undefined) } }),
  );
  return stackFrames.known ? stackFrames.value : undefined;
}
