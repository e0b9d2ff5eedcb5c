/**
 * One defect, one problem, where a person would point; what is sound beside it is read; the fix
 * removes it. In each text «…» marks the place of the problem.
 */
import { expect, test } from 'vitest';
import { each } from '../support/each.ts';
import { type Found, fields, problemsOf } from './support/read-text.ts';

const shot = (lines: string): string =>
  `shots:\n  drift:\n${lines}    field: 24 mm\n  slow:\n    iso: 100\n`;
const others = ['/shots/drift/field=24 mm', '/shots/slow/iso=100'];

type Case = [
  name: string,
  code: string,
  marked: string,
  fields: readonly string[],
  fixed: string | null,
];

const cases: readonly Case[] = [
  [
    'an unclosed quote',
    'unclosed-quote',
    shot('    note: «"»late sun\n'),
    ['/shots/drift/note=late sun', ...others],
    shot('    note: "late sun"\n'),
  ],
  [
    'an unclosed single quote',
    'unclosed-quote',
    shot("    note: «'»late sun\n"),
    ['/shots/drift/note=late sun', ...others],
    shot("    note: 'late sun'\n"),
  ],
  [
    'an unclosed quote in brackets',
    'unclosed-quote',
    shot('    take: { count: 3, note: «"»late }\n'),
    ['/shots/drift/take/count=3', ...others],
    shot('    take: { count: 3, note: "late" }\n'),
  ],
  [
    'an unclosed quote in an item',
    'unclosed-quote',
    shot('    light:\n      - wall\n      - «"»lamp\n'),
    ['/shots/drift/light/0=wall', '/shots/drift/light/1=lamp', ...others],
    shot('    light:\n      - wall\n      - "lamp"\n'),
  ],
  [
    'an entry that is an unclosed quote',
    'unclosed-quote',
    'shots:\n  drift: «"»x\n  slow:\n    iso: 100\n',
    ['/shots/drift=x', '/shots/slow/iso=100'],
    'shots:\n  drift: "x"\n  slow:\n    iso: 100\n',
  ],
  [
    'text behind a quote',
    'text-after-value',
    shot('    note: "late" «sun»\n'),
    ['/shots/drift/note=late', ...others],
    shot(`    note: '"late" sun'\n`),
  ],
  [
    'an escape that is none',
    'bad-escape',
    shot('    note: "a«\\q»b"\n'),
    ['/shots/drift/note=a\\qb', ...others],
    shot('    note: "a\\\\qb"\n'),
  ],
  [
    'an unclosed bracket',
    'unmatched-bracket',
    shot('    light: «[»wall, lamp\n'),
    ['/shots/drift/light/0=wall', '/shots/drift/light/1=lamp', ...others],
    shot('    light: [wall, lamp]\n'),
  ],
  [
    'an unclosed brace',
    'unmatched-bracket',
    shot('    take: «{» count: 3, settle: 8 s\n'),
    ['/shots/drift/take/count=3', '/shots/drift/take/settle=8 s', ...others],
    shot('    take: { count: 3, settle: 8 s }\n'),
  ],
  [
    'brackets that don’t match',
    'unmatched-bracket',
    shot('    take: { count: 3, list: «[»a }\n'),
    ['/shots/drift/take/count=3', ...others],
    null,
  ],
  [
    'text behind a bracket',
    'text-after-bracket',
    shot('    light: [wall] «lamp»\n'),
    ['/shots/drift/light/0=wall', ...others],
    null,
  ],
  [
    'a closing bracket as a value',
    'stray-bracket',
    shot('    note: «]»\n'),
    ['/shots/drift/note=]', ...others],
    shot("    note: ']'\n"),
  ],
  [
    'a tab for an indentation',
    'tab',
    shot('«\t»iso: 400\n'),
    ['/shots/drift/iso=400', ...others],
    shot('    iso: 400\n'),
  ],
  [
    'tabs throughout',
    'tab',
    'shots:\n«\t»drift:\n\t\tiso: 400\n',
    ['/shots/drift/iso=400'],
    'shots:\n  drift:\n    iso: 400\n',
  ],
  ['a field without its colon', 'missing-colon', shot('    «iso»\n'), others, shot('    iso:\n')],
  [
    'a field whose colon is missing, with lines below',
    'missing-colon',
    shot('    «take»\n      count: 3\n'),
    ['/shots/drift/take/count=3', ...others],
    shot('    take:\n      count: 3\n'),
  ],
  [
    'an entry without its colon',
    'missing-colon',
    'shots:\n  «drift»\n    iso: 400\n  slow: {}\n',
    ['/shots/drift/iso=400'],
    'shots:\n  drift:\n    iso: 400\n  slow: {}\n',
  ],
  [
    'an entry being named',
    'missing-colon',
    'shots:\n  drift:\n    iso: 400\n  «sl»\n',
    ['/shots/drift/iso=400'],
    'shots:\n  drift:\n    iso: 400\n  sl:\n',
  ],
  [
    'a section without its colon',
    'missing-colon',
    '«shots»\n  drift:\n    iso: 400\n',
    ['/shots/drift/iso=400'],
    'shots:\n  drift:\n    iso: 400\n',
  ],
  [
    'no space behind the colon',
    'space-after-colon',
    shot('    «iso:400»\n'),
    ['/shots/drift/iso=400', ...others],
    shot('    iso: 400\n'),
  ],
  [
    'no space behind the colon of the only field',
    'space-after-colon',
    'shots:\n  drift:\n    «iso:400»\n',
    ['/shots/drift/iso=400'],
    'shots:\n  drift:\n    iso: 400\n',
  ],
  [
    'no space behind a colon in brackets',
    'space-after-colon',
    shot('    take: { «count:3», settle: 8 s }\n'),
    ['/shots/drift/take/count=3', '/shots/drift/take/settle=8 s', ...others],
    shot('    take: { count: 3, settle: 8 s }\n'),
  ],
  [
    'a decimal comma',
    'comma-in-braces',
    'kit:\n  tubes:\n    t: { mass: «1,5 kg», length: 2 mm }\n',
    ['/kit/tubes/t/mass=1,5 kg', '/kit/tubes/t/length=2 mm'],
    'kit:\n  tubes:\n    t: { mass: 1.5 kg, length: 2 mm }\n',
  ],
  [
    'a colon in a value',
    'colon-in-value',
    'title: «Tide: the glass»\n',
    ['/title=Tide: the glass'],
    "title: 'Tide: the glass'\n",
  ],
  [
    'a colon in a value, and an apostrophe',
    'colon-in-value',
    "title: «Tide's end: glass»\n",
    ["/title=Tide's end: glass"],
    `title: "Tide's end: glass"\n`,
  ],
  [
    'a colon in a value in brackets',
    'colon-in-value',
    shot('    take: { note: «a: b», count: 3 }\n'),
    ['/shots/drift/take/note=a: b', '/shots/drift/take/count=3', ...others],
    shot("    take: { note: 'a: b', count: 3 }\n"),
  ],
  [
    'a hash in a title',
    'hash-in-value',
    'title: «Take #3»\n',
    ['/title=Take'],
    "title: 'Take #3'\n",
  ],
  [
    'a hash colour',
    'hash-in-value',
    'lights:\n  wall:\n    colour-temperature: «#4a5b6c»\n',
    ['/lights/wall/colour-temperature'],
    "lights:\n  wall:\n    colour-temperature: '#4a5b6c'\n",
  ],
  [
    'a hash in brackets',
    'hash-in-value',
    shot('    take: { note: «Take #3», count: 3 }\n'),
    ['/shots/drift/take/note=Take', ...others],
    shot("    take: { note: 'Take #3', count: 3 }\n"),
  ],
  [
    'a reserved first character',
    'reserved-start',
    shot('    note: «@»noon\n'),
    ['/shots/drift/note=@noon', ...others],
    shot("    note: '@noon'\n"),
  ],
  [
    'an item behind its key',
    'item-behind-key',
    shot('    light: «- wall»\n'),
    ['/shots/drift/light', ...others],
    shot('    light: [wall]\n'),
  ],
  [
    'a field too far right',
    'out-of-line',
    shot('    iso: 400\n      «rig»: far\n'),
    ['/shots/drift/iso=400', '/shots/drift/rig=far', ...others],
    shot('    iso: 400\n    rig: far\n'),
  ],
  [
    'a field too far left',
    'out-of-line',
    shot('    iso: 400\n   «rig»: far\n'),
    ['/shots/drift/iso=400', '/shots/drift/rig=far', ...others],
    shot('    iso: 400\n    rig: far\n'),
  ],
  // What stands behind a whole value is told for what it is, and read where it can be.
  [
    'a field too far right behind brackets',
    'out-of-line',
    shot('    light: [wall]\n      «rig»: far\n'),
    ['/shots/drift/light/0=wall', '/shots/drift/rig=far', ...others],
    shot('    light: [wall]\n    rig: far\n'),
  ],
  [
    'an item behind brackets',
    'stray-item',
    shot('    light: [wall]\n      «-» lamp\n'),
    ['/shots/drift/light/0=wall', ...others],
    null,
  ],
  [
    'a closing bracket behind brackets',
    'stray-bracket',
    shot('    light: [wall]\n    «]»\n'),
    ['/shots/drift/light/0=wall', ...others],
    null,
  ],
  // Fields that slipped together are told, and moved, together.
  [
    'fields too far right, with fields of their own',
    'out-of-line',
    shot('    iso: 400\n      «take»:\n        count: 3\n      rig: far\n'),
    ['/shots/drift/iso=400', '/shots/drift/take/count=3', '/shots/drift/rig=far', ...others],
    shot('    iso: 400\n    take:\n      count: 3\n    rig: far\n'),
  ],
  [
    'a line at the key of brackets',
    'unmatched-bracket',
    shot('    light: «[»wall,\n    rig: far\n'),
    ['/shots/drift/light/0=wall', '/shots/drift/rig=far', ...others],
    shot('    light: [wall,]\n    rig: far\n'),
  ],
  [
    'an entry too far right',
    'out-of-line',
    'shots:\n  a:\n    iso: 1\n   «b»:\n     iso: 2\n',
    ['/shots/a/iso=1', '/shots/b/iso=2'],
    'shots:\n  a:\n    iso: 1\n  b:\n    iso: 2\n',
  ],
  [
    'an entry too far left',
    'out-of-line',
    'shots:\n  a:\n    iso: 1\n «b»:\n   iso: 2\n',
    ['/shots/a/iso=1', '/shots/b/iso=2'],
    'shots:\n  a:\n    iso: 1\n  b:\n    iso: 2\n',
  ],
  [
    'a field twice',
    'duplicate-key',
    shot('    iso: 400\n    «iso»: 800\n'),
    ['/shots/drift/iso=400', '/shots/drift/iso=800', ...others],
    null,
  ],
  [
    'an anchor',
    'anchor',
    shot('    iso: «&fast» 400\n'),
    ['/shots/drift/iso=400', ...others],
    shot('    iso: 400\n'),
  ],
  [
    'an anchor on an entry',
    'anchor',
    'shots:\n  a: «&x»\n    iso: 1\n',
    ['/shots/a/iso=1'],
    'shots:\n  a:\n    iso: 1\n',
  ],
  [
    'a tag',
    'tag',
    shot('    iso: «!!str» 400\n'),
    ['/shots/drift/iso=400', ...others],
    shot('    iso: 400\n'),
  ],
  ['an alias', 'alias', shot('    iso: «*fast»\n'), ['/shots/drift/iso=*fast', ...others], null],
  [
    'a complex key',
    'complex-key',
    shot('    «?» iso\n    : 400\n'),
    ['/shots/drift/iso=400', ...others],
    null,
  ],
  ['a directive', 'directive', '«%YAML 1.2»\ntitle: x\n', ['/title=x'], 'title: x\n'],
  [
    'a further document',
    'document-marker',
    'title: x\n«---»\nabout: y\n',
    ['/title=x', '/about=y'],
    'title: x\nabout: y\n',
  ],
  ['a plan in braces', 'no-key', '«{ title: x }»\n', [], null],
  ['prose', 'no-key', 'title: x\n«two words»\nand more of them\n', ['/title=x'], null],
  ['a replacement character', 'not-utf-8', 'title: a«\uFFFD»b\n', ['/title=a\uFFFDb'], null],
  ['a NUL', 'control-character', 'title: a«\0»b\n', ['/title=a\0b'], 'title: ab\n'],
  [
    'a byte order mark within',
    'control-character',
    'title: a«\uFEFF»b\n',
    ['/title=a\uFEFFb'],
    'title: ab\n',
  ],
  [
    'a lone CR',
    'lone-return',
    'title: x«\r»about: y\n',
    ['/title=x', '/about=y'],
    'title: x\nabout: y\n',
  ],
  [
    'a byte order mark ahead of a defect',
    'colon-in-value',
    '\uFEFFtitle: «a: b»\n',
    ['/title=a: b'],
    "\uFEFFtitle: 'a: b'\n",
  ],
];

test('each defect is told once, on its place, and its fix mends it', () => {
  each(cases, ([_, code, marked, read, fixed]) => {
    const text = marked.replace(/[«»]/g, '');
    const found = problemsOf(text);
    expect(found.map(({ problem }) => problem.code)).toEqual([code]);
    const [{ at, chunk, problem }] = found as [Found];
    const place = [problem.at.start + at, problem.at.end + at];
    expect(place).toEqual([marked.indexOf('«'), marked.indexOf('»') - 1]);
    expect(fields(text)).toEqual(read);
    const fix = problem.fixes[0];
    if (fixed === null) {
      expect(problem.fixes).toEqual([]);
      return;
    }
    const edits = [...(fix?.edits ?? [])].sort((a, b) => b.span.start - a.span.start);
    let own = chunk.text;
    for (const { span, text: put } of edits)
      own = own.slice(0, span.start) + put + own.slice(span.end);
    const after = text.slice(0, at) + own + text.slice(at + chunk.text.length);
    expect(after).toBe(fixed);
    expect(problemsOf(after)).toEqual([]);
  });
});

test('an alias of a value nearby is replaced by it', () => {
  const [, second] = problemsOf('shots:\n  a:\n    iso: &fast 400\n    other: *fast\n') as [
    Found,
    Found,
  ];
  expect(second.problem.fixes[0]?.edits[0]?.text).toBe('400');
});

test('a second byte order mark is a character out of place, no more', () => {
  const codes = (text: string) => problemsOf(text).map(({ problem }) => problem.code);
  for (const rest of ['c: d\ne: f\n', '  c: d\n e\n']) {
    expect(codes(`\uFEFF\uFEFF${rest}`)).toEqual(['control-character', ...codes(rest)]);
    expect(fields(`\uFEFF\uFEFF${rest}`)).toEqual(fields(rest));
  }
});

test('nothing is wrong with what is sound', () => {
  each(
    [
      'title: Low Water # the working title\n',
      'shots:\n  a:\n    iso: 1600 #or auto\n    #iso: 800\n    ring: closest # 0.85 m\n',
      'shots:\n  a: { iso: 1600, # or auto\n       ring: closest }\n',
      'lights:\n  wall:\n    colour: # measured later\n',
      'title: "Take #3: the glass"\nabout: C# and F#1, f/4:3\n',
      'kit:\n  tubes:\n    a: { list: [1,5, 2], file: media/a:b.mp4, at: 01:02:03 }\n',
      'about: |\n  A loop: for a lobby #1\n  - and "more\n\ntitle: x\n',
      'about: two lines\n  of prose\ntitle: "and\n  quoted"\n',
      '---\ntitle: x\n',
      '\uFEFFtitle: x\r\nabout: y\r\n',
      '',
    ],
    (text) => {
      expect(problemsOf(text)).toEqual([]);
    },
  );
});

test('scalars are read as written', () => {
  expect(
    fields(
      'a: yes\nb: 0800\nc: 1e999\nd: ~\ne: null\nf: 0x10\ng: .inf\nh: 2027-03-02\ni: ""\nj:\n',
    ),
  ).toEqual([
    '/a=yes',
    '/b=0800',
    '/c=1e999',
    '/d=~',
    '/e=null',
    '/f=0x10',
    '/g=.inf',
    '/h=2027-03-02',
    '/i=',
    '/j',
  ]);
});
