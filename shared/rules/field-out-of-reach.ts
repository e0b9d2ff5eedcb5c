import type { Bench } from '../figures/bench.ts';
import { rigsInReach } from '../figures/kit-search.ts';
import type { ShotFigures } from '../figures/shot-figures.ts';
import { ringForDistance } from '../optics/reach.ts';
import { type Field, ifKnown, isKnown } from '../plan/field.ts';
import { setTo } from '../plan/fixes.ts';
import type { Place } from '../plan/place.ts';
import type { PlanFix } from '../plan/problem.ts';
import { type Say, significant } from '../say/say.ts';
import { message } from '../words/message.ts';
import { rigFixes, standingRigFixes } from './rig-fixes.ts';
import type { Observation, Words } from './rule.ts';
import { relatedTo, type ShotRule } from './shot-rule.ts';

/** Accuracy of the chain: a field this close to the end of the reach counts as reached. */
const DEAD_BAND = 0.005;

/** Rigs of the kit that are offered instead. */
const MOST_RIGS = 4;

type Facts = ReachFacts | RingFacts;

/** A magnification that the rig can't set. */
interface ReachFacts {
  readonly wanted: number;
  readonly least: number;
  readonly most: number;
  /** Width of the recorded area on the sensor, mm. */
  readonly recordedMm: number | null;
  readonly rig: string;
}

/** A focus distance from the sensor that is nearer than minimum focus. */
interface RingFacts {
  readonly ringMm: number;
  /** Minimum focus; null: the lens has no `closest` setting, so it has no ring to turn. */
  readonly closestMm: number | null;
  readonly lens: string;
}

export const fieldOutOfReach: ShotRule<Facts> = {
  name: 'field-out-of-reach',
  severity: 'error',
  docs: {
    when: 'the field or magnification is outside the magnification range of the rig, from infinity to closest focus. Or a focus setting, of the shot or a focus pull, is closer than the minimum focus of the lens.',
    why: 'Magnification is set by the focus of the lens and by tubes, converters and close-up lenses. Past either end of the focus ring nothing is in focus.',
    remedy:
      'Use another rig of the plan, or build this one from other parts. Lamella searches the tubes, converters and close-up lenses of the kit for rigs that frame the field, fewest parts first. Or plan a field within the range.',
    bad: [
      { says: 'much closer than the rig can go', change: { 'shots/frost/field': '6 mm' } },
      {
        says: 'wider than the lens frames at infinity',
        change: { 'shots/frost/rig': 'stacked', 'shots/frost/field': '120 mm' },
      },
      {
        says: 'closer than minimum focus',
        change: { 'shots/frost/field': null, 'shots/frost/ring': '0.25 m' },
      },
      {
        says: 'a focus pull that ends closer than minimum focus',
        change: {
          'shots/frost/move': '{ kind: focus-pull, from: 0.42 m, to: 0.3 m, duration: 10 s }',
          'preflight/once/focus-ends-marked': 'open',
        },
      },
    ],
    good: [{ says: 'within the range', change: { 'shots/frost/field': '40 mm' } }],
  },
  check({ bench, figures }) {
    return [...beyondRing(bench), ...beyondReach(bench, figures)];
  },
  words(facts, say) {
    if ('ringMm' in facts) return ringWords(facts, say);
    const { wanted, least, most, recordedMm, rig } = facts;
    const name = rig ? `\`${rig}\`` : message`the rig`;
    const reached =
      least === most
        ? message`${name} is fixed at ${say.magnification(most)}`
        : least === 0
          ? message`${name} covers up to ${say.magnification(most)}`
          : message`${name} covers ${say.magnification(least)} to ${say.magnification(most)}`;
    if (recordedMm === null)
      return { what: message`The rig can't reach ${say.magnification(wanted)}; ${reached}.` };
    const field = (m: number) => (m > 0 ? say.length(recordedMm / m) : message`endless`);
    // What can be set, as the fix writes it.
    const tightest = say.length(roundInside(recordedMm / most, 'up'));
    const widest = least > 0 ? say.length(roundInside(recordedMm / least, 'down')) : '';
    const between =
      least === most
        ? message`it frames only ${field(most)}`
        : least === 0
          ? message`it can frame ${tightest} or more`
          : message`it can frame ${tightest} to ${widest}`;
    return {
      what: message`The rig can't frame a field ${field(wanted)} wide; ${between}.`,
      why: message`${field(wanted)} needs ${say.magnification(wanted)} magnification; ${reached}.`,
    };
  },
  numbers(facts): Readonly<Record<string, number>> {
    if ('ringMm' in facts) {
      const { ringMm, closestMm } = facts;
      return closestMm === null ? { ringMm } : { ringMm, closestMm };
    }
    const { wanted, least, most } = facts;
    return { wantedMagnification: wanted, leastMagnification: least, mostMagnification: most };
  },
  fixes({ facts, at }, view) {
    const { bench } = view;
    if ('ringMm' in facts)
      return facts.closestMm === null
        ? []
        : [setTo(message`Set the lens to its closest focus`, at, 'closest')];
    const { wanted, most, rig } = facts;
    const other = rigFixes(
      bench,
      rigsInReach(bench, MOST_RIGS).rigs,
      `${rig}-${wanted > most ? 'closer' : 'wider'}`,
    );
    return [...standingRigFixes(view), ...other, ...nearestFieldFixes(facts, at, bench)];
  },
};

/** Ring settings of the shot and of a focus pull that are nearer than the lens goes. */
function beyondRing({ fields, chain, lens }: Bench): readonly Observation<Facts>[] {
  if (!chain.known || !lens) return [];
  const { closest } = chain.value.lens;
  const move = ifKnown(fields.move);
  const pull = move && ifKnown(move.kind) === 'focus-pull' ? [move.from, move.to] : [];
  return [fields.ring, ...pull].flatMap((setting: Field<number | 'closest' | 'infinity'>) => {
    const ringMm = ifKnown(setting);
    if (typeof ringMm !== 'number') return [];
    if (ringForDistance(chain.value.lens, ringMm).beyond === undefined) return [];
    const closestMm = closest?.fromSensorMm ?? null;
    const related = { at: lens.fields.closest.at, words: message`\`closest\` of ${lens.name}` };
    return [
      {
        at: setting.at,
        facts: { ringMm, closestMm, lens: lens.name },
        related: closest ? [related] : [],
      },
    ];
  });
}

function ringWords({ ringMm, closestMm, lens }: RingFacts, say: Say): Words {
  if (closestMm === null)
    return {
      what: message`${lens} can't focus at ${say.length(ringMm)}: it has no \`closest\`.`,
      why: message`A lens without \`closest\` is assumed to be fixed at infinity.`,
    };
  return {
    what: message`${lens} can't focus at ${say.length(ringMm)}; its minimum focus is ${say.length(closestMm)}.`,
    why: message`Focus distances are measured from the sensor, with the lens straight on the camera.`,
  };
}

/** Whether the rig certainly can't set what the shot needs in the frame. */
export const isOutOfReach = (bench: Bench, figures: ShotFigures): boolean =>
  beyondRing(bench).length > 0 || beyondReach(bench, figures).length > 0;

function beyondReach(bench: Bench, { reach }: ShotFigures): readonly Observation<Facts>[] {
  const wanted = bench.wantedMagnification;
  if (!reach.known || !wanted.known || bench.wantedAt === undefined) return [];
  const [least, most] = reach.value;
  if (wanted.value >= least * (1 - DEAD_BAND) && wanted.value <= most * (1 + DEAD_BAND)) return [];
  const recorded = bench.recordedAreaMm;
  return [
    {
      at: bench.wantedAt,
      facts: {
        wanted: wanted.value,
        least,
        most,
        recordedMm: recorded.known ? recorded.value.width : null,
        rig: bench.rigName ?? '',
      },
      related: relatedTo(bench.wantedAt, reach),
    },
  ];
}

function nearestFieldFixes(
  { wanted, least, most, recordedMm }: ReachFacts,
  at: Place,
  bench: Bench,
): readonly PlanFix[] {
  const nearest = wanted > most ? most : least;
  if (nearest <= 0) return [];
  const isCloser = wanted > most;
  let text: string;
  let title: string;
  if (isKnown(bench.fields.magnification)) {
    text = `${roundInside(nearest, isCloser ? 'down' : 'up')}x`;
    title = isCloser
      ? message`Set ${text}, the closest this rig allows`
      : message`Set ${text}, the widest this rig allows`;
  } else if (isKnown(bench.fields.field) && recordedMm !== null) {
    text = `${roundInside(recordedMm / nearest, isCloser ? 'up' : 'down')} mm`;
    title = isCloser
      ? message`Frame ${text}, the tightest this rig allows`
      : message`Frame ${text}, the widest this rig allows`;
  } else return [];
  // Such a fix changes what the picture shows, so it is never applied unasked.
  const percent = significant((nearest / wanted) * 100, 2);
  return [setTo(title, at, text, message`subject appears at ${percent}% of the planned size`)];
}

/** To three significant digits, rounded so that the end of the reach is not exceeded. */
function roundInside(value: number, side: 'up' | 'down'): number {
  const step = 10 ** (Math.floor(Math.log10(value)) - 2);
  const steps = side === 'up' ? Math.ceil(value / step) : Math.floor(value / step);
  return Number((steps * step).toPrecision(3));
}
