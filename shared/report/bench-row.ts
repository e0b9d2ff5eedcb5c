/** What a test clip of a grey card says of its body, as a row of the body's `bench`. */
import { greyCardStops } from '../looked-at/grey-card.ts';
import type { LookAsk, LookedAt } from '../looked-at/looked.ts';
import type { Stops } from '../quantity/brands.ts';
import { KINDS } from '../quantity/index.ts';

export interface BenchRow {
  readonly body: string;
  readonly set: number;
  /** Stops over (+) or under the plan. */
  readonly foundStops: number;
  /** As it is written in the plan: "{ set: 400, found: 0.3 stops under }". */
  readonly text: string;
}

/**
 * @param transfer as the clip states it
 * @returns null: the middle is no grey card, or something that it takes isn't known
 */
export function benchRow(
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
