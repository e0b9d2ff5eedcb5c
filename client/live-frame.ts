/** The frame of the shot at the cursor: small at once, sharp when nothing has changed for a while. */

import type { PageFrame } from '../shared/api/frame.ts';

const SMALL = 160;
const SHARP = 480;
const IDLE_MS = 600;

export class LiveFrame {
  readonly #ask: (shot: string, width: number) => Promise<PageFrame | null>;
  readonly #show: (shot: string, frame: PageFrame | null) => void;
  #shot: string | null = null;
  /** Counts what was asked for: an answer to an earlier question is not shown. */
  #turn = 0;
  #waiting: ReturnType<typeof setTimeout> | undefined;

  constructor(
    ask: (shot: string, width: number) => Promise<PageFrame | null>,
    show: (shot: string, frame: PageFrame | null) => void,
  ) {
    this.#ask = ask;
    this.#show = show;
  }

  /** @param isNew the plan may have changed, so that the same shot is drawn anew */
  async follow(shot: string | null, isNew: boolean): Promise<void> {
    if (shot === this.#shot && !isNew) return;
    this.#shot = shot;
    this.#turn += 1;
    clearTimeout(this.#waiting);
    if (shot === null) return;
    const turn = this.#turn;
    await this.#draw(shot, SMALL, turn);
    if (turn === this.#turn)
      this.#waiting = setTimeout(() => void this.#draw(shot, SHARP, turn), IDLE_MS);
  }

  async #draw(shot: string, width: number, turn: number): Promise<void> {
    const frame = await this.#ask(shot, width);
    if (turn === this.#turn) this.#show(shot, frame);
  }

  dispose(): void {
    this.#turn += 1;
    clearTimeout(this.#waiting);
  }
}
