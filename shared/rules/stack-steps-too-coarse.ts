import { type Bench, substitute } from '../figures/bench.ts';
import { figuresOf } from '../figures/compute.ts';
import { known } from '../figures/figure.ts';
import { stackStepMm as stepOf } from '../optics/focus-stack.ts';
import { ifKnown } from '../plan/field.ts';
import { setTo } from '../plan/fixes.ts';
import { below } from '../plan/place.ts';
import type { PlanFix } from '../plan/problem.ts';
import { message } from '../words/message.ts';
import { relatedTo, type ShotRule } from './shot-rule.ts';
import { softerPrice } from './softer.ts';

/** Accuracy of the depth. */
const DEAD_BAND = 0.05;
/** Less overlap than this is no margin for a knob turned by hand; our advice. */
const LEAST_OVERLAP = 0.1;

interface Facts {
  readonly rail: string;
  readonly smallestMm: number;
  /** What the overlap asks for. */
  readonly stepMm: number;
  readonly depthMm: number;
  readonly overlap: number;
}

export const stackStepsTooCoarse: ShotRule<Facts> = {
  name: 'stack-steps-too-coarse',
  severity: 'warning',
  docs: {
    when: 'the smallest step of the rail is larger than the step that a focus stack needs. A warning where it is larger than the depth of field too, so that soft bands remain; else a note.',
    why: 'The step is the depth of field without the overlap. At 1x and f/8 that is only some tenths of a millimetre, and at 3x some hundredths. Few knobs can be set that finely.',
    remedy: 'Stop down, overlap less, frame wider, or use a rail with a finer step.',
    bad: [
      {
        says: 'a knob with marks 4 mm apart',
        change: {
          'kit/rails': '{ coarse: { travel: 100 mm, smallest-step: 4 mm } }',
          'rigs/bench/support': '{ rail: coarse }',
          'shots/frost/stack': '{ with: rail, settle: 2 s }',
          'preflight/once/stack-ends-checked': 'open',
        },
      },
    ],
    good: [
      {
        says: 'a knob with fine marks',
        change: {
          'kit/rails': '{ fine: { travel: 100 mm, smallest-step: 0.05 mm } }',
          'rigs/bench/support': '{ rail: fine }',
          'shots/frost/stack': '{ with: rail, settle: 2 s }',
          'preflight/once/stack-ends-checked': 'open',
        },
      },
    ],
  },
  check({ bench, figures }) {
    const { stack } = bench;
    const { usableDepthMm: depth } = figures;
    const smallest = smallestOf(bench);
    if (!stack?.overlap.known || !smallest || !depth.known) return [];
    const stepMm = stepOf(depth.value, stack.overlap.value);
    if (smallest.smallestMm <= stepMm * (1 + DEAD_BAND)) return [];
    const at = below(stack.at, 'with');
    return [
      {
        at,
        severity: smallest.smallestMm > depth.value ? 'warning' : 'note',
        facts: { ...smallest, stepMm, depthMm: depth.value, overlap: stack.overlap.value },
        related: () => relatedTo(at, depth),
      },
    ];
  },
  words: ({ rail, smallestMm, stepMm, depthMm, overlap }, say) => {
    const [smallest, step] = say.lengths2(smallestMm, stepMm);
    return {
      what: message`\`${rail}\` moves at least ${smallest}; the focus stack needs steps of ${step}.`,
      why:
        smallestMm > depthMm
          ? message`Depth of field is ${say.length(depthMm)}, so soft bands remain between the frames.`
          : message`Frames then overlap by ${say.percent(1 - smallestMm / depthMm)} instead of ${say.percent(overlap)}.`,
    };
  },
  size: ({ smallestMm, stepMm }) => ({ kind: 'length', value: smallestMm - stepMm }),
  numbers: ({ smallestMm, stepMm, depthMm }) => ({ smallestMm, stepMm, depthMm }),
  fixes({ facts }, { bench }) {
    return [...overlapLess(bench, facts), ...stopDown(bench, facts)];
  },
};

function smallestOf({ stack, carriers: { rail } }: Bench) {
  if (!stack?.moves.known || stack.moves.value !== 'rail' || !rail) return null;
  const smallestMm = ifKnown(rail.fields['smallest-step']);
  return smallestMm === undefined ? null : { rail: rail.name, smallestMm };
}

function overlapLess({ stack }: Bench, { smallestMm, depthMm }: Facts): readonly PlanFix[] {
  const left = Math.floor(100 * (1 - smallestMm / depthMm));
  return stack && left >= 100 * LEAST_OVERLAP
    ? [setTo(message`Set overlap to ${left}%`, below(stack.at, 'overlap'), `${left} %`)]
    : [];
}

/** The widest mark at which the rail's smallest step is fine enough. */
function stopDown(bench: Bench, { smallestMm, overlap }: Facts): readonly PlanFix[] {
  const { marked, marksOnLens } = bench;
  if (!marked.known) return [];
  for (const mark of marksOnLens) {
    if (mark <= marked.value) continue;
    const stopped = figuresOf(substitute(bench, { marked: known(mark) }));
    const { usableDepthMm: depth } = stopped;
    if (depth.known && smallestMm <= stepOf(depth.value, overlap))
      return [
        setTo(
          message`Stop down to f/${mark}`,
          bench.fields.aperture.at,
          `f/${mark}`,
          softerPrice(stopped),
        ),
      ];
  }
  return [];
}
