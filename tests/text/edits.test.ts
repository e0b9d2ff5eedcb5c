import { expect, test } from 'vitest';
import { toTextEdits } from '../../shared/plan/edits.ts';
import type { PlanEdit } from '../../shared/plan/problem.ts';
import type { Path } from '../../shared/syntax/tree.ts';
import { ChunkedText } from '../../shared/text/chunked-text.ts';
import { merge } from '../fuzz/text-merge.ts';
import { each } from '../support/each.ts';
import { entryId } from '../support/entry-id.ts';

const before = `title: Low Water   # working title
deliver: { resolution: 1920 x 1080, rate: 25 fps }

kit:
  tubes:
    tube-12: { length: 12 mm }   # short
    tube-20: { length: 20 mm }
  close-up-lenses: { plus-2: { power: 2 dpt } }

shots:
  drift:
    subject: film    # the harbour
    aperture: f/16
    light:
      - wall
      - lamp
    support:
      head: ball
    take: { duration: 60 s, count: 3 }
    note:

  # the quick one
  slow:
    subject: slick
# the end
`;

/** Applies edits, from the last to the first, and gives the new text, which must be sound. */
function applied(text: string, edit: PlanEdit): string {
  const chunked = ChunkedText.from(text);
  const edits = toTextEdits(edit, chunked)
    .map(({ chunk, span, text: put }) => ({
      start: chunked.absolute(chunk, span.start),
      end: chunked.absolute(chunk, span.end),
      put,
    }))
    .sort((a, b) => b.start - a.start);
  let after = text;
  for (const { start, end, put } of edits) after = after.slice(0, start) + put + after.slice(end);
  expect(merge(ChunkedText.from(after).chunks).problems, after).toEqual([]);
  return after;
}

/** Lines taken out and put in. */
function changes(old: string, after: string): string[] {
  const a = old.split('\n');
  const b = after.split('\n');
  let head = 0;
  while (head < a.length && head < b.length && a[head] === b[head]) head++;
  let tail = 0;
  while (tail < a.length - head && tail < b.length - head && a.at(-1 - tail) === b.at(-1 - tail))
    tail++;
  return [
    ...a.slice(head, a.length - tail).map((line) => `-${line}`),
    ...b.slice(head, b.length - tail).map((line) => `+${line}`),
  ];
}

const at = (entry: string, ...path: Path) => ({ file: 'f', entry: entryId(entry), path });
const set = (text: string, entry: string, ...path: Path): PlanEdit => ({
  op: 'set',
  at: at(entry, ...path),
  text,
});
const remove = (entry: string, ...path: Path): PlanEdit => ({
  op: 'remove',
  at: at(entry, ...path),
});
const rename = (text: string, entry: string, ...path: Path): PlanEdit => ({
  op: 'rename-key',
  at: at(entry, ...path),
  text,
});
const add = (section: string, name: string, text: string): PlanEdit => ({
  op: 'add-entry',
  file: 'f',
  section: entryId(section),
  name,
  text,
});

const cases: readonly [string, PlanEdit, string[]][] = [
  [
    'sets a scalar and keeps the comment',
    set('slick', 'shots/drift', 'subject'),
    ['-    subject: film    # the harbour', '+    subject: slick    # the harbour'],
  ],
  [
    'sets a field of the file',
    set('High Water', '', 'title'),
    ['-title: Low Water   # working title', '+title: High Water   # working title'],
  ],
  [
    'the same by the field’s own id',
    set('High Water', 'title'),
    ['-title: Low Water   # working title', '+title: High Water   # working title'],
  ],
  [
    'sets within brackets',
    set('50 fps', 'deliver', 'rate'),
    [
      '-deliver: { resolution: 1920 x 1080, rate: 25 fps }',
      '+deliver: { resolution: 1920 x 1080, rate: 50 fps }',
    ],
  ],
  [
    'adds within brackets',
    set('2 min', 'deliver', 'duration'),
    [
      '-deliver: { resolution: 1920 x 1080, rate: 25 fps }',
      '+deliver: { resolution: 1920 x 1080, rate: 25 fps, duration: 2 min }',
    ],
  ],
  [
    'adds a field at the end of the entry, before its blank lines',
    set('1600', 'shots/drift', 'iso'),
    ['+    iso: 1600'],
  ],
  ['adds a field to the last entry', set('1600', 'shots/slow', 'iso'), ['+    iso: 1600']],
  [
    'adds to a mapping below',
    set('180 mm', 'shots/drift', 'support', 'foot'),
    ['+      foot: 180 mm'],
  ],
  [
    'makes the mappings that lead there',
    set('only the rim', 'shots/slow', 'allow', 'depth-short', 'because'),
    ['+    allow:', '+      depth-short:', '+        because: only the rim'],
  ],
  [
    'fills a key without a value',
    set('late', 'shots/drift', 'note'),
    ['-    note:', '+    note: late'],
  ],
  [
    'sets a block value on one line',
    set('{ head: boom }', 'shots/drift', 'support'),
    ['-    support:', '-      head: ball', '+    support: { head: boom }'],
  ],
  [
    'sets several lines',
    set('head: boom\nfoot: 3 mm', 'shots/drift', 'support'),
    ['-      head: ball', '+      head: boom', '+      foot: 3 mm'],
  ],
  [
    'sets several lines within brackets',
    set('a: 1 s\nb: [x, y]', 'shots/drift', 'take', 'settle'),
    [
      '-    take: { duration: 60 s, count: 3 }',
      '+    take: { duration: 60 s, count: 3, settle: { a: 1 s, b: [x, y] } }',
    ],
  ],
  ['sets an item', set('panel', 'shots/drift', 'light', 0), ['-      - wall', '+      - panel']],
  ['adds an item', set('panel', 'shots/drift', 'light', 2), ['+      - panel']],
  [
    'removes a field with its comment',
    remove('shots/drift', 'subject'),
    ['-    subject: film    # the harbour'],
  ],
  [
    'removes from brackets, first',
    remove('deliver', 'resolution'),
    ['-deliver: { resolution: 1920 x 1080, rate: 25 fps }', '+deliver: { rate: 25 fps }'],
  ],
  [
    'removes from brackets, last',
    remove('deliver', 'rate'),
    [
      '-deliver: { resolution: 1920 x 1080, rate: 25 fps }',
      '+deliver: { resolution: 1920 x 1080 }',
    ],
  ],
  [
    'removes what would be left empty',
    remove('shots/drift', 'support', 'head'),
    ['-    support:', '-      head: ball'],
  ],
  ['removes an item', remove('shots/drift', 'light', 0), ['-      - wall']],
  [
    'removes an entry, not the comment of the next',
    remove('kit/tubes/tube-12'),
    ['-    tube-12: { length: 12 mm }   # short'],
  ],
  [
    'removes all of an entry in brackets',
    remove('kit/close-up-lenses/plus-2', 'power'),
    ['-  close-up-lenses: { plus-2: { power: 2 dpt } }', '+  close-up-lenses: { plus-2: {} }'],
  ],
  ['renames a key', rename('slit', 'shots/drift', 'support'), ['-    support:', '+    slit:']],
  ['renames an entry', rename('still', 'shots/slow'), ['-  slow:', '+  still:']],
  [
    'adds an entry of lines',
    add('shots', 'burst', 'subject: film\nrig: far'),
    ['+', '+  burst:', '+    subject: film', '+    rig: far'],
  ],
  [
    'adds an entry of one line',
    add('kit/tubes', 'tube-36', '{ length: 36 mm }'),
    ['+    tube-36: { length: 36 mm }'],
  ],
  [
    'adds an entry to a section in brackets',
    add('kit/close-up-lenses', 'plus-3', 'power: 3 dpt'),
    [
      '-  close-up-lenses: { plus-2: { power: 2 dpt } }',
      '+  close-up-lenses: { plus-2: { power: 2 dpt }, plus-3: { power: 3 dpt } }',
    ],
  ],
  [
    'adds a group',
    add('kit/stands', 'boom', 'reach: 1.2 m'),
    ['+  stands:', '+    boom:', '+      reach: 1.2 m'],
  ],
  [
    'adds a section',
    add('lights', 'wall', 'kind: led'),
    ['+', '+lights:', '+  wall:', '+    kind: led'],
  ],
  ['adds a field of the file behind the others', set('50 Hz', '', 'mains'), ['+mains: 50 Hz']],
];

test('each edit changes the lines that it has to and no others', () => {
  each(cases, ([_, edit, lines]) => {
    expect(changes(before, applied(before, edit))).toEqual(lines);
  });
});

test('each edit does the same with CR LF', () => {
  each(cases, ([_, edit]) => {
    const crlf = before.replaceAll('\n', '\r\n');
    expect(applied(crlf, edit)).toBe(applied(before, edit).replaceAll('\n', '\r\n'));
  });
});

test('each edit gives the text that a person would have written', () => {
  each(
    [
      ['title: x', set('50 Hz', '', 'mains'), 'title: x\nmains: 50 Hz'],
      ['', set('50 Hz', 'mains'), 'mains: 50 Hz\n'],
      ['', add('kit/tubes', 't', '{ length: 1 mm }'), 'kit:\n  tubes:\n    t: { length: 1 mm }\n'],
      [
        'kit:\n    tubes:\n        a: {}\n',
        add('kit/tubes', 't', 'length: 1 mm'),
        'kit:\n    tubes:\n        a: {}\n        t:\n          length: 1 mm\n',
      ],
      ['shots:\n', add('shots', 'a', 'iso: 100'), 'shots:\n  a:\n    iso: 100\n'],
      ['shots: {}\n', add('shots', 'a', 'iso: 100'), 'shots: { a: { iso: 100 } }\n'],
      [
        'shots:\n    a:\n        iso: 100\n',
        set('x', 'shots/a', 'b', 'c'),
        'shots:\n    a:\n        iso: 100\n        b:\n            c: x\n',
      ],
      [
        'shots: { a: { p: { x, y: open } } }\n',
        set('open', 'shots/a', 'p', 'x'),
        'shots: { a: { p: { x: open, y: open } } }\n',
      ],
      [
        'clips:\n  a:\n    - file: x\n      note: y\n',
        remove('clips/a', 0, 'file'),
        'clips:\n  a:\n    - note: y\n',
      ],
    ] as const,
    ([text, edit, after]) => {
      expect(applied(text, edit)).toBe(after);
    },
    ([text, edit]) => `${JSON.stringify(text)} ${JSON.stringify(edit)}`,
  );
});

test('an edit of what is not there, or can’t be, makes none', () => {
  const text = ChunkedText.from(before);
  expect(toTextEdits(remove('shots/none', 'a'), text)).toEqual([]);
  expect(toTextEdits(rename('a', 'shots/drift', 'none'), text)).toEqual([]);
  expect(toTextEdits(set('a', 'shots/drift', 'subject', 'deeper'), text)).toEqual([]);
  expect(toTextEdits(set('film', 'shots/drift', 'subject'), text)).toEqual([]);
});
