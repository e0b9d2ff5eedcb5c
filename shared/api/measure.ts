/** What "measure next" answers with: plain data. */

/** What is known of a lens now, with the ends of what is likely. Lengths in mm. */
export interface KnownOfLens {
  readonly what:
    | 'focalLengthMm'
    | 'closestFocalLengthMm'
    | 'principalPlanesApartMm'
    | 'pupilRatio'
    | 'closestMagnification';
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/** What a measurement narrows. Half widths, the widest of these shots. */
interface NarrowedFigure {
  readonly figure: 'depth' | 'light' | 'working-distance';
  readonly shots: readonly string[];
  /** Shares of the figure; of light, stops. */
  readonly from: number;
  readonly to: number;
}

export interface MeasureNext {
  /** From the body forward. */
  readonly with: readonly string[];
  readonly ring: 'closest' | 'infinity';
  readonly measure: 'field' | 'from-sensor' | 'working-distance' | 'effective-f-number';
  /** About what will be read: mm; of light, stops darker than the lens alone at infinity. */
  readonly expected: number;
  /** The row for the lens's `bench`, with `?` where the measured number goes. */
  readonly row: string;
  /** How to take it, for people. */
  readonly how: string;
  /** What it will give, for people. */
  readonly gives: string;
  readonly narrows: readonly NarrowedFigure[];
}

export interface MeasureAdvice {
  readonly lens: string;
  /** Rows that its bench has. */
  readonly rows: number;
  readonly known: readonly KnownOfLens[];
  /** null: no measurement would make a shot's figures much narrower. */
  readonly next: MeasureNext | null;
}
