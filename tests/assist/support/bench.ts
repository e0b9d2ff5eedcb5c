/** One plan that the tests of hovers, hints and outlines start from, and a cursor to put in it. */
import type { Hover } from '../../../shared/api/facade.ts';
import { coreWith, PLAN } from '../../support/plans.ts';

/** A converter behind a lens without a focus ring, lit by a mains lamp. */
export const BENCH = `shootplan: 1
title: Frost
deliver: { resolution: 1920 x 1080, rate: 25 fps }
mains: 50 Hz

kit:
  bodies:
    body-a:
      flange-distance: 44 mm
      iso: { lowest: 100, highest: 25600, usable-to: 3200 }
      displayed-aperture: effective
      recording-modes:
        full: { resolution: 1920 x 1080, rate: 50 fps, area: 36 x 20.25 mm }
  lenses:
    long-200:
      focal-length: 200 mm
      aperture: f/4 to 32
      loss: 0.3 stops
      closest: { from-sensor: 0.85 m, magnification: 0.3x }
      length: 165 mm
      pupil-ratio: 0.8
  converters:
    twice: { factor: 2x, length: 53 mm, loss: 0.1 stops }

rigs:
  plain: { parts: [body-a, long-200] }
  doubled: { parts: [body-a, twice, long-200] }

lights:
  lamp:
    kind: tungsten
    supply: mains
    illuminance: 4000 lx

subjects:
  frost: { kind: solid, size: 80 x 60 mm, depth: 2 mm }

shots:
  far:
    subject: frost
    rig: doubled
    ring: infinity
    aperture: f/16
    shutter: 1/50 s
    iso: 800
    record: full
    light: [lamp]
  near:
    subject: frost
    rig: doubled
    field: 72 mm
    tilt: 4 deg
    aperture: f/16
    shutter: 1/60 s
    iso: auto
    record: full
    light: [lamp]
`;

/** Where the cursor stands in a text. */
const CURSOR = '‸';

/** The hover where `with` puts the cursor: `from` is exchanged for `with`, which holds it. */
export function hoverIn(text: string, from: string, marked = `‸${from}`): Hover | null {
  if (text.split(from).length !== 2) throw new Error(`not once in the text: ${from}`);
  const pointed = text.replace(from, () => marked);
  const before = pointed.slice(0, pointed.indexOf(CURSOR)).split('\n');
  const core = coreWith(pointed.replace(CURSOR, ''));
  return core.hover(PLAN, { line: before.length - 1, character: before.at(-1)!.length });
}

/** The hover's words; '' where there is none. */
export const hoverWords = (text: string, from: string, marked?: string): string =>
  hoverIn(text, from, marked)?.markdown ?? '';

/** Results, rows and folded rows by their label, marks of emphasis left out. */
export function rowsOf(hover: string): Readonly<Record<string, string>> {
  const markdown = hover.replace(
    /^\*\*(Fails|May fail|Worth a look|Accepted in the plan|Passes): .*\n\n/,
    '',
  );
  const rows = [...markdown.matchAll(/^\| (.*?) \| (.*) \|$/gm)].map(([, ...cells]) => cells);
  const results = (/^\*\*.* · .*$|^.*: \*\*.*$/.exec(markdown.split('\n')[0]!)?.[0] ?? '').split(
    ' · ',
  );
  const [name, kind] = results[0]!.startsWith('**') ? results.splice(0, 2) : [];
  const folded = markdown
    .split('\n\n')
    .filter((block) => !block.endsWith('.') && /^[^|*`]+: /.test(block))
    .flatMap((block) => block.split(' · '));
  const inWords = [...results, ...folded].map((one) => {
    const [label = '', ...value] = one.split(': ');
    return [
      /^[A-Z][a-z]/.test(label) ? label.charAt(0).toLowerCase() + label.slice(1) : label,
      value.join(': '),
    ];
  });
  return Object.fromEntries(
    [[name, kind], ...inWords, ...rows].map(([label = '', value = '']) => [
      bare(label),
      bare(value),
    ]),
  );
}

const bare = (text: string): string => text.replaceAll('**', '');
