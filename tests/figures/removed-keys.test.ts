/**
 * Every key of a clean plan is taken out in turn. A figure is then what it was, or it is not known and
 * says for want of what; it is never something else, except by the few defaults that the language states.
 */
import { expect, it } from 'vitest';
import type { ShotFiguresJson } from '../../shared/figures/json.ts';
import { CONVERTER_PLAN } from '../planted/support/converter-plan.ts';
import { fieldsOf, type PlanField } from '../planted/support/fields.ts';
import { laws } from '../support/each.ts';
import { changed, coreWith, PLAN } from '../support/plans.ts';

/** What the language puts in the place of a key that is left out, and the figures that follow from it. */
const DEFAULTS: Readonly<Record<string, readonly string[]>> = {
  // Pupils alike, and figures say so.
  'pupil-ratio': [
    ...['effectiveFNumber', 'lightLossStops', 'lossByPart', 'depthMm', 'usableDepthMm', 'airyUm'],
    ...['contrast', 'contrastAtNyquist', 'exposureErrorStops', 'isoNeeded', 'lightClearanceMm'],
    ...['bestEffectiveFNumber', 'leastBlurUm', 'hiddenShare'],
  ],
  // One take.
  count: ['recordedS', 'recordedBytes'],
  // A light straight ahead of the subject, on the lens axis.
  elevation: ['lightClearanceMm', 'hiddenShare', 'unevennessStops'],
  azimuth: ['lightClearanceMm', 'hiddenShare', 'unevennessStops'],
  // A subject that fills the frame.
  size: ['unevennessStops'],
  diameter: ['unevennessStops'],
};

const plan = CONVERTER_PLAN;
const before = coreWith(plan).figures(PLAN);

/**
 * Keys with a value of their own, but the version of the language and the checks. Records such as
 * `closest` say something by not being there: a lens without it has no ring to turn.
 */
const keys = fieldsOf(plan).filter(
  ({ path, key, text }) =>
    key !== undefined && text !== undefined && path[0] !== 'shootplan' && path[0] !== 'preflight',
);

function figuresWithout({ path }: PlanField): ReadonlyMap<string, ShotFiguresJson> {
  return coreWith(changed(plan, { [path.join('/')]: null })).figures(PLAN);
}

/** One figure, or the parts of a group, by the names under which reasons are given. */
const partsOf = (name: string, value: unknown): readonly (readonly [string, unknown])[] =>
  name === 'depthMm'
    ? Object.entries(value as object).map(([part, one]) => [`${name}.${part}`, one] as const)
    : [[name, value]];

type Ends = readonly [low: number, high: number] | undefined;

/** To the last digits: a value that is assumed may be the one that was given. */
const same = (one: unknown, other: unknown): boolean =>
  typeof one === 'number' && typeof other === 'number'
    ? Math.abs(one - other) <= 1e-9 * Math.max(Math.abs(one), Math.abs(other))
    : JSON.stringify(one) === JSON.stringify(other);

/** What was given lies between the ends of what is assumed instead, to a twentieth of their width. */
function within(value: number, ends: Ends): boolean {
  if (!ends) return false;
  const slack = (ends[1] - ends[0]) / 20;
  return value >= ends[0] - slack && value <= ends[1] + slack;
}

const isWidenedBy = (widenedBy: NonNullable<ShotFiguresJson['widenedBy']>, key: string): boolean =>
  Object.values(widenedBy).some((shares) => shares.some(({ input }) => input.startsWith(key)));

it('the plan has figures to lose', () => {
  expect(keys.length).toBeGreaterThan(50);
  expect(before.size).toBe(2);
});

laws(
  keys,
  (field) => field.path.join('/'),
  (field, law) => {
    const key = field.path.at(-1)!;
    const after = figuresWithout(field);

    law(
      'without any one key a figure is as it was, bounded about it, or not known for want of it',
      () => {
        for (const [shot, whole] of before) {
          const { notKnown: reasonsBefore, bounds: _, widenedBy: __, ...figures } = whole;
          const { notKnown, bounds = {}, widenedBy = {}, ...now } = after.get(shot)!;
          for (const [name, value] of Object.entries(figures)) {
            if (DEFAULTS[key]?.includes(name)) continue;
            const were = new Map(partsOf(name, value));
            for (const [part, one] of partsOf(name, now[name])) {
              const what = `${part} of ${shot}`;
              const was = were.get(part);
              if (one !== null && was !== null && !same(one, was)) {
                expect(isWidenedBy(widenedBy, key), what).toBe(true);
                const ends = bounds[part];
                if (typeof was === 'number') expect(within(was, ends as Ends), what).toBe(true);
                continue;
              }
              if (one !== null || was === null) {
                expect(same(one, was), what).toBe(true);
                if (one === null) expect(notKnown[part], what).toBeDefined();
                continue;
              }
              expect(notKnown[part], `${what}: ${reasonsBefore[part]}`).toContain(`\`${key}\``);
            }
          }
        }
      },
    );
  },
);
