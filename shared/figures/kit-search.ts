/**
 * Searches the kit for rigs that reach a shot's field, and gives the figures of the shot with
 * each.
 */
import {
  type KitSearch,
  type Piece,
  type Way,
  waysToReach,
  waysWith,
} from '../optics/kit-search.ts';
import type { BodyPart, ChainPart } from '../optics/parts.ts';
import { type Bench, substitute } from './bench.ts';
import { figuresOf } from './compute.ts';
import { valueIn } from './figure.ts';
import { chainBehind, filtersLengthMm } from './filters.ts';
import type { ShotFigures } from './shot-figures.ts';
import { REACH_TOLERANCE } from './traced.ts';

/** A rig that the kit could make for a shot. */
export interface KitRig {
  /** From the sensor toward the subject, body and lens included. */
  readonly parts: readonly string[];
  /** The shot's figures with it. */
  readonly figures: ShotFigures;
}

/** Pieces of one kind: their names in the kit, and what each does to the chain. */
interface Pieces<P extends ChainPart> {
  readonly names: readonly string[];
  readonly parts: readonly P[];
}

/** Names to choose tubes, converters and close-up lenses from. */
interface Choice {
  readonly tubes: readonly string[];
  readonly converters: readonly string[];
  readonly closeUps: readonly string[];
}

const wholeKit = ({ offer }: Bench): Choice => ({
  tubes: offer.names('tubes'),
  converters: offer.names('converters'),
  closeUps: offer.names('close-up-lenses'),
});

/** Rigs that were found, and whether all were looked at that the kit could make. */
interface KitRigs {
  readonly rigs: readonly KitRig[];
  readonly complete: boolean;
}

/**
 * Rigs of the shot's body and lens with pieces of the whole kit that reach what the shot needs, fewest
 * parts first. None if no rig reaches it, or if data for the search are missing. Pieces without data
 * are skipped.
 */
export function rigsInReach(bench: Bench, most: number): KitRigs {
  const found = searchOf(bench, wholeKit(bench));
  if (!found) return { rigs: [], complete: true };
  const { ways, complete } = waysToReach(found.search, most);
  return { rigs: ways.map((way) => kitRig(bench, found.partsOf(way))), complete };
}

export const kitRig = (bench: Bench, parts: readonly string[]): KitRig => ({
  parts,
  figures: figuresWith(bench, parts),
});

/** A rig of the same pieces in another order, and the light that it saves. */
export interface OtherOrder {
  readonly parts: readonly string[];
  readonly savedStops: number;
  readonly savedParts: number;
}

/**
 * The order of the rig's own tubes and converters that loses the smallest amount of light at the
 * needed field, if it differs from the rig's order. Tubes may be left out; every converter and
 * close-up lens stays.
 */
export function otherOrder(bench: Bench, { lightLossStops }: ShotFigures): OtherOrder | undefined {
  const own = bench.parts.known ? bench.parts.value : [];
  const firstTube = own.findIndex(({ kind }) => kind === 'tube');
  const lastConverter = own.findLastIndex(({ kind }) => kind === 'converter');
  if (firstTube < 0 || firstTube > lastConverter || !lightLossStops.known) return undefined;
  const named = (wanted: string) =>
    own.filter(({ kind }) => kind === wanted).map(({ name }) => name);
  const kept = [...named('converter'), ...named('close-up')];
  const choice = {
    tubes: named('tube'),
    converters: named('converter'),
    closeUps: named('close-up'),
  };
  const found = searchOf(bench, choice);
  if (!found) return undefined;
  const present = own.map(({ name }) => name);
  const behind = behindConverters(present, choice);
  let best: OtherOrder | undefined;
  for (let count = kept.length; count <= present.length - 2; count++)
    for (const way of waysWith(count, found.search)) {
      const parts = found.partsOf(way);
      const there = behindConverters(parts, choice);
      const isOther = parts.some((name) => there.get(name) !== behind.get(name));
      if (!isOther || !kept.every((name) => parts.includes(name))) continue;
      const savedStops = lightLossStops.value - way.trace.lightLossStops;
      if (best && savedStops <= best.savedStops) continue;
      best = { parts, savedStops, savedParts: present.length - parts.length };
    }
  return best;
}

/** For each tube, how many converters stand between it and the lens. */
function behindConverters(
  parts: readonly string[],
  { tubes, converters }: Choice,
): ReadonlyMap<string, number> {
  return new Map(
    parts.flatMap((name, index) =>
      tubes.includes(name)
        ? [[name, parts.slice(index).filter((other) => converters.includes(other)).length]]
        : [],
    ),
  );
}

interface Found {
  readonly search: KitSearch;
  /** Names from the sensor toward the subject, body and lens included. */
  readonly partsOf: (way: Way) => readonly string[];
}

function searchOf(bench: Bench, choice: Choice): Found | undefined {
  const { body, lens, offer, wantedMagnification: wanted } = bench;
  if (!body || !lens || !wanted.known || !(wanted.value > 0)) return undefined;
  const bare = offer.layOut([body.name, lens.name]).chain;
  if (!bare.known) return undefined;
  const pieces = <K extends ChainPart['kind']>(names: readonly string[], kind: K) =>
    piecesOf(bench, names, kind, body.name, lens.name);
  const tubes = pieces(choice.tubes, 'tube');
  const converters = pieces(choice.converters, 'converter');
  const closeUps = pieces(choice.closeUps, 'close-up');
  const lists = { tube: tubes, converter: converters, 'close-up': closeUps };
  const nameOf = ({ kind, index }: Piece): string => lists[kind].names[index]!;
  return {
    search: {
      body: bare.value.parts[0] as BodyPart,
      lens: bare.value.lens,
      kit: { tubes: tubes.parts, converters: converters.parts, closeUps: closeUps.parts },
      magnification: wanted.value,
      tolerance: REACH_TOLERANCE,
      filtersMm: valueIn(filtersLengthMm(bench.filters)),
    },
    partsOf: ({ behind, before }) => [
      body.name,
      ...behind.map(nameOf),
      lens.name,
      ...before.map(nameOf),
    ],
  };
}

/** The pieces whose data are known, by their names. */
function piecesOf<K extends ChainPart['kind']>(
  { offer }: Bench,
  names: readonly string[],
  kind: K,
  body: string,
  lens: string,
): Pieces<Extract<ChainPart, { kind: K }>> {
  const found = names.flatMap((name) => {
    const list = kind === 'close-up' ? [body, lens, name] : [body, name, lens];
    const { chain } = offer.layOut(list);
    const part = chain.known ? chain.value.parts.find((it) => it.kind === kind) : undefined;
    return part ? [{ name, part: part as Extract<ChainPart, { kind: K }> }] : [];
  });
  return { names: found.map(({ name }) => name), parts: found.map(({ part }) => part) };
}

/**
 * The shot's figures with other parts. What was measured with the present parts no longer holds.
 */
function figuresWith(bench: Bench, parts: readonly string[]): ShotFigures {
  const layout = bench.offer.layOut(parts);
  const { fields, rig } = bench;
  const unmeasured = { state: 'missing', at: fields.measured.at } as const;
  return figuresOf(
    substitute(bench, {
      parts: layout.parts,
      chainParts: layout.chainParts,
      chain: chainBehind(layout.chain, bench.filters),
      reach: layout.reach,
      weighedParts: layout.weighedParts,
      fields: { ...fields, measured: unmeasured },
      rig: rig && { ...rig, fields: { ...rig.fields, measured: unmeasured } },
    }),
  );
}
