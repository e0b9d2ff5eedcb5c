import type { BenchMisfit } from '../figures/bench-report.ts';
import type { BenchKey } from '../figures/lens-bench.ts';
import { removal } from '../plan/fixes.ts';
import type { Say } from '../say/say.ts';
import { message } from '../words/message.ts';
import type { PlanRule } from './plan-rule.ts';

type Facts = Pick<BenchMisfit, 'row' | 'key' | 'measured' | 'expected'> & { readonly lens: string };

export const benchDiffers: PlanRule<Facts> = {
  name: 'bench-differs',
  severity: 'warning',
  docs: {
    when: "a value in a lens's `bench` is more than 3 standard deviations from what its data and the other rows say.",
    why: 'All rows are of one lens, so they have to agree within what a ruler can do. One that does not pulls every rig with this lens to the wrong place. The usual causes are another ring setting, a part that is missing from `with`, or a ruler that was read wrong.',
    remedy:
      'Measure again. State where the ring really was and all parts of the setup, or remove the value.',
    bad: [
      {
        says: 'a field read with the ring elsewhere',
        change: {
          'kit/lenses/long-200/bench':
            '[{ with: [body-a], ring: closest, field: 119.7 mm }, { with: [body-a, tube-36], ring: closest, field: 66.1 mm }, { with: [body-a, tube-20], ring: closest, field: 85.5 mm }]',
        },
      },
    ],
    good: [
      {
        says: 'fields that bear each other out',
        change: {
          'kit/lenses/long-200/bench':
            '[{ with: [body-a], ring: closest, field: 119.7 mm }, { with: [body-a, tube-36], ring: closest, field: 66.1 mm }, { with: [body-a, tube-20], ring: closest, field: 82.4 mm }]',
        },
      },
    ],
  },
  check: ({ benches }) =>
    benches.flatMap(({ lens, misfits }) =>
      misfits.map(({ at, row, key, measured, expected }) => ({
        at,
        facts: { lens, row, key, measured, expected },
      })),
    ),
  words({ lens, row, key, measured, expected }, say) {
    const print = PRINTED[key];
    return {
      what: message`\`${key}\` of row ${row} is ${say.percent(Math.abs(measured / expected - 1))} from what the others say.`,
      why: message`Measured: ${print(say, measured)}; the data of ${lens} and the other rows give ${print(say, expected)}. Measure again, or was the ring elsewhere?`,
    };
  },
  size: ({ measured, expected }) => ({
    kind: 'percent',
    value: Math.abs(measured / expected - 1),
  }),
  numbers: ({ row, measured, expected }) => ({ row, measured, expected }),
  fixes: ({ at, facts: { key, row } }) => [
    removal(
      message`Remove \`${key}\` of row ${row}`,
      at,
      message`the lens is calculated from its data and the other rows`,
    ),
  ],
};

const length = (say: Say, mm: number): string => say.length(mm);

const PRINTED: Readonly<Record<BenchKey, (say: Say, value: number) => string>> = {
  field: length,
  magnification: (say, m) => say.magnification(m),
  'from-sensor': length,
  'working-distance': length,
  'effective-f-number': (say, n) => say.fNumber(n),
};
