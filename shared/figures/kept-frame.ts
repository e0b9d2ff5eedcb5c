/**
 * Whether a shot frames the same although its lens is not known exactly: its ring is set for the field
 * that it wants, which the rig has to reach wherever its lens stands.
 */
import type { Bench } from './bench.ts';
import { type Figure, valueIn } from './figure.ts';
import { measurementsOf } from './measured.ts';

type Reach = Bench['reach'];

/** What a rig reaches wherever its lens stands, for all the shots that use it; null: not known. */
const common = new WeakMap<Reach, readonly [least: number, most: number] | null>();

/** @param elsewhere the reach of the shot's rig at each end of what is uncertain of its lens */
export function keepsFrame(bench: Bench, elsewhere: () => readonly Reach[]): boolean {
  const { reach, wantedMagnification: wanted } = bench;
  if (!wanted.known || measurementsOf(bench).length > 0) return false;
  let reached = common.get(reach);
  if (reached === undefined) {
    reached = inAll([reach, ...elsewhere()]);
    common.set(reach, reached);
  }
  return reached !== null && wanted.value >= reached[0] && wanted.value <= reached[1];
}

function inAll(all: readonly Figure<readonly [least: number, most: number]>[]) {
  const ends = all.map(valueIn);
  if (ends.includes(undefined)) return null;
  const known = ends as readonly (readonly [number, number])[];
  return [
    Math.max(...known.map(([least]) => least)),
    Math.min(...known.map(([, most]) => most)),
  ] as const;
}
