/** The kinds of what stands beside and over the text of a plan: each can be left out by itself. */

/** Hints behind values: magnification and field, aperture and depth, exposure, cuts of the edit. */
export const HINT_KINDS = ['size', 'aperture', 'exposure', 'cuts'] as const;
export type HintKind = (typeof HINT_KINDS)[number];

/** Parts of the line over each shot. */
export const LENS_KINDS = ['depth', 'exposure', 'reflections', 'checks', 'takes'] as const;
export type LensKind = (typeof LENS_KINDS)[number];
