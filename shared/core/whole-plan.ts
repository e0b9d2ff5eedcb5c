/** What is made of a whole plan: sheet and comparison, in one go or in slices. */

import type { Core } from '../api/facade.ts';
import type { LocatedFinding } from '../api/located.ts';
import { comparedSteps } from '../assist/compare.ts';
import { sheetSteps } from '../assist/sheet.ts';
import { inOneGo, type Steps } from '../engine/steps.ts';
import type { FileId } from '../plan/place.ts';
import type { Context } from '../workspace/context.ts';
import { making } from '../workspace/making.ts';

/**
 * @param allFindings of every file that a plan reaches
 * @param originOf what a located finding was made from
 */
export function wholePlan(
  context: Context,
  allFindings: (file: FileId) => readonly LocatedFinding[],
  originOf: Parameters<typeof comparedSteps>[3],
): Pick<Core, 'compared' | 'startComparing' | 'sheet' | 'startSheet'> {
  /** Entry by entry: a host that makes it in slices waits for none of them. */
  function* foundIn(file: FileId): Steps<readonly LocatedFinding[]> {
    let asked = 0;
    while (!context.analysis.prepare(file, () => asked++ % 2 > 0)) yield;
    return allFindings(file);
  }
  function* comparing(file: FileId): ReturnType<typeof comparedSteps> {
    return yield* comparedSteps(context, file, yield* foundIn(file), originOf);
  }
  function* layingOut(
    file: FileId,
    use: Parameters<Core['sheet']>[1],
  ): ReturnType<typeof sheetSteps> {
    const found = yield* foundIn(file);
    return yield* sheetSteps(context, file, found, use?.isWrittenOn === true);
  }
  return {
    compared: (file) => inOneGo(comparing(file)),
    startComparing: (file) => making(context.trials, () => comparing(file)),
    sheet: (file, use) => inOneGo(layingOut(file, use)),
    startSheet: (file, use) => making(context.trials, () => layingOut(file, use)),
  };
}
