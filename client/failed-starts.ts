/** A server that has lived this long was up, whether or not it had a plan to check. */
const SURELY_UP_MS = 10_000;
/** So many starts in a row without any work, and the server doesn't come up. */
export const MOST_FAILED_STARTS = 5;

/**
 * Counts starts of the server that came to nothing. A start has failed if the server ended soon
 * after it and had checked no plan till then: one that is killed between two checks, however often
 * and however fast, is no server that can't start.
 */
export class FailedStarts {
  #inARow = 0;
  #startedAt: number;

  /** `now` in ms here and below. */
  constructor(now: number) {
    this.#startedAt = now;
  }

  /** The server has done what it is there for. */
  worked(): void {
    this.#inARow = 0;
    this.#startedAt = Number.NEGATIVE_INFINITY;
  }

  /** Somebody starts the server by hand: what was before is forgotten. */
  startedByHand(now: number): void {
    this.#inARow = 0;
    this.#startedAt = now;
  }

  /** The server has ended; whether it is to be started again, which then happens `now`. */
  ended(now: number): 'start again' | 'give up' {
    this.#inARow = now - this.#startedAt < SURELY_UP_MS ? this.#inARow + 1 : 0;
    this.#startedAt = now;
    return this.#inARow < MOST_FAILED_STARTS ? 'start again' : 'give up';
  }
}
