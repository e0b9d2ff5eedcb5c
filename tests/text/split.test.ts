import { expect, test } from 'vitest';
import { split } from '../../shared/text/split.ts';

/** Each chunk as `kind path@indent>meant oddity | text`. */
const cut = (text: string): string[] =>
  split(text).map(({ kind, path, indent, meant, oddity, text: own }) =>
    [
      kind,
      path.join('/'),
      indent === meant || kind === 'loose' ? '' : `@${indent}>${meant}`,
      oddity ?? '',
      JSON.stringify(own),
    ]
      .filter(Boolean)
      .join(' '),
  );

test('a plan is cut into fields, headers and entries', () => {
  const text = `# lead
shootplan: 1
title: Tide Glass   # its name

kit:
  bodies:
    body-a:
      sensor: 36 x 24 mm
  tubes: # three
    # the short one
    tube-12: { length: 12 mm }
    "tube-20": { length: 20 mm }
  close-up-lenses: { plus-2: { power: 2 dpt } }

shots:
  drift:
    subject: film
# a comment at the margin
    rig: far
  slow:
    subject: film
edit:
  music: { tempo: 92 bpm }
  cuts:
    opening: { shot: drift }
`;
  expect(cut(text)).toMatchInlineSnapshot(`
    [
      "loose "# lead\\n"",
      "entry shootplan "shootplan: 1\\n"",
      "entry title "title: Tide Glass   # its name\\n\\n"",
      "header kit "kit:\\n"",
      "header kit/bodies "  bodies:\\n"",
      "entry kit/bodies/body-a "    body-a:\\n      sensor: 36 x 24 mm\\n"",
      "header kit/tubes "  tubes: # three\\n    # the short one\\n"",
      "entry kit/tubes/tube-12 "    tube-12: { length: 12 mm }\\n"",
      "entry kit/tubes/tube-20 "    \\"tube-20\\": { length: 20 mm }\\n"",
      "entry kit/close-up-lenses "  close-up-lenses: { plus-2: { power: 2 dpt } }\\n\\n"",
      "header shots "shots:\\n"",
      "entry shots/drift "  drift:\\n    subject: film\\n# a comment at the margin\\n    rig: far\\n"",
      "entry shots/slow "  slow:\\n    subject: film\\n"",
      "header edit "edit:\\n"",
      "entry edit/music "  music: { tempo: 92 bpm }\\n"",
      "header edit/cuts "  cuts:\\n"",
      "entry edit/cuts/opening "    opening: { shot: drift }\\n"",
    ]
  `);
});

const cases: readonly [name: string, text: string][] = [
  ['an empty file', ''],
  ['blank lines only', '\n\n'],
  ['a section in flow style', 'shots: { a: { b: c },\n  d: e }\nlights:\n  l: {}\n'],
  ['a section as a list', 'shots:\n- a\n- b\nlights:\n'],
  ['a section as an indented list', 'shots:\n  - a\n  - b\n'],
  ['a section as text', 'shots: |\n  drift:\n    a: 1\nrigs:\n'],
  ['a section as a scalar below', 'shots:\n  some text\n'],
  ['a closing bracket at the margin', 'deliver: {\n  a: b\n}\nmains: 50 Hz\n'],
  ['a name typed before the first entry', 'shots:\n  lant\n  drift:\n    a: 1\n'],
  ['a name typed between entries', 'shots:\n  drift:\n    a: 1\n  lant\n  slow:\n    a: 1\n'],
  ['an entry one column to the right', 'shots:\n  drift:\n    a: 1\n   slow:\n    a: 1\n'],
  ['an entry shifted whole', 'shots:\n  drift:\n    a: 1\n   slow:\n     a: 1\n'],
  ['an entry one column to the left', 'shots:\n  drift:\n    a: 1\n slow:\n    a: 1\n'],
  ['a field one column to the left', 'shots:\n  drift:\n    a: 1\n   b: 2\n    c: 3\n'],
  ['a section that slipped', 'shots:\n  drift:\n    a: 1\n lights:\n  wall:\n    b: 2\n'],
  ['a section without its colon', 'shots\n  drift:\n    a: 1\n'],
  [
    'merge markers',
    'shots:\n<<<<<<< ours\n  a:\n    b: 1\n=======\n  a:\n    b: 2\n>>>>>>> theirs\n  c: {}\n',
  ],
  ['a byte order mark, CR LF', '\uFEFFtitle: x\r\nshots:\r\n  a: {}\r\n'],
  ['lone CR', 'title: x\rshots:\r  a: {}\r'],
  ['document markers and directives', '%YAML 1.2\n---\ntitle: x\n---\nabout: y\n...\n'],
  ['an item at an entry’s own column', 'clips:\n  drift:\n  - a\n  - b\n  slow:\n  - c\n'],
  [
    'a block scalar that looks like entries',
    'shots:\n  drift: |\n   slow:\n     a: 1\n  next: {}\n',
  ],
  [
    'a quoted value that looks like entries',
    'shots:\n  drift: "a\n   slow:\n     b: 1"\n  next: {}\n',
  ],
  ['kept blank lines at an edge', 'shots:\n  drift:\n    note: |+\n      x\n\n\n  next: {}\n'],
  ['prose at the margin', 'one two\nthree four\n  five: 5\ntitle: x\n'],
  ['keys that objects have', 'constructor: 1\n__proto__:\n  a: 1\nshots:\n  toString: {}\n'],
  ['a section named twice', 'shots:\n  a: {}\ntitle: x\nshots:\n  a: {}\n'],
  ['an anchor on a section and an entry', 'shots: &s\n  &a drift:\n    b: 1\n  slow: *a\n'],
];

test.each(cases)('%s', (_, text) => {
  expect(cut(text)).toMatchSnapshot();
  expect(
    split(text)
      .map((chunk) => chunk.text)
      .join(''),
  ).toBe(text);
});
