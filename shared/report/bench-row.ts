/** What a test clip of a grey card says of its body or lamp, as a row of that one's `bench`. */
import { greyCardStops } from '../looked-at/grey-card.ts';
import type { LookAsk, LookedAt, MeasuredSides } from '../looked-at/looked.ts';
import type { Lux, Mm, Stops } from '../quantity/brands.ts';
import { KINDS } from '../quantity/index.ts';

export interface BenchRow {
  readonly body: string;
  readonly set: number;
  /** Stops over (+) or under the plan. */
  readonly foundStops: number;
  /** As it is written in the plan: "{ set: 400, found: 0.3 stops under }". */
  readonly text: string;
}

export interface LampRow {
  readonly light: string;
  readonly distanceMm: number;
  /** At that distance, by the picture. */
  readonly lux: number;
  /** As it is written in the plan: "{ distance: 1000 mm, illuminance: 870 lx }". */
  readonly text: string;
}

export interface BenchRows {
  readonly body: BenchRow | null;
  readonly lamp: LampRow | null;
  /** Whose offset it is: what was measured before has none left. */
  readonly of: 'body' | 'lamp' | 'together';
}

const NO_ROWS: BenchRows = { body: null, lamp: null, of: 'together' };

/** The offset of a clip, put to where it can only be from. */
export function benchRows(ask: LookAsk, looked: LookedAt, transfer: string | undefined): BenchRows {
  const body = benchRow(ask, looked, transfer);
  const stops = body && greyCardStops(looked, ask.exposureErrorStops ?? 0);
  if (!body || stops === null) return NO_ROWS;
  const { measured } = ask;
  if (measured?.body && measured.sheetLamp)
    return { body: null, lamp: lampRow(measured.sheetLamp, stops), of: 'lamp' };
  const isBody = measured?.lamps === true && !measured.body;
  return { body, lamp: null, of: isBody ? 'body' : 'together' };
}

function lampRow(
  { name, distanceMm, lux }: NonNullable<MeasuredSides['sheetLamp']>,
  stops: number,
): LampRow {
  const found = Number((lux * 2 ** stops).toPrecision(2));
  const distance = KINDS.length.print(distanceMm as Mm);
  const illuminance = KINDS.illuminance.print(found as Lux);
  const text = `{ distance: ${distance}, illuminance: ${illuminance} }`;
  return { light: name, distanceMm, lux: found, text };
}

/**
 * @param transfer as the clip states it
 * @returns null: the middle is no grey card, or something that it takes isn't known
 */
function benchRow(
  { exposureErrorStops, iso, body }: LookAsk,
  looked: LookedAt,
  transfer: string | undefined,
): BenchRow | null {
  if (exposureErrorStops === null || iso === null || body === null) return null;
  if (transfer !== undefined && transfer !== 'bt709') return null;
  const stops = greyCardStops(looked, exposureErrorStops);
  if (stops === null) return null;
  const foundStops = Math.round(stops * 10) / 10;
  const found = KINDS['over-under'].print(foundStops as Stops);
  return { body, set: iso, foundStops, text: `{ set: ${iso}, found: ${found} }` };
}
