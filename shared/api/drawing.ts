/** The drawings of a sheet: their words, and their picture as a tree of elements. */

/** A drawing beside its words. */
export interface Drawing {
  readonly id: DrawingId;
  readonly title: string;
  /** All that it shows, for who can't see it; or why there is none. */
  readonly words: string;
  /** What is left to say beside the picture, where that shows the rest in words already. */
  readonly caption?: string;
  /** null: a figure that it would be drawn from is not known. */
  readonly picture: Picture | null;
  /** The key of the shot that decides most of it. */
  readonly key: string;
  /** Left out where nothing can be set in it. */
  readonly choices?: Choices;
}

/** Upright bands of a picture that each stand for a value of a key: a click there sets it. */
export interface Choices {
  readonly key: string;
  readonly top: number;
  readonly height: number;
  /** Side by side, from the left. */
  readonly bands: readonly {
    /** As the plan writes it. */
    readonly text: string;
    readonly from: number;
    readonly to: number;
    readonly isSet: boolean;
  }[];
}

type DrawingId =
  | 'set-up'
  | 'set-up-other'
  | 'frame'
  | 'rig'
  | 'aperture'
  | 'light'
  | 'depth'
  | 'tilt'
  | 'tilt-distance'
  | 'life'
  | 'colours'
  | 'retardation'
  | 'rail-scale'
  | 'edit'
  | 'day';

export interface Picture {
  /** Units across, where that is not the usual `WIDTH`. */
  readonly width?: number;
  readonly height: number;
  /** Millimetres that one unit of the drawing stands for, where it is to scale. */
  readonly mmPerUnit?: number;
  /** Printed at 100 % it is as large as what it shows, by `mmPerUnit`. */
  readonly isActualSize?: true;
  readonly shapes: readonly Child[];
}

export interface Element {
  readonly tag: string;
  readonly attributes: Attributes;
  readonly children: readonly Child[];
}

/** Left out where undefined or false; alone where true. */
export type Attributes = Readonly<Record<string, string | number | boolean | undefined>>;
export type Child = Element | string | null | undefined | false;
