/** What a traced frame costs: one of each kind of subject, small as after an edit and large as at rest. */

import { createCore } from '../../shared/core/core.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { changed, PLAN, ROOT } from '../support/plans.ts';
import { type Spread, spread, timed } from './statistics.ts';

const TIMES = 20;
/** Runs before those that count: a server draws many frames. */
const WARM = 5;

const LIGHT = { 'shots/skin/tilt': '7 deg' };
const SUBJECTS: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  'a film with bands': {
    ...LIGHT,
    'subjects/soap': '{ kind: film, size: 160 x 100 mm, thickness: 100 to 900 nm }',
  },
  'a film that bows': {
    ...LIGHT,
    'subjects/soap': '{ kind: film, size: 160 x 100 mm, thickness: 100 to 900 nm, sag: 2 mm }',
  },
  'a bubble': { 'subjects/soap': '{ kind: bubble, diameter: 40 mm, thickness: 100 to 700 nm }' },
  'polished metal': {
    ...LIGHT,
    'subjects/soap': '{ kind: solid, depth: 0 mm, finish: mirror, reflectance: 60 % }',
  },
  'a matt solid': { 'subjects/soap': '{ kind: solid, depth: 0 mm, finish: matt }' },
};

interface Frames {
  readonly subject: string;
  readonly small: Spread;
  readonly large: Spread;
}

/** Milliseconds from a new text to the PNG, 160 × 90 and 480 × 270. */
export const benchFrames = (): readonly Frames[] =>
  Object.entries(SUBJECTS).map(([subject, change]) => {
    const core = createCore({ rootOf: () => ROOT });
    const text = changed(EXAMPLE_PLAN, change);
    const texts = [text, changed(text, { 'shots/skin/field': '47 mm' })] as const;
    let round = 0;
    // Another text each time: what was drawn of figures is kept.
    const draw = (width: number): void => {
      round += 1;
      core.give(PLAN, texts[(round % 2) as 0 | 1]);
      if (core.frame(PLAN, 'skin', width)?.ok !== true) throw new Error(`${subject} is not drawn`);
    };
    const measure = (width: number): Spread => {
      for (let i = 0; i < WARM; i += 1) draw(width);
      return spread(Array.from({ length: TIMES }, () => timed(() => draw(width))));
    };
    return { subject, small: measure(160), large: measure(480) };
  });
