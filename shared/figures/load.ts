/** The rig as a load: its mass, its balance, and its support. */
import { type Boom, stabilityFactor } from '../load/boom.ts';
import { centreOfGravityMm, momentNm, totalMassKg, type Weight } from '../load/statics.ts';
import { type Field, ifKnown } from '../plan/field.ts';
import type { Body, Stand, Support } from '../plan/generated/types.ts';
import { message } from '../words/message.ts';
import { flangeOf as assumedFlange, orAssumed } from './assumed.ts';
import type { Bench } from './bench.ts';
import { derive, type Figure, figureOf, known, notKnown, silent, unknownOf } from './figure.ts';
import type { Makers } from './lazily.ts';
import { once } from './lazily.ts';
import { asMeasured, measurementsOf } from './measured.ts';
import type { Named } from './named.ts';
import { isNo } from './not-applicable.ts';
import type { LoadFigures, WeighedPart } from './shot-figures.ts';

export function loadFigures(bench: Bench): Makers<LoadFigures> {
  const weighed = once(() => bench.weighedParts);
  const massKg = once(() => measuredAs('mass', bench) ?? summedKg(weighed()));
  const centre = once(() => measuredAs('balance', bench) ?? balancedMm(weighed()));
  const footMm = once(() => footOf(bench));
  const flangeMm = once(() => flangeOf(bench.body));
  return {
    massKg,
    centreOfGravityMm: centre,
    footMm,
    momentAtFootNewtonMetres: once(() =>
      derive([massKg(), centre(), footMm()], (mass, at, foot) =>
        momentNm([{ massKg: mass, atMm: at }], foot),
      ),
    ),
    momentAtMountNewtonMetres: once(() =>
      derive([weighed(), flangeMm()], (parts, flange) =>
        momentNm(weightsOf(parts.filter(({ kind }) => kind !== 'body')), flange),
      ),
    ),
    stabilityFactor: once(() => tippingOf(bench, massKg())),
  };
}

const weightsOf = (parts: readonly WeighedPart[]): readonly Weight[] => parts;

/** The parts' masses together, as they are given. */
export const summedKg = (parts: Bench['weighedParts']): Figure<number> =>
  derive([parts], (all) => totalMassKg(all));

/** Where the parts balance together. */
export const balancedMm = (parts: Bench['weighedParts']): Figure<number> =>
  derive([parts], (all) => (all.length > 0 ? centreOfGravityMm(all) : notKnown(message`no parts`)));

/** The mass or balance of the whole rig, from the first record that gives it. */
function measuredAs(key: 'mass' | 'balance', bench: Bench): Figure<number> | undefined {
  const found = measurementsOf(bench).find(({ fields }) => fields[key].state !== 'missing');
  return found && asMeasured(figureOf<number>(found.fields[key], found.of));
}

const flangeOf = (body: Named<Body> | undefined): Figure<number> =>
  body
    ? orAssumed(body.fields['flange-distance'], body.name, assumedFlange(body.fields))
    : notKnown(message`the rig has no body`);

/** The support of the rig in this shot: the shot's own, else the rig's. */
export function supportOf({ fields, rig }: Bench): Field<Support> | undefined {
  return fields.support.state !== 'missing' ? fields.support : rig?.fields.support;
}

function footOf(bench: Bench): Figure<number> {
  const field = supportOf(bench);
  if (!field) return unknownOf([bench.parts]);
  if (field.state === 'invalid') return silent;
  if (field.state === 'missing') return isNo('support');
  return figureOf(field.value.foot, message`${bench.rigName ?? ''}'s support`);
}

const orNothing = (field: Field<number>, name: string): Figure<number> =>
  field.state === 'missing' ? known(0) : figureOf(field, name);

function tippingOf(bench: Bench, massKg: Figure<number>): Figure<number> {
  const { stand, head } = bench.carriers;
  const headKg = head ? orNothing(head.fields.mass, head.name) : known(0);
  return tippingUnder(
    stand,
    derive([massKg, headKg], (rigKg, carriedKg) => rigKg + carriedKg),
  );
}

/** Stability factor of a boom with this load at its end, kg. */
export function tippingUnder(
  stand: Named<Stand> | undefined,
  loadKg: Figure<number>,
): Figure<number> {
  if (!stand) return isNo('stand');
  if (ifKnown(stand.fields.kind) !== 'boom') return isNo('boom');
  const { fields, name } = stand;
  return derive(
    [
      loadKg,
      figureOf(fields.reach, name),
      figureOf(fields.footprint, name),
      orNothing(fields.mass, name),
      orNothing(fields.counterweight, name),
      orNothing(fields['counterweight-arm'], name),
    ],
    (load, reachMm, footprintMm, standKg, counterweightKg, counterweightArmMm) => {
      const boom: Boom = {
        loadKg: load,
        reachMm,
        footprintMm,
        standKg,
        counterweightKg,
        counterweightArmMm,
      };
      return stabilityFactor(boom);
    },
  );
}
