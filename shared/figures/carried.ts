/**
 * The rig with its support in one shot, and what can hurt somebody: the input of the rules about
 * loads.
 */

import { ifKnown } from '../plan/field.ts';
import type { Place } from '../plan/place.ts';
import type { Bench } from './bench.ts';
import { figureOf, valueIn } from './figure.ts';
import { supportOf, tippingUnder } from './load.ts';
import type { ShotFigures } from './shot-figures.ts';
import { natureOf } from './subject-kinds.ts';

/** Head or stand, and its payload. */
interface Carrier {
  readonly name: string;
  readonly payloadKg: number | null;
  readonly at: Place;
}

export interface Carried {
  /** The support that says so: the shot's own, else the rig's. */
  readonly at: Place;
  readonly rig: string;
  readonly massKg: number | null;
  readonly centreOfGravityMm: number | null;
  readonly footMm: number | null;
  readonly head: Carrier | null;
  /** Its load is the rig with its head. */
  readonly stand: Carrier | null;
  readonly headMassKg: number;
  readonly stabilityFactor: number | null;
  readonly overhead: boolean;
}

export function carriedOf(bench: Bench, figures: ShotFigures): Carried | null {
  const support = supportOf(bench);
  if (support?.state !== 'known') return null;
  const { head, stand } = bench.carriers;
  const { head: headField, stand: standField } = support.value;
  const carrier = (
    entry: Bench['carriers']['head'] | Bench['carriers']['stand'],
    at: Place,
  ): Carrier | null =>
    entry ? { name: entry.name, payloadKg: ifKnown(entry.fields.payload) ?? null, at } : null;
  return {
    at: support.at,
    rig: bench.rigName ?? '',
    massKg: withRailKg(bench, valueIn(figures.massKg)),
    centreOfGravityMm: valueIn(figures.centreOfGravityMm) ?? null,
    footMm: valueIn(figures.footMm) ?? null,
    head: carrier(head, headField.at),
    stand: carrier(stand, standField.at),
    headMassKg: (head && ifKnown(head.fields.mass)) ?? 0,
    stabilityFactor: valueIn(figures.stabilityFactor) ?? null,
    overhead: isRigOverhead(bench),
  };
}

/** A boom reaches over the set: only `overhead: no` says that nothing is under the rig. */
export function isRigOverhead(bench: Bench): boolean {
  const support = supportOf(bench);
  if (support?.state !== 'known') return false;
  const { stand } = bench.carriers;
  return ifKnown(support.value.overhead) ?? (stand && ifKnown(stand.fields.kind)) === 'boom';
}

/** The rig as the head carries it: with its rail, where the support names one. */
function withRailKg(bench: Bench, rigKg: number | undefined): number | null {
  if (rigKg === undefined) return null;
  const { rail } = bench.carriers;
  return rigKg + ((rail && ifKnown(rail.fields.mass)) || 0);
}

/** A light on its stand or boom. */
export interface HeldLight {
  /** Where the light names its stand. */
  readonly at: Place;
  readonly light: string;
  readonly stand: string;
  readonly massKg: number;
  readonly payloadKg: number | null;
  /** Of a boom. */
  readonly stabilityFactor: number | null;
}

/** The lights whose mass is known, each by its own stand: a second one of that name is another. */
export const heldLights = ({ lights }: Bench): readonly HeldLight[] =>
  lights.known
    ? lights.value.flatMap(({ name, fields, stand }): HeldLight[] => {
        const mass = figureOf(fields.mass, name);
        if (!stand || !mass.known) return [];
        return [
          {
            at: fields.stand.at,
            light: name,
            stand: stand.name,
            massKg: mass.value,
            payloadKg: ifKnown(stand.fields.payload) ?? null,
            stabilityFactor: valueIn(tippingUnder(stand, mass)) ?? null,
          },
        ];
      })
    : [];

/** A light that needs care at its position. */
export interface LightWithCare {
  readonly at: Place;
  readonly light: string;
  readonly subject: string;
  readonly overhead: boolean;
  /** On mains, near a liquid subject. */
  readonly mainsNearLiquid: boolean;
  /** Hot, and its distance from the subject, mm. */
  readonly hot: { readonly distanceMm: number; readonly watts: number | null } | null;
}

/** Lamps that work by heat, or that get hot enough to burn. */
const HOT: ReadonlySet<string> = new Set(['tungsten', 'discharge']);
/** Nearer than this a hot lamp dries, heats or burns what it lights, mm. Common practice. */
const NEAR_MM = 500;

export function lightsWithCare({ lights, subject }: Bench): readonly LightWithCare[] {
  if (!lights.known || !subject) return [];
  const isLiquid = natureOf(subject)?.isLiquid === true;
  return lights.value.flatMap(({ name, fields, isOverhead, at }): LightWithCare[] => {
    const place = ifKnown(fields.at);
    const distanceMm = place && ifKnown(place.distance);
    const isHot = HOT.has(ifKnown(fields.kind) ?? '');
    const near = isHot && distanceMm !== undefined && distanceMm < NEAR_MM;
    const care = {
      at,
      light: name,
      subject: subject.name,
      overhead: isOverhead,
      mainsNearLiquid: isLiquid && ifKnown(fields.supply) === 'mains',
      hot: near ? { distanceMm, watts: ifKnown(fields.power) ?? null } : null,
    };
    return care.overhead || care.mainsNearLiquid || care.hot ? [care] : [];
  });
}
