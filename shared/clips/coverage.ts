/** The cuts of the edit against how long the clips that they are laid into really are. */

/** A cut and the stretch of its clip that it uses, with what the join after it needs. */
export interface CutInClip {
  readonly cut: string;
  /** As the plan writes the clip's path. */
  readonly file: string;
  readonly fromS: number;
  readonly toS: number;
}

export interface CoveredCut extends CutInClip {
  readonly durationS: number;
  /** What the clip lacks at its end; 0: nothing. */
  readonly missingS: number;
}

/** Less than half a frame of most deliveries: rounding to frames moves more. */
const LEAST_MISSING_S = 0.01;

/** @param durationOf how long a clip is; undefined: it wasn't read */
export const coveredCuts = (
  cuts: readonly CutInClip[],
  durationOf: (file: string) => number | undefined,
): readonly CoveredCut[] =>
  cuts.flatMap((cut): CoveredCut[] => {
    const durationS = durationOf(cut.file);
    if (durationS === undefined) return [];
    const missingS = cut.toS - durationS;
    return [{ ...cut, durationS, missingS: missingS > LEAST_MISSING_S ? missingS : 0 }];
  });
