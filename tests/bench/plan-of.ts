/** Plans of any number of shots, as they are written: kit, a rig or two, and many shots alike. */
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';

const SHOTS = EXAMPLE_PLAN.indexOf('\nshots:');
const PREFLIGHT = EXAMPLE_PLAN.indexOf('\npreflight:');

/** One finding in ten shots: a shot as exposed and one two and a half stops too bright. */
export const WELL_EXPOSED = 500;
export const TOO_BRIGHT = 3200;

const shot = (index: number): string => `  shot-${index}:
    about: Number ${index} of many, a slow look across the plate from the upper left
    subject: frost-plate
    rig: plain
    field: 420 mm
    aperture: f/8
    shutter: 1/50 s
    iso: ${index % 10 === 0 ? TOO_BRIGHT : WELL_EXPOSED}
    record: full-25
    white-balance: 5600 K
    light: [panel]
    take: { duration: 20 s, count: 3, settle: 3 s }
`;

/** The light stands so far away that it is even over the frame: that is not what is measured. */
const KIT = EXAMPLE_PLAN.slice(0, SHOTS).replace('distance: 400 mm', 'distance: 2 m');

/** A plan of `count` shots, one in ten of which has a finding. */
export const planOf = (count: number): string =>
  `${KIT}\nshots:\n${Array.from({ length: count }, (_, index) => shot(index)).join('')}${EXAMPLE_PLAN.slice(PREFLIGHT)}`;

/** The line of a shot's key, from 0. */
export const lineOf = (text: string, index: number, key: string): number => {
  const lines = text.split('\n');
  const start = lines.indexOf(`  shot-${index}:`);
  return lines.findIndex((line, at) => at > start && line.startsWith(`    ${key}:`));
};
