/** Which subjects throw the light back as a mirror does, and how much of it. */
import { averageReflectance } from '../film/reflectance.ts';
import { waterIndex } from '../film/water.ts';
import { ifKnown } from '../plan/field.ts';
import { message } from '../words/message.ts';
import type { Bench } from './bench.ts';
import { derive, type Figure, figureOf, known, notKnown, unknownOf } from './figure.ts';
import { isNo } from './not-applicable.ts';

export type MirrorKind = 'film' | 'bubble' | 'surface';

/** Films and bubbles are mirrors by nature, surfaces and solids where their finish says so. */
export function mirrorKind({ subject }: Bench): MirrorKind | undefined {
  const kind = subject && ifKnown(subject.fields.kind);
  if (kind === 'film' || kind === 'bubble') return kind;
  return subject && ifKnown(subject.fields.finish) === 'mirror' ? 'surface' : undefined;
}

/** Partly a mirror: it shows lens and lights over its own colour, which is not judged. */
export const isGloss = (bench: Bench): boolean =>
  mirrorKind(bench) === undefined &&
  bench.subject !== undefined &&
  ifKnown(bench.subject.fields.finish) === 'gloss';

export const isFlatMirror = (bench: Bench): boolean => {
  const kind = mirrorKind(bench);
  return kind === 'film' || kind === 'surface';
};

/** Where n is counted for what is seen as a whole. */
const MIDDLE_NM = 550;

/** n of the film or surface; left out: water's. */
export function indexOf({ subject }: Bench): Figure<number | undefined> {
  if (!subject || subject.fields.index.state === 'missing') return known(undefined);
  return figureOf(subject.fields.index, subject.name);
}

/**
 * R, the share of the light that comes back, on average over thickness for films: as given, else
 * worked out for films and bubbles. What another mirror returns has to be given.
 */
export function reflectanceOf(bench: Bench): Figure<number> {
  const { subject, tiltRad } = bench;
  if (!subject) return unknownOf([figureOf(bench.fields.subject, bench.shot)]);
  const given = subject.fields.reflectance;
  if (given.state !== 'missing')
    return derive([figureOf(given, subject.name)], (share) =>
      // A mirror that returns nothing shows no light, and no exposure balances it.
      share > 0 ? share : notKnown(message`${subject.name} reflects nothing`),
    );
  const kind = mirrorKind(bench);
  if (kind === undefined) return isNo('mirror');
  if (kind === 'surface') return figureOf(given, subject.name) as Figure<never>;
  return derive([indexOf(bench), tiltRad], (index, tilt) =>
    averageReflectance(index ?? waterIndex(MIDDLE_NM), Math.abs(tilt)),
  );
}
