import { message } from '../words/message.ts';
import { directionAside, HIDDEN, standAt } from './clear-direction.ts';
import type { Observation } from './rule.ts';
import { relatedTo, type ShotRule, type ShotView } from './shot-rule.ts';
import { SEEN } from './source-too-small.ts';

/** Below this a lamp, holder or hand no longer fits between lens and subject, mm. Common practice. */
const TIGHT_MM = 20;

type Facts =
  | { readonly kind: 'rim'; readonly workingDistanceMm: number; readonly lens: string | null }
  | { readonly kind: 'light'; readonly light: string; readonly lens: string | null }
  | { readonly kind: 'view'; readonly light: string; readonly hiddenShare: number };

export const noRoom: ShotRule<Facts> = {
  name: 'no-room',
  severity: 'warning',
  docs: {
    when: 'the working distance is less than 20 mm, or negative; or a light is inside the lens or in front of it. An error where the distance is negative or a light is in the way.',
    why: 'Working distance is measured from the subject to the front of the lens, with the `length` of filters and close-up lenses included. More extension on the same lens shortens it, until the plane of focus lies inside the barrel.',
    remedy:
      'Replace extension tubes with a teleconverter, use a longer lens, or frame wider. Move a light out of the way, farther to its own side.',
    bad: [
      {
        says: 'a light in front of the lens',
        change: {
          'lights/strip/at': '{ distance: 300 mm, elevation: 3 deg }',
          'shots/skin/tilt': '4 deg',
        },
      },
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
    good: [{ says: "a hand's breadth left", change: { 'shots/frost/field': '40 mm' } }],
  },
  check(view) {
    return [...betweenRimAndSubject(view), ...lightInTheWay(view)];
  },
  words(facts, say) {
    switch (facts.kind) {
      case 'rim':
        return facts.workingDistanceMm < 0
          ? {
              what: message`The subject would be ${say.length(-facts.workingDistanceMm)} inside ${lensWords(facts.lens)}.`,
              why: message`At this magnification the plane of focus is inside the lens barrel.`,
            }
          : {
              what: message`Working distance is only ${say.length(facts.workingDistanceMm)} between ${lensWords(facts.lens)} and the subject.`,
              why: message`Below ${say.length(TIGHT_MM)} there is no room to light or reach the subject, and the lens shades it.`,
            };
      case 'light':
        return {
          what: message`${facts.light} and ${lensWords(facts.lens)} are in the same place.`,
          why: message`At this position the face of the light would be inside the lens.`,
        };
      case 'view':
        return {
          what: message`${facts.light} is in front of the lens and hides ${say.percent(facts.hiddenShare)} of the frame.`,
          why: message`Its edge is in the field of view.`,
        };
    }
  },
  size: (facts) =>
    facts.kind === 'rim'
      ? { kind: 'length', value: TIGHT_MM - facts.workingDistanceMm }
      : undefined,
  numbers: (facts): Readonly<Record<string, number>> =>
    facts.kind === 'rim'
      ? { workingDistanceMm: facts.workingDistanceMm }
      : facts.kind === 'view'
        ? { hiddenShare: facts.hiddenShare }
        : {},
  fixes({ facts }, { bench }) {
    if (facts.kind === 'rim') return [];
    const direction = directionAside(bench, facts.light, SEEN);
    return direction ? [standAt(bench, facts.light, direction)] : [];
  },
};

const lensWords = (lens: string | null): string => lens ?? message`the lens`;

function betweenRimAndSubject({ bench, figures }: ShotView): Observation<Facts>[] {
  const { workingDistanceMm } = figures;
  if (!workingDistanceMm.known || workingDistanceMm.value >= TIGHT_MM) return [];
  const at = bench.wantedAt ?? bench.fields.rig.at;
  return [
    {
      at,
      severity: workingDistanceMm.value < 0 ? 'error' : 'warning',
      facts: {
        kind: 'rim',
        workingDistanceMm: workingDistanceMm.value,
        lens: bench.lens?.name ?? null,
      },
      related: () => relatedTo(at, workingDistanceMm),
    },
  ];
}

function lightInTheWay({ bench, figures }: ShotView): Observation<Facts>[] {
  const { lightInTheWay: way } = figures;
  if (!way.known) return [];
  const { light, clearanceMm, hiddenShare } = way.value;
  const hides = hiddenShare > HIDDEN;
  if (!hides && clearanceMm > 0) return [];
  const named = bench.lights.known
    ? bench.lights.value.find(({ name }) => name === light)
    : undefined;
  const at = named?.at ?? bench.fields.light.at;
  const related = relatedTo(at, way);
  if (hides)
    return [{ at, severity: 'error', facts: { kind: 'view', light, hiddenShare }, related }];
  const lens = bench.lens?.name ?? null;
  return [{ at, severity: 'error', facts: { kind: 'light', light, lens }, related }];
}
