/** A shot's frame as hosts see it: a file and what there is to say of it. */

/** Traced, or the reason why it can't be; null: a finding of its own says that. */
export type DrawnFrame =
  | {
      readonly ok: true;
      readonly width: number;
      readonly height: number;
      readonly png: Uint8Array;
      /** What it is and what is not in it, in whole sentences. */
      readonly caption: readonly string[];
    }
  | { readonly ok: false; readonly why: string | null };

/** A frame that is drawn in slices. */
export interface FrameInMaking {
  /** Works on until it is done or `until` answers true; null: not done yet. */
  work(until: () => boolean): DrawnFrame | null;
}

/** A frame in a page. */
export interface PageFrame {
  readonly width: number;
  readonly height: number;
  /** `data:image/png;base64,…` */
  readonly src: string;
  readonly caption: readonly string[];
}
