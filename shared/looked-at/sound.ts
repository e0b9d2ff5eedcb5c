/** How loud a sound is, and whether it was too loud to be recorded. Levels by AES17: of full scale. */
import type { SeenSound } from './looked.ts';

const FULL = 32768;
/** What a converter leaves under full scale where it clips. */
const AT_FULL = 32700;
/** So many samples at full scale one after the other are no peak of a wave. */
const RUN = 3;

export class SoundMeter {
  #peak = 0;
  #squares = 0;
  #samples = 0;
  #clipped = 0;
  #run = 0;

  /** @param samples one channel's, or those of several in turn, whose runs are then shorter */
  add(samples: Int16Array): void {
    for (const sample of samples) {
      const size = Math.abs(sample);
      if (size > this.#peak) this.#peak = size;
      this.#squares += sample * sample;
      this.#run = size >= AT_FULL ? this.#run + 1 : 0;
      if (this.#run === RUN) this.#clipped += RUN;
      else if (this.#run > RUN) this.#clipped++;
    }
    this.#samples += samples.length;
  }

  /** null: there were no samples. */
  get heard(): SeenSound | null {
    if (this.#samples === 0) return null;
    const level = (share: number): number | null => (share > 0 ? 20 * Math.log10(share) : null);
    return {
      peakDb: level(this.#peak / FULL),
      rmsDb: level(Math.sqrt(this.#squares / this.#samples) / FULL),
      clipped: this.#clipped / this.#samples,
    };
  }
}
