/**
 * Whole plans with one thing wrong in their text. «…» marks the place where a person would point;
 * `kept` names the shots that must come to the same as in the sound plan.
 */
import { MAX_DEPTH } from '../../../shared/syntax/budgets.ts';

const shot = (name: string, field: string): string => `  ${name}:
    subject: plate
    rig: bench
    field: ${field}
    aperture: f/8
    shutter: 1/50 s
    iso: 1250
    record: full-25
    white-balance: 5600 K
    light: [panel]
`;

/** Three shots with nothing wrong; defects go into the second or above. */
export const SOUND = `shootplan: 1
title: Morning Frost
deliver: { resolution: 1920 x 1080, rate: 25 fps }
mains: 50 Hz

kit:
  bodies:
    body-a:
      flange-distance: 44 mm
      iso: { lowest: 100, highest: 25600, usable-to: 3200 }
      recording-modes:
        full-25: { resolution: 1920 x 1080, rate: 25 fps, bitrate: 30 Mb/s, area: 36 x 20.25 mm }
  lenses:
    macro-100:
      focal-length: 100 mm
      aperture: f/2.8 to 32
      loss: 0.3 stops
      closest: { from-sensor: 0.31 m, magnification: 1x }
      length: 120 mm
      front-diameter: 70 mm
      pupil-ratio: 1
  tubes:
    tube-20: { length: 20 mm, mass: 80 g }

rigs:
  bench: { parts: [body-a, tube-20, macro-100] }

lights:
  panel:
    kind: led
    emitting-size: 300 x 200 mm
    at: { distance: 400 mm, elevation: 40 deg }
    colour-temperature: 5600 K
    modulation: none
    supply: low-voltage
    reading: { aperture: f/8, shutter: 1/50 s, iso: 400, through: meter }

subjects:
  plate: { kind: solid, size: 200 x 150 mm, depth: 1.5 mm, finish: matt }

preflight:
  every-shot:
    - focus-at-full-size
    - record-setting-read-back
    - exposure-confirmed
    - white-balance-fixed
    - card-and-battery
    - flicker-checked
    - foot-balanced

shots:
${shot('first', '60 mm')}${shot('second', '66 mm')}${shot('third', '72 mm')}`;
export const SHOTS = ['first', 'second', 'third'];

export interface BrokenPlan {
  readonly name: string;
  /** With « and » round the place of the finding. */
  readonly marked: string;
  readonly rule: string;
  readonly kept: readonly string[];
  /** An error where left out. */
  readonly severity?: 'warning';
  /** How many errors a person would count; where left out 1, beside a warning none. */
  readonly errors?: number;
}

const UTF16_FROM_LINE_START = /[^\r\n]*$/;

/** The text without its marks, and the place between them; lines and columns from 0. */
export function unmarked({ marked }: BrokenPlan) {
  const from = marked.indexOf('«');
  const to = marked.indexOf('»') - 1;
  if (from < 0 || to < from) throw new Error('a broken plan marks its place');
  const text = marked.replace('«', '').replace('»', '');
  const placeOf = (offset: number) => {
    const before = text.slice(0, offset);
    const line = before.split(/\r\n|\r|\n/).length - 1;
    return { line, character: (UTF16_FROM_LINE_START.exec(before)?.[0] ?? '').length };
  };
  return { text, range: { start: placeOf(from), end: placeOf(to) } };
}

/** The sound plan with one line of the second shot exchanged. */
function inSecond(line: string, by: string): string {
  const from = SOUND.indexOf('  second:');
  const at = SOUND.indexOf(line, from);
  if (at < 0) throw new Error(`no line "${line}" in the second shot`);
  return SOUND.slice(0, at) + by + SOUND.slice(at + line.length);
}

function inPlan(text: string, by: string): string {
  if (SOUND.split(text).length !== 2) throw new Error(`"${text}" is not there once`);
  return SOUND.replace(text, () => by);
}

/** Brackets that a value of a shot may hold within the budget: mapping and value stand above them. */
const FREE = MAX_DEPTH - 2;

const others = ['first', 'third'];

export const BROKEN: readonly BrokenPlan[] = [
  {
    name: 'an unclosed quote',
    marked: inSecond('    rig: bench', '    about: «"»late sun\n    rig: bench'),
    rule: 'syntax',
    kept: SHOTS,
  },
  {
    name: 'an unclosed quote in a flow mapping of the kit',
    marked: inPlan('{ length: 20 mm, mass: 80 g }', '{ length: 20 mm, mass: 80 g, about: «"»old }'),
    rule: 'syntax',
    kept: SHOTS,
  },
  {
    name: 'a tab for an indentation',
    marked: inSecond('    aperture: f/8', '«\t»aperture: f/8'),
    rule: 'syntax',
    kept: SHOTS,
  },
  {
    name: 'merge-conflict markers',
    marked: inSecond(
      '    aperture: f/8',
      '«<<<<<<< ours\n    aperture: f/8\n=======\n    aperture: f/11\n>>>>>>> theirs»',
    ),
    rule: 'syntax',
    kept: others,
  },
  {
    name: 'merge-conflict markers round the last fields, with what both come from',
    marked: inSecond(
      '    light: [panel]',
      '«<<<<<<< ours\n    light: [panel]\n||||||| base\n=======\n    light:\n      - panel\n>>>>>>> theirs»',
    ),
    rule: 'syntax',
    kept: others,
  },
  {
    name: 'merge-conflict markers round the items of a list',
    marked: inSecond(
      '    light: [panel]',
      '    light:\n«<<<<<<< ours\n      - panel\n=======\n      - panel\n      - panel\n>>>>>>> theirs»',
    ),
    rule: 'syntax',
    kept: others,
  },
  {
    name: 'a merge-conflict marker that nothing closes',
    marked: inSecond('    light: [panel]', '«<<<<<<< ours\n    light: [panel]»'),
    rule: 'syntax',
    kept: others,
  },
  {
    name: 'the same key twice',
    marked: inSecond('    aperture: f/8', '    aperture: f/8\n    «aperture»: f/11'),
    rule: 'duplicate-name',
    kept: SHOTS,
  },
  {
    name: 'the same shot twice',
    marked: `${SOUND}${shot('«third»', '72 mm')}`,
    rule: 'duplicate-name',
    kept: SHOTS,
  },
  {
    name: '100 KB of opening brackets',
    marked: inSecond(
      '    light: [panel]',
      `    light: ${'['.repeat(FREE)}«[»${'['.repeat(102_400)}`,
    ),
    rule: 'too-much',
    severity: 'warning',
    kept: others,
  },
  {
    name: 'deep nesting',
    marked: inSecond(
      '    light: [panel]',
      `    light: ${'{ a: '.repeat(FREE)}«{» a: ${'{ a: '.repeat(4000)}x`,
    ),
    rule: 'too-much',
    severity: 'warning',
    kept: others,
  },
  {
    name: 'a line of 1 MB',
    marked: inSecond('  second:\n', `  «second:»\n    about: ${'x'.repeat(1_048_576)}\n`),
    rule: 'too-much',
    severity: 'warning',
    kept: others,
  },
  {
    name: 'a number beyond all numbers',
    marked: inSecond('    iso: 1250', '    iso: «1e999»'),
    rule: 'wrong-value',
    kept: others,
  },
  {
    name: 'a number with a leading zero',
    marked: inSecond('    iso: 1250', '    iso: «0800»'),
    rule: 'wrong-value',
    kept: others,
  },
  {
    name: 'yes where a number is needed',
    marked: inSecond('    iso: 1250', '    iso: «yes»'),
    rule: 'wrong-value',
    kept: others,
  },
  {
    name: 'no where a name is needed',
    marked: inSecond('    record: full-25', '    record: «no»'),
    rule: 'unknown-name',
    kept: others,
  },
  {
    name: 'NUL in a value',
    marked: inSecond('    rig: bench', '    rig: be«\0»nch'),
    rule: 'syntax',
    kept: others,
  },
  {
    name: 'a lone carriage return',
    marked: inSecond('    aperture: f/8', '    aperture: f/8«\r»    tilt: 1 deg'),
    rule: 'syntax',
    kept: others,
  },
  {
    name: 'a section that is text',
    marked: SOUND.replace('\nshots:\n', '\n«shots»: |\n'),
    rule: 'wrong-value',
    kept: [],
  },
  {
    name: 'an anchor',
    marked: inSecond('    aperture: f/8', '    aperture: «&open» f/8'),
    rule: 'outside-the-profile',
    kept: SHOTS,
  },
  {
    name: 'an alias',
    marked: inSecond('    aperture: f/8', '    aperture: «*open»'),
    rule: 'outside-the-profile',
    kept: others,
  },
  {
    name: 'a tag',
    marked: inSecond('    aperture: f/8', '    aperture: «!!str» f/8'),
    rule: 'outside-the-profile',
    kept: SHOTS,
  },
  {
    name: 'a merge key',
    marked: inSecond('    aperture: f/8', '    «<<»: { aperture: f/8 }'),
    rule: 'outside-the-profile',
    kept: others,
  },
  {
    name: 'a second document',
    marked: `${SOUND}«---»\nshots: {}\n`,
    rule: 'outside-the-profile',
    kept: SHOTS,
  },
  {
    name: 'a directive',
    marked: `«%YAML 1.1»\n---\n${SOUND}`,
    rule: 'outside-the-profile',
    kept: SHOTS,
  },
  {
    name: 'a decimal comma in a flow mapping',
    marked: inPlan('{ length: 20 mm, mass: 80 g }', '{ length: «20,5 mm», mass: 80 g }'),
    rule: 'misread-scalar',
    kept: [],
  },
  {
    name: 'a colon in a plain value',
    marked: inSecond('    rig: bench', '    about: «late: sun»\n    rig: bench'),
    rule: 'misread-scalar',
    kept: SHOTS,
  },
  {
    name: 'a missing colon',
    marked: inSecond('    aperture: f/8', '    «aperture f/8»'),
    rule: 'syntax',
    kept: others,
  },
  {
    name: 'an unclosed bracket',
    marked: inSecond('    light: [panel]', '    light: «[»panel'),
    rule: 'syntax',
    kept: SHOTS,
  },
  {
    name: 'a list where a mapping is needed',
    marked: inSecond('    light: [panel]', '    light: [panel]\n    take: «[60 s, 3]»'),
    rule: 'wrong-value',
    kept: others,
  },
  {
    name: 'a shot that is a number',
    marked: `${SOUND}  fourth: «7»\n`,
    rule: 'wrong-value',
    kept: SHOTS,
  },
  {
    name: 'a second shot of a name that is a number',
    marked: `${SOUND}  «first»: 7\n`,
    rule: 'duplicate-name',
    kept: SHOTS,
    errors: 2,
  },
  {
    name: 'a misspelt section',
    marked: SOUND.replace('\nlights:\n', '\n«ligths»:\n'),
    rule: 'unknown-key',
    kept: [],
  },
  {
    name: 'an unclosed quote in braces, before a key that may be left out',
    marked: inPlan('elevation: 40 deg }', 'up: «"»40 deg }'),
    rule: 'syntax',
    kept: [],
  },
];
