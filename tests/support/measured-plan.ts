/** The examples' plan with a bench on the lenses of both of its shots, a value a line. */
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';

const after = (text: string, lens: string, key: string, bench: string): string => {
  const at = text.indexOf(`${key}:`, text.indexOf(`\n    ${lens}:\n`));
  const line = text.indexOf('\n', at) + 1;
  return text.slice(0, line) + bench + text.slice(line);
};

/** Read of macro-100, which `frost` uses. */
const NEAR = `      bench:
        - with: [body-a]
          ring: closest
          field: 36.2 mm
          from-sensor: 311 mm
        - { with: [body-a, tube-20], ring: infinity, field: 181 mm }
`;

/** Read of long-200, which `skin` uses. */
const FAR = `      bench:
        - with: [body-a, tube-36]
          ring: closest
          field: 67 mm
          working-distance: 430 mm
        - with: [body-a, tube-36]
          ring: infinity
          field: 200 mm
          effective-f-number: 9.5
          marked: f/8
`;

export const MEASURED_PLAN = after(
  after(EXAMPLE_PLAN, 'macro-100', 'mass', NEAR),
  'long-200',
  'mass',
  FAR,
);

/** Where the rows of long-200 stand in it. */
export const FAR_ROWS = {
  from: MEASURED_PLAN.indexOf(FAR) + FAR.indexOf('        -'),
  to: MEASURED_PLAN.indexOf(FAR) + FAR.length,
};
