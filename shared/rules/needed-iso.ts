/** The ISO that a shot needs, as a value that can be set: a value that no body has is no advice. */
import { MARKED_ISO } from '../exposure/remedies.ts';
import type { Bench } from '../figures/bench.ts';
import type { Say } from '../say/say.ts';
import { message } from '../words/message.ts';

export interface IsoRange {
  readonly lowest: number;
  readonly highest: number;
}

/** Third-stop marks are rounded; at an end of the range, the body's own mark counts. */
const DEAD_BAND = 0.03;

/** The ISO values of the body; a limit that it doesn't give is that of common bodies. */
export function isoRangeOf({ isoLimits: { lowest, highest } }: Pick<Bench, 'isoLimits'>): IsoRange {
  return {
    lowest: lowest.known ? lowest.value : MARKED_ISO[0]!,
    highest: highest.known ? highest.value : MARKED_ISO.at(-1)!,
  };
}

export const canBeSet = (iso: number, { lowest, highest }: IsoRange): boolean =>
  iso >= lowest * (1 - DEAD_BAND) && iso <= highest * (1 + DEAD_BAND);

/** "1600"; outside the range of the body, by how much: "1.4 stops above ISO 25600". */
export function neededIso(iso: number, range: IsoRange, say: Say): string {
  const { lowest, highest } = range;
  if (canBeSet(iso, range)) return say.iso(Math.min(highest, Math.max(lowest, iso)));
  return iso > highest
    ? message`${say.stops(Math.log2(iso / highest))} above ISO ${say.iso(highest)}`
    : message`${say.stops(Math.log2(lowest / iso))} below ISO ${say.iso(lowest)}`;
}

/** "needs ISO 1600", "needs 1.4 stops above ISO 25600". */
export const needsIso = (iso: number, range: IsoRange, say: Say): string =>
  canBeSet(iso, range)
    ? message`needs ISO ${neededIso(iso, range, say)}`
    : message`needs ${neededIso(iso, range, say)}`;
