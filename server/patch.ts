/** A change of one file as a unified diff. */
import { createTwoFilesPatch, FILE_HEADERS_ONLY } from 'diff';
import { inertLine } from '../shared/report/inert.ts';

/** In the form that `patch -p1` and `git apply` take. */
export const patchOf = (name: string, before: string, after: string): string =>
  inertLines(
    createTwoFilesPatch(`a/${name}`, `b/${name}`, before, after, undefined, undefined, {
      headerOptions: FILE_HEADERS_ONLY,
    }),
  );

/** Nothing in it acts on a terminal; ends of lines, tabs and the BOM stay, since it is data too. */
const inertLines = (text: string): string => text.replace(/[^\t\r\n\ufeff]+/g, inertLine);
