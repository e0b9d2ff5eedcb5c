/** How many random cases a property is tried on. */

/** Times as many cases in the long run: `LAMELLA_LONG=1 npm test`. */
const LONGER = 34;

/** `usual` in `npm test`; for 300 of them more than 10,000 in the long run. */
export const manyRuns = (usual: number): number =>
  process.env.LAMELLA_LONG === '1' ? usual * LONGER : usual;
