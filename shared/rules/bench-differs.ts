import type { BenchMisfit } from '../figures/bench-report.ts';
import { removal } from '../plan/fixes.ts';
import { exposureError } from '../say/figures.ts';
import type { Say } from '../say/say.ts';
import { shown } from '../say/shown.ts';
import { message } from '../words/message.ts';
import type { PlanRule } from './plan-rule.ts';

type Facts = Pick<BenchMisfit, 'row' | 'key' | 'isWholeRow' | 'measured' | 'expected'> & {
  readonly of: string;
};

export const benchDiffers: PlanRule<Facts> = {
  name: 'bench-differs',
  severity: 'warning',
  docs: {
    when: 'a value in a `bench` is more than 3 standard deviations from what its data and the other rows say.',
    why: 'All rows are of one thing, so they have to agree within what a ruler or a meter can do. One that does not pulls every shot with it to the wrong place. The usual causes are another ring setting, a part that is missing from `with`, or a number that was read wrong. A lamp may have been dimmed.',
    remedy:
      'Measure again. State where the ring or the lamp really was and all parts of the setup, or remove the value.',
    bad: [
      {
        says: 'a field read with the ring elsewhere',
        change: {
          'kit/lenses/long-200/bench':
            '[{ with: [body-a], ring: closest, field: 119.7 mm }, { with: [body-a, tube-36], ring: closest, field: 66.1 mm }, { with: [body-a, tube-20], ring: closest, field: 85.5 mm }]',
        },
      },
      {
        says: 'a reading of a light with the meter elsewhere',
        change: {
          'lights/bulb/bench':
            '[{ distance: 0.5 m, illuminance: 3900 lx }, { distance: 0.7 m, illuminance: 2000 lx }, { distance: 1 m, illuminance: 1960 lx }]',
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
      {
        says: 'readings of a light that bear each other out',
        change: {
          'lights/bulb/bench':
            '[{ distance: 0.5 m, illuminance: 3900 lx }, { distance: 0.7 m, illuminance: 2000 lx }, { distance: 1 m, illuminance: 985 lx }]',
        },
      },
    ],
  },
  check: ({ benches }) =>
    benches.flatMap(({ of, misfits }) =>
      misfits.map(({ at, ...misfit }) => ({ at, facts: { of, ...misfit } })),
    ),
  words({ of, row, key, measured, expected }, say) {
    const print = PRINTED[key];
    const apart = apartOf(key, measured, expected);
    const by = apart.kind === 'stops' ? say.stops(apart.value) : say.percent(apart.value);
    const [was, should] = [print(say, measured), print(say, expected)];
    return {
      what: message`\`${key}\` of row ${row} is ${by} from what the others say.`,
      why: LENS_KEYS.has(key)
        ? message`Measured: ${was}; the data of ${of} and the other rows give ${should}. Measure again, or was the ring elsewhere?`
        : message`Measured: ${was}; the data of ${of} and the other rows give ${should}. Measure again, or was something set otherwise?`,
    };
  },
  size: ({ key, measured, expected }) => apartOf(key, measured, expected),
  numbers: ({ row, measured, expected }) => ({ row, measured, expected }),
  fixes: ({ at, facts: { of, key, row, isWholeRow } }) => [
    isWholeRow
      ? removal(
          message`Remove row ${row} of the bench of ${of}`,
          { ...at, path: at.path.slice(0, -1) },
          message`it is calculated from its data and the other rows`,
        )
      : removal(
          message`Remove \`${key}\` of row ${row}`,
          at,
          message`it is calculated from its data and the other rows`,
        ),
  ],
};

const length = (say: Say, mm: number): string => say.length(mm);

/** Those that a focus ring has a say in. */
const LENS_KEYS: ReadonlySet<BenchMisfit['key']> = new Set([
  'field',
  'magnification',
  'from-sensor',
  'working-distance',
  'effective-f-number',
]);

/** How far the two are from each other: light in stops, all else as a share. */
function apartOf(key: BenchMisfit['key'], measured: number, expected: number) {
  switch (key) {
    case 'found':
    case 'light-lost':
      return { kind: 'stops', value: Math.abs(measured - expected) } as const;
    case 'illuminance':
      return { kind: 'stops', value: Math.abs(Math.log2(measured / expected)) } as const;
    case 'aperture':
      return { kind: 'stops', value: 2 * Math.abs(Math.log2(measured / expected)) } as const;
    default:
      return { kind: 'percent', value: Math.abs(measured / expected - 1) } as const;
  }
}

const PRINTED: Readonly<Record<BenchMisfit['key'], (say: Say, value: number) => string>> = {
  field: length,
  magnification: (say, m) => say.magnification(m),
  'from-sensor': length,
  'working-distance': length,
  'effective-f-number': (say, n) => say.fNumber(n),
  aperture: (say, n) => say.fNumber(n),
  illuminance: (say, lux) => shown('illuminance', lux, say),
  found: (say, stops) => exposureError(stops, say),
  'light-lost': (say, stops) => (stops < 0 ? `−${say.stops(-stops)}` : say.stops(stops)),
};
