/** What was seen in the pictures of a clip and heard in its sound: plain data. */

/** What to look for, from the plan. */
export interface LookAsk {
  /** Hz: at which the lamps of the shot pulse; 0 and what isn't known are left out. */
  readonly lampsHz: readonly number[];
  /** Frames a second that were exposed, whatever the clip plays at; null: not known. */
  readonly exposedFps: number | null;
  /** Of the shot; null: not known. */
  readonly effectiveFNumber: number | null;
  /** Pitch of the recorded pixels on the sensor, µm; null: not known. */
  readonly pixelUm: number | null;
  /** Stops over (+) or under; null: not known. */
  readonly exposureErrorStops: number | null;
  /** That the shot sets; null: automatic, or not known. */
  readonly iso: number | null;
  /** Its name in the plan; null: the shot has none. */
  readonly body: string | null;
  /** Left out: nothing is known of how body and lamps were measured. */
  readonly measured?: MeasuredSides;
}

/** What of an exposure was measured before, so that an offset can only be of the rest. */
export interface MeasuredSides {
  /** The body has test frames in its `bench`. */
  readonly body: boolean;
  /** Every lamp of the shot was read with a meter. */
  readonly lamps: boolean;
  /** The one lamp of the shot at full output, by its data sheet; null: several, or otherwise. */
  readonly sheetLamp: {
    readonly name: string;
    readonly distanceMm: number;
    readonly lux: number;
  } | null;
}

/** Flicker at one frequency of a lamp. */
export interface SeenFlicker {
  readonly lampHz: number;
  /** Amplitude over the mean, of light; null: can't be told apart from the scene at this rate. */
  readonly depth: number | null;
  /** As deep a change as the picture has at other frequencies. */
  readonly floor: number;
}

/** Frames that repeat the one before. */
export interface SeenRepeat {
  /** Of the first of them, counted from 0. */
  readonly frame: number;
  readonly count: number;
}

export interface SeenSound {
  /** Of full scale, dB; null: not one sample differs from 0. */
  readonly peakDb: number | null;
  readonly rmsDb: number | null;
  /** Share of samples in runs at full scale. */
  readonly clipped: number;
}

export interface LookedAt {
  readonly frames: number;
  /** Share of the picture at reference white and above, and at black and below: median of frames. */
  readonly clipped: number;
  readonly crushed: number;
  readonly flicker: readonly SeenFlicker[];
  readonly repeats: readonly SeenRepeat[];
  /** Width of the sharpest edges, px; null: too few edges to tell. */
  readonly edgePx: number | null;
  /** Frequency at which these edges keep half of their contrast, cycles a pixel. */
  readonly halfContrast: number | null;
  /** Mean light of red, green and blue; 1 is reference white. */
  readonly light: readonly [red: number, green: number, blue: number];
  /** The middle of the frame, if it is even, as a grey card is. */
  readonly middle: { readonly light: number; readonly isEven: boolean };
  /** null: there is no sound. */
  readonly sound: SeenSound | null;
}

/** A picture that is small: planes of brightness, blue and red differences, one after the other. */
export interface SmallFrame {
  readonly width: number;
  readonly height: number;
  /** 3 · width · height bytes, 16 to 235 and 128 ± 112 (ITU-R BT.709, 4.6). */
  readonly planes: Uint8Array;
}
