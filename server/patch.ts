/** A change of one file as a unified diff. */
import { createTwoFilesPatch, FILE_HEADERS_ONLY } from 'diff';
import { inertLines } from '../shared/report/inert.ts';

/** In the form that `patch -p1` and `git apply` take. */
export const patchOf = (name: string, before: string, after: string): string =>
  inertLines(
    createTwoFilesPatch(`a/${name}`, `b/${name}`, before, after, undefined, undefined, {
      headerOptions: FILE_HEADERS_ONLY,
    }),
  );
