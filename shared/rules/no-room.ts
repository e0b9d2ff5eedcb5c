import { relatedTo, type ShotRule } from './shot-rule.ts';

/** Under this a lamp, a holder or a hand no longer fits between rim and subject, mm. Common practice. */
const TIGHT_MM = 20;

interface Facts {
  readonly workingDistanceMm: number;
  readonly lens: string;
}

export const noRoom: ShotRule<Facts> = {
  name: 'no-room',
  severity: 'warning',
  docs: {
    when: 'the subject would be inside the lens, or nearer to its rim than 20 mm.',
    why: 'Working distance W is from the subject to the front rim: the more extension on a given lens, the nearer the subject has to come, until the plane of focus lies inside the barrel.',
    remedy: 'Take extension away and a converter in its place, use a longer lens, or frame wider.',
    bad: [
      {
        says: 'a short lens on long tubes',
        change: {
          'shots/frost/rig': 'crowded',
          'shots/frost/field': null,
          'shots/frost/ring': 'closest',
          'shots/frost/iso': 'auto',
          'subjects/frost-plate/depth': '0.5 mm',
          'kit/lenses/short-50/length': '95 mm',
        },
      },
    ],
    good: [{ says: 'a hand’s breadth left', change: { 'shots/frost/field': '40 mm' } }],
  },
  check({ bench, figures }) {
    const { workingDistanceMm } = figures;
    if (!workingDistanceMm.known || workingDistanceMm.value >= TIGHT_MM) return [];
    const at = bench.wantedAt ?? bench.fields.rig.at;
    return [
      {
        at,
        severity: workingDistanceMm.value < 0 ? 'error' : 'warning',
        facts: { workingDistanceMm: workingDistanceMm.value, lens: bench.lens?.name ?? 'the lens' },
        related: relatedTo(at, workingDistanceMm),
      },
    ];
  },
  words: ({ workingDistanceMm, lens }, say) =>
    workingDistanceMm < 0
      ? {
          what: `The subject would be ${say.length(-workingDistanceMm)} inside ${lens}.`,
          why: 'At this magnification the plane of focus lies behind the front rim.',
        }
      : {
          what: `Only ${say.length(workingDistanceMm)} are left between ${lens} and the subject.`,
          why: `Under ${say.length(TIGHT_MM)} neither light nor hand gets in, and the rim shades the subject.`,
        },
  size: ({ workingDistanceMm }) => ({ kind: 'length', value: TIGHT_MM - workingDistanceMm }),
  numbers: ({ workingDistanceMm }) => ({ workingDistanceMm }),
};
