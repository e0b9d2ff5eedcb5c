/** The side effect of moving a lamp: light that is less even over the frame than before. */
import type { Bench } from '../figures/bench.ts';
import { figuresOf } from '../figures/compute.ts';
import { Say } from '../say/say.ts';
import { message } from '../words/message.ts';

/** Less than this nobody sees. */
const SEEN_STOPS = 0.1;

/** The side effect of a fix that takes a shot's lamps from one bench to the other, if it has one. */
export function unevenPrice(from: Bench, to: Bench): { readonly sideEffects?: string } {
  const [before, after] = [figuresOf(from).unevennessStops, figuresOf(to).unevennessStops];
  if (!after.known) return {};
  const { value: stops } = after;
  const was = before.known ? before.value : 0;
  if (!(stops >= SEEN_STOPS) || stops < was + SEEN_STOPS) return {};
  return {
    sideEffects: Number.isFinite(stops)
      ? message`light varies by ${new Say().stops(stops)} across the frame`
      : message`part of the frame is unlit`,
  };
}
