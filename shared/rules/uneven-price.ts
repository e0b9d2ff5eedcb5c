/** What a lamp's new place costs: light that is less even over the frame than it was. */
import type { Bench } from '../figures/bench.ts';
import { figuresOf } from '../figures/compute.ts';
import { Say } from '../say/say.ts';
import { message } from '../words/message.ts';

/** Less than this nobody sees. */
const SEEN_STOPS = 0.1;

/** The price of a fix that takes a shot's lamps from one bench to the other; none where it costs none. */
export function unevenPrice(from: Bench, to: Bench): { readonly sideEffects?: string } {
  const [before, after] = [figuresOf(from).unevennessStops, figuresOf(to).unevennessStops];
  if (!after.known) return {};
  const { value: stops } = after;
  const was = before.known ? before.value : 0;
  if (!(stops >= SEEN_STOPS) || stops < was + SEEN_STOPS) return {};
  return {
    sideEffects: Number.isFinite(stops)
      ? message`light uneven by ${new Say().stops(stops)} edge to edge`
      : message`part of the frame gets no light`,
  };
}
