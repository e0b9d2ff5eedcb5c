import { ifKnown } from '../plan/field.ts';
import { setTo } from '../plan/fixes.ts';
import { below } from '../plan/place.ts';
import { message } from '../words/message.ts';
import { relatedTo, type ShotRule } from './shot-rule.ts';

interface Facts {
  readonly stackTimeS: number;
  readonly lifeS: number;
  readonly frames: number;
  /** null: not named. */
  readonly subject: string | null;
}

export const stackOutlastsSubject: ShotRule<Facts> = {
  name: 'stack-outlasts-subject',
  severity: 'warning',
  docs: {
    when: 'a focus stack takes longer than the `lifetime` of its subject.',
    why: 'Frost melts, a leaf wilts, an insect in the lamp dries. If the subject changes while the stack is made, the last frames show another subject than the first. Time is frames × (settling time + exposure).',
    remedy: 'Wait less between frames, take fewer by stopping down, or keep the subject longer.',
    bad: [
      {
        says: 'frost that melts',
        change: {
          'subjects/frost-plate/depth': '20 mm',
          'subjects/frost-plate/lifetime': '10 s',
          'shots/frost/stack': '{ with: rail, settle: 4 s }',
          'preflight/once/stack-ends-checked': 'open',
        },
      },
    ],
    good: [
      {
        says: 'frost in a cold room',
        change: {
          'subjects/frost-plate/depth': '20 mm',
          'subjects/frost-plate/lifetime': '20 min',
          'shots/frost/stack': '{ with: rail, settle: 4 s }',
          'preflight/once/stack-ends-checked': 'open',
        },
      },
    ],
  },
  check({ bench, figures }) {
    const { stackTimeS, stackFrames } = figures;
    const lifeS = bench.subject && ifKnown(bench.subject.fields.lifetime);
    if (!bench.stack || lifeS === undefined || !stackTimeS.known || !stackFrames.known) return [];
    if (stackTimeS.value <= lifeS) return [];
    const at = below(bench.stack.at, 'settle');
    return [
      {
        at,
        facts: {
          stackTimeS: stackTimeS.value,
          lifeS,
          frames: stackFrames.value,
          subject: bench.subject?.name ?? null,
        },
        related: () => relatedTo(at, stackTimeS),
      },
    ];
  },
  words: ({ stackTimeS, lifeS, frames, subject }, say) => ({
    what: message`The focus stack takes ${say.seconds(stackTimeS)}; ${subject ?? message`the subject`} lasts ${say.seconds(lifeS)}.`,
    why: message`It has ${frames} frames, each after its settling time.`,
  }),
  size: ({ stackTimeS, lifeS }) => ({ kind: 'time', value: stackTimeS - lifeS }),
  numbers: ({ stackTimeS, lifeS }) => ({ stackTimeS, lifeS }),
  fixes({ at, facts: { lifeS, frames } }, { figures }) {
    const { shutterSeconds } = figures;
    if (!shutterSeconds.known) return [];
    const seconds = Math.floor(10 * (lifeS / frames - shutterSeconds.value)) / 10;
    return seconds >= LEAST_SETTLE_S
      ? [setTo(message`Wait ${seconds} s before each frame`, at, `${seconds} s`)]
      : [];
  },
};

/** Nobody moves a rail and lets it settle in less, s. */
const LEAST_SETTLE_S = 0.5;
