/** `source.fixAll.lamella`: the fixes that nobody needs to choose or weigh. */

import type { Core } from '../../shared/api/facade.ts';
import type { LocatedEdit } from '../../shared/api/located.ts';
import type { FileId } from '../../shared/plan/place.ts';
import { freeFixes } from '../../shared/workspace/free-fixes.ts';

export const FIX_ALL = 'source.fixAll.lamella';

/** Edits of all that may be made at once, within the file. */
export const fixAll = (core: Core, file: FileId): readonly LocatedEdit[] =>
  freeFixes(core, file).flatMap(({ edits }) => edits);
