/** Plans to read, and ways to spoil them. */
import fc from 'fast-check';

export const plan = `# A loop for a lobby
shootplan: 1
title: Low Water
about: "Films between panes: slow, quiet"
use: [bench.shootplan.yaml, 'other kit.shootplan.yaml']
deliver: { resolution: 1920 x 1080, rate: 25 fps, duration: 2 min }
mains: 50 Hz   # the hall's

kit:
  bodies:
    body-a:
      sensor: 36 x 24 mm
      iso: { lowest: 100, highest: 25600, usable-to: 3200 }
      recording-modes:
        full-50: { resolution: 1920 x 1080, rate: 50 fps,
                   bitrate: 60 Mb/s }
        full-25: { resolution: 1920 x 1080, rate: 25 fps }
  tubes:
    # the short one
    tube-12: { length: 12 mm, mass: 60 g }
    "tube-20": { length: 20 mm }
  close-up-lenses: { plus-2: { power: 2 dpt } }

rigs:
  far-off:
    parts:
      - body-a
      - tube-12     # next to the body
      -
    support: { head: ball-head, foot: 180 mm }
lights:
  wall:
    at:
      distance: 500 mm
      elevation: -26 deg

shots:
  drift:
    subject: harbour-film
    aperture: f/16
# at the margin
    light: [wall, [a, b], {c: d}]
    allow:
      depth-short: { because: 'it''s only the rim', up-to: 0.6 mm }
    filters: []
    note:
    preflight: { focus: open, card, read-back: { done: 2027-03-02, by: op } }

  slick-one:
    subject: slick
    ring: closest

edit:
  music: { tempo: 92 bpm }
  cuts:
    opening: { shot: drift, from: 4 s }
clips:
  drift:
    - { file: media/0007.mp4, verdict: keep }
    - file: media/0008.mp4
      verdict: drop
  slick-one:
  - file: media/0009.mp4
`;

/** Pieces that mean something to YAML, or go wrong in it. */
export const shards = [
  ' ',
  '  ',
  '\n',
  '\n\n',
  '\r\n',
  '\r',
  '\t',
  ':',
  ': ',
  ':\n',
  '#',
  ' #',
  ' # c',
  '- ',
  '-',
  '? ',
  '"',
  "'",
  '\\',
  '\\x4',
  '\\"',
  '{',
  '}',
  '[',
  ']',
  ',',
  ', ',
  '|',
  '|+\n',
  '>-\n',
  '&a ',
  '*a',
  '!!str ',
  '!t',
  '%',
  '@',
  '`',
  '~',
  '<<: *a',
  '---\n',
  '...\n',
  '<<<<<<< ours\n',
  '=======\n',
  '>>>>>>> theirs\n',
  'a',
  'key: v',
  '  entry:\n',
  '    field: x\n',
  'shots:\n',
  'kit:\n',
  '  tubes:\n',
  '\uFEFF',
  '\u0000',
  '\uFFFD',
  '\u00a0',
  '\u00a0\u00a0',
  ':\u00a0',
  '\n\u00a0 \u3000\u00a0',
  '\u2028',
  '\u0085',
  'é',
  '😀',
  '1,5',
  '1.5',
  'null',
  '""',
  "''",
  '{}',
  '[]',
  '{ a: b }',
  '[a, b]',
  '" a\n   b"',
  '|\n      text\n',
  'x: y: z\n',
  '# c\n',
  '   c: d\n',
  ' c:\n',
  '\n- x\n',
] as const;

interface Spoil {
  readonly at: number;
  readonly drop: number;
  readonly put: string;
}

const spoil = fc.record<Spoil>({
  at: fc.double({ min: 0, max: 1, noNaN: true, maxExcluded: true }),
  drop: fc.oneof(
    { weight: 3, arbitrary: fc.constant(0) },
    { weight: 2, arbitrary: fc.integer({ min: 1, max: 4 }) },
    { weight: 1, arbitrary: fc.integer({ min: 5, max: 80 }) },
  ),
  put: fc.oneof(
    { weight: 5, arbitrary: fc.constantFrom(...shards) },
    { weight: 1, arbitrary: fc.constant('') },
    { weight: 1, arbitrary: fc.string({ maxLength: 6 }) },
  ),
});

export const apply = (text: string, { at, drop, put }: Spoil): string => {
  const from = Math.floor(at * (text.length + 1));
  return text.slice(0, from) + put + text.slice(from + drop);
};

const lineStart = (text: string, at: number): number => text.lastIndexOf('\n', at - 1) + 1;

/** The plan with a few pieces put in, taken out, or moved to a line's start. */
export const hostilePlan: fc.Arbitrary<string> = fc
  .tuple(
    fc.array(spoil, { minLength: 1, maxLength: 4 }),
    fc.boolean(),
    fc.constantFrom('\n', '\n', '\n', '\r\n'),
  )
  .map(([spoils, atLines, eol]) => {
    let text = plan;
    for (const each of spoils) {
      const at = Math.floor(each.at * (text.length + 1));
      const from = atLines ? lineStart(text, at) : at;
      text = text.slice(0, from) + each.put + text.slice(from + each.drop);
    }
    return eol === '\n' ? text : text.replaceAll('\n', eol);
  });
