/**
 * Plans with `count` of one thing: what grows faster than the text shows in one of these. They are
 * generated, not written: sound plans, and texts that nobody means to write.
 */
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { planOf } from './plan-of.ts';

const many = (count: number, make: (index: number) => string): string =>
  Array.from({ length: count }, (_, index) => make(index)).join('');

/** The example plan with more text behind one of its lines. */
function behind(line: string, more: string): string {
  const at = EXAMPLE_PLAN.indexOf(`${line}\n`);
  if (at < 0) throw new Error(`The example plan has no line "${line}".`);
  const end = at + line.length + 1;
  return EXAMPLE_PLAN.slice(0, end) + more + EXAMPLE_PLAN.slice(end);
}

const changed = (from: string, to: string): string => {
  if (!EXAMPLE_PLAN.includes(from)) throw new Error(`The example plan has no "${from}".`);
  return EXAMPLE_PLAN.replace(from, to);
};

const names = (count: number, name: string): string =>
  many(count, (index) => `${index === 0 ? '' : ', '}${name}${index}`);

const LIGHT = (index: number): string => `  lamp${index}:
    kind: led
    emitting-size: 300 x 200 mm
    at: { distance: 2 m, elevation: ${index % 60} deg }
    colour-temperature: 5600 K
    modulation: none
    supply: low-voltage
    reading: { aperture: f/8, shutter: 1/50 s, iso: 400, through: meter }
`;

const LENS = (index: number): string => `    lens${index}:
      focal-length: ${20 + index} mm
      aperture: f/2.8 to 32
      closest: { from-sensor: 0.5 m, magnification: 0.3x }
      length: 100 mm
`;

const lit = (count: number, shot: string): string =>
  behind('lights:', many(count, LIGHT)).replace('    light: [panel]\n', shot);

/** What the example plan says of its first shot. */
const FROST = EXAMPLE_PLAN.slice(
  EXAMPLE_PLAN.indexOf('    subject: frost-plate'),
  EXAMPLE_PLAN.indexOf('  skin:'),
);

/** Each by its name in the table: the text with `count` of what the name says. */
export const SHAPES: Readonly<Record<string, (count: number) => string>> = {
  'shots that are sound': planOf,
  'shots out of reach': (count) =>
    behind(
      'shots:',
      many(
        count,
        (index) =>
          `  more${index}:\n${FROST.replace('rig: bench', 'rig: plain').replace('60 mm', '20 mm')}`,
      ),
    ),
  'shots with a name and no more': (count) =>
    behind(
      'shots:',
      many(count, (index) => `  more${index}: {}\n`),
    ),
  'lights in one shot': (count) => lit(count, `    light: [${names(count, 'lamp')}]\n`),
  'lights set anew in one shot': (count) =>
    lit(
      count,
      `    light: [${names(count, 'lamp')}]\n    relight:\n${many(count, (index) => `      lamp${index}: { dimmed: 1 stop }\n`)}`,
    ),
  'lights set anew that are not lit': (count) =>
    lit(
      0,
      `    light: [panel]\n    relight:\n${many(count, (index) => `      lamp${index}: { dimmed: 1 stop }\n`)}`,
    ),
  'filters in one shot': (count) =>
    behind(
      'kit:',
      `  filters:\n${many(count, (index) => `    nd${index}: { kind: neutral-density, loss: 0.01 stops }\n`)}`,
    ).replace('    light: [panel]\n', `    filters: [${names(count, 'nd')}]\n    light: [panel]\n`),
  'tubes in one rig': (count) =>
    behind(
      '  tubes:',
      many(count, (index) => `    ring${index}: { length: ${1 + (index % 9)} mm }\n`),
    ).replace('parts: [body-a, macro-100]', `parts: [body-a, ${names(count, 'ring')}, macro-100]`),
  'one tube again and again in one rig': (count) =>
    changed(
      'parts: [body-a, macro-100]',
      `parts: [body-a, ${many(count, () => 'tube-20, ')}macro-100]`,
    ),
  'rigs of one lens': (count) =>
    behind(
      'rigs:',
      many(count, (index) => `  rig${index}: { parts: [body-a, macro-100] }\n`),
    ),
  'lenses without use': (count) => behind('  lenses:', many(count, LENS)),
  'tubes without use': (count) =>
    behind(
      '  tubes:',
      many(count, (index) => `    ring${index}: { length: ${1 + index} mm }\n`),
    ),
  'rows of a lens bench': (count) =>
    behind(
      '      pupil-ratio: 1',
      `      bench:\n${many(count, (index) => `        - { magnification: ${(0.2 + (index % 80) / 100).toFixed(2)}x, working-distance: ${300 - (index % 80) * 2} mm }\n`)}`,
    ),
  'recording modes': (count) =>
    behind(
      '      recording-modes:',
      many(
        count,
        (index) =>
          `        mode${index}: { resolution: 1920 x 1080, rate: ${1 + (index % 200)} fps, bitrate: 30 Mb/s }\n`,
      ),
    ),
  'checks of a day': (count) =>
    behind(
      '  every-shot:',
      many(count, (index) => `    - look-at-${index}\n`),
    ),
  'reviews of one shot': (count) =>
    behind(
      '    white-balance: 5600 K',
      `    review:\n${many(count, (index) => `      - { at: ${index} s, by: ann, says: closer }\n`)}`,
    ),
  'acceptances in one shot': (count) =>
    behind(
      '    white-balance: 5600 K',
      `    allow:\n${many(count, (index) => `      no-rule-${index}: { because: so }\n`)}`,
    ),
  cuts: (count) =>
    `${EXAMPLE_PLAN}\nedit:\n  cuts:\n${many(count, (index) => `    cut${index}: { shot: frost, from: 2 s, duration: 2 s }\n`)}`,
  'cuts without a shot': (count) =>
    `${EXAMPLE_PLAN}\nedit:\n  cuts:\n${many(count, (index) => `    cut${index}: { shot: nowhere${index}, duration: 2 s }\n`)}`,
  'clips of one shot': (count) =>
    `${EXAMPLE_PLAN}\nclips:\n  frost:\n${many(count, (index) => `    - { file: take-${index}.mov }\n`)}`,
  'clips of one file': (count) =>
    `${EXAMPLE_PLAN}\nclips:\n  frost:\n${many(count, () => '    - { file: take.mov }\n')}`,
  'used files': (count) =>
    `${EXAMPLE_PLAN}\nuse: [${many(count, (index) => `kit-${index}.shootplan.yaml, `)}]\n`,
  'keys that are none': (count) =>
    behind(
      '    white-balance: 5600 K',
      many(count, (index) => `    key${index}: 1\n`),
    ),
  'keys nearly right': (count) =>
    behind(
      '    white-balance: 5600 K',
      many(count, (index) => `    apertur${index}: f/8\n`),
    ),
  'one key again and again': (count) =>
    behind(
      '    white-balance: 5600 K',
      many(count, () => '    iso: 400\n'),
    ),
  'one name again and again': (count) =>
    behind(
      'shots:',
      many(count, () => '  twice: { field: 60 mm }\n'),
    ),
  'sections that are none': (count) =>
    EXAMPLE_PLAN + many(count, (index) => `section${index}: 1\n`),
  'names of nothing': (count) => changed('light: [panel]', `light: [${names(count, 'nobody')}]`),
  'anchors and aliases': (count) =>
    behind(
      '    white-balance: 5600 K',
      many(count, (index) => `    key${index}: &a${index} 1\n    other${index}: *a${index}\n`),
    ),
  'aliases of one anchor': (count) =>
    behind(
      '    white-balance: 5600 K',
      `    first: &a 1\n${many(count, (index) => `    other${index}: *a\n`)}`,
    ),
  'quotes left open': (count) => EXAMPLE_PLAN + many(count, (index) => `  about${index}: "open\n`),
  'quotes left open in shots': (count) =>
    behind(
      'shots:',
      many(count, (index) => `  more${index}:\n    about: "open\n    field: 60 mm\n`),
    ),
  'brackets left open': (count) =>
    EXAMPLE_PLAN + many(count, (index) => `more${index}: [a, {b: c\n`),
  'brackets in brackets': (count) =>
    changed('light: [panel]', `light: ${'['.repeat(count)}${']'.repeat(count)}`),
  'maps in maps': (count) =>
    EXAMPLE_PLAN + many(count, (index) => `${' '.repeat(index)}more${index}:\n`),
  'dashes in dashes': (count) => `${EXAMPLE_PLAN}more: \n  ${'- '.repeat(count)}a\n`,
  'tabs at the beginning of lines': (count) =>
    behind(
      'shots:',
      many(count, (index) => `\tmore${index}: {}\n`),
    ),
  'commas missing in braces': (count) =>
    changed('light: [panel]', `take: { ${many(count, (index) => `k${index}: 1 `)} }`),
  'one line, 200 characters each': (count) =>
    behind(
      '    white-balance: 5600 K',
      `    about: ${many(count, () => 'a look across the plate '.repeat(9).slice(0, 200))}\n`,
    ),
  'one line without a blank, 200 characters each': (count) =>
    behind('    white-balance: 5600 K', `    about: ${'x'.repeat(200 * count)}\n`),
  'one number, 200 digits each': (count) =>
    changed('field: 60 mm', `field: ${'1'.repeat(200 * count)} mm`),
  'marks of a merge': (count) =>
    behind(
      'shots:',
      many(
        count,
        (index) => `<<<<<<< ours\n  a${index}: {}\n=======\n  b${index}: {}\n>>>>>>> theirs\n`,
      ),
    ),
  'lines of a literal': (count) =>
    behind(
      '    white-balance: 5600 K',
      `    about: |\n${many(count, () => '      a look across\n')}`,
    ),
  comments: (count) =>
    behind(
      'shots:',
      many(count, (index) => `  # number ${index}\n`),
    ),
  'bare carriage returns': (count) => EXAMPLE_PLAN + '\r'.repeat(count),
};
