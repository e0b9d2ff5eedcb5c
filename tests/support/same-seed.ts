/**
 * In `npm test` random cases are the same in every run, so that a failure is due to a change and
 * not to luck. The long run draws new ones; `LAMELLA_SEED` draws those of one failure again.
 */
import fc from 'fast-check';

const USUAL = 20_261;
const { LAMELLA_LONG, LAMELLA_SEED } = process.env;

if (LAMELLA_SEED !== undefined || LAMELLA_LONG !== '1')
  fc.configureGlobal({ ...fc.readConfigureGlobal(), seed: Number(LAMELLA_SEED ?? USUAL) });
