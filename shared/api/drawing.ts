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
}

type DrawingId =
  | 'set-up'
  | 'frame'
  | 'rig'
  | 'contrast'
  | 'light'
  | 'depth'
  | 'tilt'
  | 'life'
  | 'colours'
  | 'edit'
  | 'day';

export interface Picture {
  /** Units across, where that is not the usual `WIDTH`. */
  readonly width?: number;
  readonly height: number;
  /** Millimetres that one unit of the drawing stands for, where it is to scale. */
  readonly mmPerUnit?: number;
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
