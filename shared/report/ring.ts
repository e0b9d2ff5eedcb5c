/** Where the focus ring is to stand, as a lens may be marked: by ratio, and by distance. */
import type { Bench } from '../figures/bench.ts';
import type { ShotFigures } from '../figures/shot-figures.ts';
import { presentFocalMm, subjectToSensorMm } from '../optics/focal-length.ts';
import { type Say, significant } from '../say/say.ts';
import { message } from '../words/message.ts';

/**
 * Distance on the ring's scale, subject to sensor, mm: that of the lens straight on the camera,
 * which is what is engraved. null: not known, or at infinity.
 */
export function markedDistanceMm({ chain }: Bench, ring: number): number | null {
  if (!chain.known || ring === 0) return null;
  const { lens } = chain.value;
  const mm = subjectToSensorMm(presentFocalMm(lens, ring), ring);
  return Number.isFinite(mm) ? mm : null;
}

/** "0.122x (about 1:8), marked about 1.9 m"; null: not known. */
export function ringPlace(
  bench: Bench,
  { ringMagnification: ring }: ShotFigures,
  say: Say,
): string | null {
  if (!ring.known) return null;
  if (ring.value === 0) return message`infinity`;
  const times = message`${say.magnification(ring.value)} (about ${ratioOf(ring.value)})`;
  const mm = markedDistanceMm(bench, ring.value);
  return mm === null ? times : message`${times}, marked about ${roughLength(mm, say)}`;
}

/** From here on ratios are whole: 1:8, not 1:8.2. */
const WHOLE = 3;

/** "1:8", and "2:1" for larger than life. */
function ratioOf(m: number): string {
  const times = m <= 1 ? 1 / m : m;
  const words = times < WHOLE ? significant(times, 2) : String(Math.round(times));
  return m <= 1 ? `1:${words}` : `${words}:1`;
}

/** As rings are marked, to two digits: metres or feet. */
const roughLength = (mm: number, say: Say): string =>
  say.lengths === 'inches' ? `${significant(mm / 304.8, 2)} ft` : `${significant(mm / 1000, 2)} m`;
