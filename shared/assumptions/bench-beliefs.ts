/**
 * What is believed of a light, a body, a converter and a close-up lens before something was measured
 * of them, and how far a measurement is right. Read only for those with a bench. Ends are wide enough
 * that nearly all real things lie between them; common practice where nothing else is said.
 */

interface Ends {
  readonly low: number;
  readonly high: number;
}

/** How far a reading of a light is right: lengths in mm, light in stops. */
export const LIGHT_METER = { stops: 0.1, distanceMm: 5, distanceShare: 0.01 } as const;

/** By how much what is said of a light may be off: its output in stops, its face as a share. */
export const LIGHT_AS_GIVEN = { outputStops: 0.3, faceShare: 0.02 } as const;

/** The diameter of a face that nobody gave, as shares of the nearest distance that was read at. */
export const FACE_SHARES: Ends = { low: 0.01, high: 1 };

/** How far a body's exposure may be from its ISO setting, stops to either side. */
export const ISO_OFFSET_STOPS = 1;

/** How far the exposure of a test frame is read right, stops. */
export const TEST_FRAME_STOPS = 0.2;

/** By how much a factor and a power may be off from what is printed, as shares. */
export const GLASS_AS_PRINTED = { factor: 0.03, power: 0.1 } as const;
