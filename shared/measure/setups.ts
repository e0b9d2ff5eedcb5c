/** The setups of a lens that could be measured with what the plan has. */

import { findPart } from '../figures/find-part.ts';
import { type BenchKey, flangeSigma, usualSigma } from '../figures/lens-bench.ts';
import type { Named } from '../figures/named.ts';
import { plainPart } from '../figures/plain-part.ts';
import type { PlanReader } from '../figures/reader.ts';
import type { LensFit } from '../lens-fit/fit.ts';
import { lensAt } from '../lens-fit/fit.ts';
import { predicted, type ReadingKind, type Setup } from '../lens-fit/reading.ts';
import type { ChainPart } from '../optics/parts.ts';
import { ifKnown } from '../plan/field.ts';
import type { Body, Lens } from '../plan/generated/types.ts';

/** One value that could be measured in one setup. */
export interface Candidate {
  /** Body, tubes and converters by name, from the body forward. */
  readonly with: readonly string[];
  readonly ring: 'closest' | 'infinity';
  readonly key: CandidateKey;
  /** What will be read, by what is known so far: mm; of light, stops. */
  readonly expected: number;
  readonly sigma: number;
  readonly setup: Setup;
  readonly of: ReadingKind;
}

type CandidateKey = Exclude<BenchKey, 'magnification'>;

const KEYS: readonly CandidateKey[] = [
  'field',
  'working-distance',
  'from-sensor',
  'effective-f-number',
];

/** A ruler of a metre, and room for it before the lens. */
const MOST_MM = 1000;
const LEAST_ROOM_MM = 5;
/** Beyond these nobody sets up a bench. */
const FARTHEST_MM = 5000;

/** All that is not in the lens's bench already. */
export function candidates(
  reader: PlanReader,
  lens: Named<Lens>,
  body: Named<Body>,
  fit: LensFit,
): readonly Candidate[] {
  const part = lensAt(fit);
  const rings = part.closest ? (['closest', 'infinity'] as const) : (['infinity'] as const);
  const taken = takenIn(lens.fields);
  return stacksOf(reader).flatMap((stack) => {
    const behind = chainOf(reader, [body.name, ...stack]);
    if (!behind) return [];
    return rings.flatMap((ring) =>
      KEYS.flatMap((key): readonly Candidate[] => {
        const names = [body.name, ...stack];
        if (taken.has(keyFor(names, ring, key))) return [];
        const setup: Setup = { behind, before: [], ring };
        const of = kindOf(key, body.fields);
        const expected = of ? predicted(part, setup, of) : Number.NaN;
        const room = predicted(part, setup, { kind: 'working-distance' });
        if (!of || !canBeRead(key, expected, room, setup)) return [];
        const mount = key === 'working-distance' ? flangeSigma(body.fields) : 0;
        if (mount === undefined) return [];
        const sigma = Math.hypot(usualSigma(key, expected), mount);
        return [{ with: names, ring, key, expected, sigma, setup, of }];
      }),
    );
  });
}

/**
 * Light is compared with the lens alone at infinity, which says nothing of itself; behind a converter
 * its glass would be measured too.
 */
function canBeRead(
  key: CandidateKey,
  expected: number,
  room: number,
  { behind, ring }: Setup,
): boolean {
  if (!Number.isFinite(expected) || room < LEAST_ROOM_MM || room > FARTHEST_MM) return false;
  if (key === 'field') return expected > 0 && expected <= MOST_MM;
  if (key === 'effective-f-number')
    return (
      !behind.some(({ kind }) => kind === 'converter') && (behind.length > 1 || ring === 'closest')
    );
  return expected > 0 && expected <= FARTHEST_MM;
}

function kindOf(key: CandidateKey, body: Body): ReadingKind | undefined {
  if (key === 'effective-f-number') return { kind: 'light' };
  if (key !== 'field') return { kind: key };
  const sensor = ifKnown(body.sensor);
  return sensor && { kind: 'field', sensorWidthMm: sensor.width };
}

/** None, those of the plan's rigs, and each piece alone; each once. */
function stacksOf(reader: PlanReader): readonly (readonly string[])[] {
  const ofRigs = reader.offer.names('rigs').flatMap((name) => {
    const rig = reader.find('rigs', name);
    const parts = (rig && ifKnown(rig.fields.parts)) ?? [];
    const names = parts.flatMap((part) => (part.state === 'known' ? [part.value as string] : []));
    const kinds = names.map((part) => findPart(reader, part)?.kind);
    return [names.filter((_, at) => kinds[at] === 'tube' || kinds[at] === 'converter')];
  });
  const alone = [...reader.offer.names('tubes'), ...reader.offer.names('converters')];
  const all = [[], ...alone.map((name) => [name]), ...ofRigs];
  return [...new Map(all.map((stack) => [stack.join(' '), stack])).values()];
}

/** undefined: something of it is not known. */
function chainOf(reader: PlanReader, names: readonly string[]): readonly ChainPart[] | undefined {
  const parts = names.map((name) => {
    const part = findPart(reader, name);
    const figure = part && part.kind !== 'lens' ? plainPart(part) : undefined;
    return figure?.known ? figure.value : undefined;
  });
  return parts.every((part) => part !== undefined) ? parts : undefined;
}

const keyFor = (names: readonly string[], ring: unknown, key: string): string =>
  JSON.stringify([names, ring, key]);

/** What was measured already: the same again is as far off as it was. */
function takenIn({ bench }: Lens): ReadonlySet<string> {
  const taken = new Set<string>();
  for (const row of ifKnown(bench) ?? []) {
    if (row.state !== 'known') continue;
    const names = (ifKnown(row.value.with) ?? []).map((name) => String(ifKnown(name)));
    for (const key of KEYS)
      if (row.value[key].state !== 'missing')
        taken.add(keyFor(names, ifKnown(row.value.ring), key));
    if (row.value.magnification.state !== 'missing')
      taken.add(keyFor(names, ifKnown(row.value.ring), 'field'));
  }
  return taken;
}
