import { below } from '../plan/place.ts';
import { message } from '../words/message.ts';
import { deferring } from './cautions.ts';
import { oncePerPlace } from './once-per-place.ts';
import type { PlanRule } from './plan-rule.ts';

interface Facts {
  readonly what: string;
}

export const overheadLoad: PlanRule<Facts> = {
  name: 'overhead-load',
  severity: 'note',
  docs: {
    when: 'the plan puts a rig or a light overhead. What a boom carries counts as overhead unless it has `overhead: no`.',
    why: 'Anything rigged overhead can fall on someone. Fit a second, independent safety cable to everything overhead. Keep people clear while it is moved, and have a second person check screws and clamps.',
    remedy: 'Fit a safety cable. Follow local rules and the advice of a qualified person.',
    bad: [
      {
        says: 'a rig over the subject',
        change: {
          'rigs/bench/support': '{ foot: 62 mm, overhead: yes }',
          'preflight/once/overhead-tethered': 'open',
        },
      },
    ],
    good: [
      { says: 'beside it', change: { 'rigs/bench/support': '{ foot: 62 mm, overhead: no }' } },
    ],
  },
  check({ shots, carried }) {
    const rigs = oncePerPlace(carried.filter(({ overhead }) => overhead));
    const lights = oncePerPlace(shots.flatMap(({ care }) => care.filter((one) => one.overhead)));
    return [
      ...rigs.map(({ at, rig }) => ({ at: below(at, 'overhead'), facts: { what: rig } })),
      ...lights.map(({ at, light }) => ({ at, facts: { what: light } })),
    ];
  },
  words: ({ what }) => ({
    what: message`${what} is rigged overhead: fit a safety cable and keep people clear while it is moved.`,
    why: deferring(),
  }),
};
