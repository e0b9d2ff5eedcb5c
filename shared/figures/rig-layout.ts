/**
 * A rig as an optical chain, and its magnification range: calculated once for all the shots that
 * use it.
 */
import { arrangeChain, type Chain } from '../optics/arrangement.ts';
import type { ChainFault, MissingInput } from '../optics/parts.ts';
import { reach } from '../optics/reach.ts';
import type { Rig } from '../plan/generated/types.ts';
import { message } from '../words/message.ts';
import { derive, type Figure, type Need, notKnown, silent, type UnknownFigure } from './figure.ts';
import type { Finder, Named } from './named.ts';
import { layOutParts, type NamedPart, type PartsLayout } from './parts.ts';
import type { WeighedPart } from './shot-figures.ts';

export interface RigLayout extends PartsLayout {
  readonly weighedParts: Figure<readonly WeighedPart[]>;
  readonly chain: Figure<Chain>;
  /** Smallest and largest magnification: ring at infinity, ring at its closest. */
  readonly reach: Figure<readonly [least: number, most: number]>;
}

export function layOutRig(reader: Finder, rig: Named<Rig> | undefined): RigLayout {
  const layout = layOutParts(reader, rig);
  const chain = derive([layout.chainParts, layout.parts], (list, named) => {
    const arranged = arrangeChain(list);
    return arranged.ok ? arranged.chain : faultOf(arranged.fault, named);
  });
  const reached = derive([chain], (it) => reach(it) ?? notKnown(message`nothing comes into focus`));
  return { ...layout, chain, reach: reached, weighedParts: weighed(layout.parts) };
}

/**
 * Each part as a weight, one behind the other from the sensor plane forward: at its own balance
 * where that is given, else at half its length.
 */
function weighed(parts: Figure<readonly NamedPart[]>): Figure<readonly WeighedPart[]> {
  if (!parts.known) return parts;
  const masses = parts.value.map((part) => part.massKg);
  const lengths = parts.value.map((part) => part.lengthMm);
  return derive([derive(masses, (...all) => all), derive(lengths, (...all) => all)], (kg, mm) => {
    let faceMm = 0;
    return parts.value.map(({ name, kind, balanceMm }, index) => {
      const length = mm[index]!;
      const atMm = faceMm + (balanceMm ?? length / 2);
      faceMm += length;
      return { name, kind, massKg: kg[index]!, atMm };
    });
  });
}

function faultOf(fault: ChainFault, parts: readonly NamedPart[]): UnknownFigure {
  // Parts out of order or missing have a finding of their own at the rig.
  if (fault.kind !== 'needs') return silent;
  return { known: false, needs: [needOf(fault, parts)] };
}

const KEY_OF: Record<MissingInput['input'], string> = {
  flangeMm: 'flange-distance',
  lengthMm: 'length',
};

/** A value that a chain needs, as the entry and key that it belongs to. */
export function needOf({ part, input }: MissingInput, parts: readonly NamedPart[]): Need {
  const { name, defined } = parts[part]!;
  const key = KEY_OF[input];
  return { key, of: name, at: { ...defined, path: [key] } };
}
