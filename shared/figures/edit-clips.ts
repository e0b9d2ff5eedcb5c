/** Which stretch of which clip each cut of the edit uses, where clips are listed. */
import type { CutInClip } from '../clips/coverage.ts';
import { editJson } from './edit-contract.ts';
import type { EditFigures } from './edit-figures.ts';

/** Cuts for which every needed value is known. */
export function cutsInClips(edit: EditFigures | null): readonly CutInClip[] {
  const figures = editJson(edit);
  if (!figures) return [];
  const { rateFps, cuts } = figures;
  return cuts.flatMap(
    ({ cut, clipFile, sourceStartS, sourceS, speed, handleAfterNeededFrames }): CutInClip[] => {
      if (clipFile === null || sourceStartS === null || sourceS === null) return [];
      // A dissolve continues in the clip after the cut, at the speed that the cut ends with.
      const frames = handleAfterNeededFrames ?? 0;
      const handleS = rateFps === null ? 0 : (frames / rateFps) * (speed?.[1] ?? 1);
      return [{ cut, file: clipFile, fromS: sourceStartS, toS: sourceStartS + sourceS + handleS }];
    },
  );
}
