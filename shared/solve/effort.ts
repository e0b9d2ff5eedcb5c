/**
 * What a search may cost. There is no clock here, so that the same plan gives the same answer on
 * every machine: what is asked is counted, by what asking it costs as measured.
 */

/** A twentieth of a millisecond, on a machine of 2024. */
const UNITS_PER_MS = 20;

export class Effort {
  readonly #most: number;
  #spent = 0;
  #isCut = false;

  /** @param mostMs about so many milliseconds, more than 0 */
  constructor(mostMs: number) {
    this.#most = mostMs * UNITS_PER_MS;
  }

  spend(units: number): void {
    this.#spent += units;
  }

  /** Asked before each step, so that whoever asks and is told so leaves off. */
  isSpent(): boolean {
    if (this.#spent < this.#most) return false;
    this.#isCut = true;
    return true;
  }

  /** Something was left off because of it. */
  get isCut(): boolean {
    return this.#isCut;
  }

  get spent(): number {
    return this.#spent;
  }
}
