/** What stands round a caret, in texts that are whole, half-written and broken. */
import { describe, expect, test } from 'vitest';
import { type Caret, caretAt } from '../../shared/text/caret.ts';
import { ChunkedText } from '../../shared/text/chunked-text.ts';
import { each } from '../support/each.ts';

function at(marked: string): Caret | null {
  const offset = marked.indexOf('|');
  const text = ChunkedText.from(marked.slice(0, offset) + marked.slice(offset + 1));
  const before = marked.slice(0, offset).split(/\r\n|\n/);
  return caretAt(text, { line: before.length - 1, character: before.at(-1)!.length });
}

/** "shots/a key" */
const spot = (marked: string): string | null => {
  const caret = at(marked);
  return caret && `${caret.path.join('/')} ${caret.slot}${caret.flow ? ' in braces' : ''}`;
};

const SHOT = 'shots:\n  a:\n    subject: x\n';

describe('in lines', () => {
  test('each place is the one that is meant', () => {
    each(
      [
        ['|', ' key'],
        ['sho|', ' key'],
        ['title: x\n|', ' key'],
        ['shots:\n  |', 'shots open'],
        ['shots:\n|', ' key'],
        ['shots:\n  a:\n    |', 'shots/a open'],
        ['shots:\n  a:\n    |\n    subject: x\n', 'shots/a key'],
        [`${SHOT}    ape|\n    iso: 100\n`, 'shots/a key'],
        [`${SHOT}    ape|rture: f/8\n`, 'shots/a key'],
        // A word above keys is one of them, and a key in a wrong column still its neighbours' neighbour.
        ['shots:\n  a:\n    ape|\n    iso: 100\n', 'shots/a key'],
        ['shots:\n  sl|\n    iso: 100\n', 'shots key'],
        [`${SHOT}   rig: far\n    iso: |\n`, 'shots/a/iso value'],
        [`${SHOT}      rig: far\n      iso: |\n`, 'shots/a/iso value'],
        [`${SHOT}    light: [one,\n    ape|\n`, 'shots/a key'],
        [`${SHOT}    light: &a o|ne\n`, 'shots/a/light value'],
        [`${SHOT}    aperture: |\n`, 'shots/a/aperture value'],
        [`${SHOT}    aperture:|\n`, 'shots/a/aperture value'],
        [`${SHOT}    aperture: f/|16   # as marked\n`, 'shots/a/aperture value'],
        [`${SHOT}    aperture: f/16 |  # as marked\n`, 'shots/a/aperture value'],
        [`${SHOT}    aperture: f/16   |# as marked\n`, 'shots/a/aperture value'],
        [`${SHOT}    light:\n      |\n`, 'shots/a/light open'],
        [`${SHOT}    light:\n      - |\n`, 'shots/a/light/0 open'],
        [`${SHOT}    light:\n      - one\n      |\n`, 'shots/a/light item'],
        [`${SHOT}    light:\n    - one\n    - |\n`, 'shots/a/light/1 open'],
        ['kit:\n  bodies:\n    b:\n      iso: { lowest: 1 }\n  |\n', 'kit key'],
        ['clips:\n  a:\n    - fi|le: u\n      note: k\n', 'clips/a/0 key'],
        ['shots:\r\n  a:\r\n    |\r\n    iso: 3\r\n', 'shots/a key'],
        ['\ufeffsho|', ' key'],
      ],
      ([marked, expected]) => {
        expect(spot(marked)).toBe(expected);
      },
    );
  });
});

describe('in braces and brackets, closed or not', () => {
  test('each place is the one that is meant', () => {
    each(
      [
        [`${SHOT}    light: [|]\n`, 'shots/a/light/0 value in braces'],
        [`${SHOT}    light: [one, |]\n`, 'shots/a/light/1 value in braces'],
        [`${SHOT}    light: [one, |\n    iso: 3\n`, 'shots/a/light/1 value in braces'],
        [`${SHOT}    take: {|}\n`, 'shots/a/take key in braces'],
        [`${SHOT}    take: { duration: 60 s, | }\n`, 'shots/a/take key in braces'],
        [`${SHOT}    take: { duration: |, count: 3 }\n`, 'shots/a/take/duration value in braces'],
        [
          `${SHOT}    take: { duration: 60 |\n    iso: 3\n`,
          'shots/a/take/duration value in braces',
        ],
        [
          `${SHOT}    take: {\n      duration: 60 s,\n      |\n    }\n`,
          'shots/a/take key in braces',
        ],
        ['shots: { a: { subject: x, | } }\n', 'shots/a key in braces'],
        ['kit: { bodies: { b: { iso: { low|est: 1 } } } }\n', 'kit/bodies/b/iso key in braces'],
      ],
      ([marked, expected]) => {
        expect(spot(marked)).toBe(expected);
      },
    );
  });
});

test('what stands below a line that is no key is not written into the key above it', () => {
  expect(spot(`${SHOT}=======\n    ape|rture: f/8\n`)).toBe('======= key');
});

test.each([
  ['the place before a byte order mark', '|\ufefftitle: x\n'],
  ['a comment', `${SHOT}    # re|mark\n`],
  ['a comment behind a value', `${SHOT}    iso: 100 # re|mark\n`],
  ['a comment that begins', `${SHOT}    iso: 100 #| remark\n`],
  ['prose', 'about: >\n  some |prose\n'],
  ['the gap behind a mapping', `${SHOT}    take: { count: 3 } |\n`],
  ['the indentation of a line', `${SHOT}  |  iso: 100\n`],
  ['a key whose value stands below', 'shots:|\n  a:\n    iso: 3\n'],
])('nothing is written in %s', (_, marked) => {
  expect(at(marked)).toBeNull();
});

describe('new text', () => {
  test('keeps off its neighbours', () => {
    expect(at(`${SHOT}    aperture:|\n`)).toMatchObject({ before: ' ', from: 13, to: 13 });
    expect(at(`${SHOT}    take: {|}\n`)).toMatchObject({ before: ' ', after: ' ' });
    expect(at(`${SHOT}    light: [one,|]\n`)).toMatchObject({ before: ' ', after: '' });
    expect(at(`${SHOT}    take: { | count: 3 }\n`)).toMatchObject({
      after: ',',
      beside: ['count'],
    });
    expect(at(`${SHOT}    aperture: |# as marked\n`)).toMatchObject({ after: ' ' });
  });

  test('behind a dash is an item of its own, whatever the next one holds', () => {
    const place = at('clips:\n  a:\n    - |\n    - file: u\n      note: k\n');
    expect(place).toMatchObject({ path: ['clips', 'a', 0], slot: 'open', beside: ['file: u'] });
  });

  test('stands in the column of its neighbours, however far the caret is indented', () => {
    const moved = { from: 0, before: '    ', column: 4 };
    expect(at(`${SHOT}   |\n`)).toMatchObject({ path: ['shots', 'a'], ...moved });
    expect(at(`${SHOT}       |\n`)).toMatchObject({ path: ['shots', 'a'], ...moved });
    expect(at('shots:\n  a:\n|\n    iso: 3\n')).toMatchObject({ path: ['shots', 'a'], ...moved });
    expect(at('shots:\n    |\n  a:\n    iso: 3\n')).toMatchObject({ path: ['shots'], column: 2 });
  });

  test('never parts an entry, or a section, from what is below it', () => {
    expect(spot('shots:\n  a:\n    iso: 3\n|\n  b:\n    iso: 3\n')).toBe('shots key');
    expect(spot(`${SHOT}|\n    iso: 3\n`)).toBe('shots/a key');
  });

  test('replaces the whole word under the caret', () => {
    expect(at(`${SHOT}    aperture: f/|16   # as marked\n`)).toMatchObject({
      from: 14,
      to: 18,
      word: 'f/16',
      typed: 'f/',
    });
    // And the blank between it and a caret behind it, from whose other side a comment is kept off.
    expect(at(`${SHOT}    aperture: f/16  | # as marked\n`)).toMatchObject({
      ...{ from: 14, to: 20, word: 'f/16  ', typed: 'f/16  ', after: '' },
    });
    expect(at(`${SHOT}    aperture: f/16 |# as marked\n`)).toMatchObject({ to: 19, after: ' ' });
    expect(at(`${SHOT}    record: full|#1\n`)).toMatchObject({ word: 'full#1', after: '' });
    expect(at(`${SHOT}    record: 'fu|ll'\n`)).toMatchObject({ word: "'full'", typed: "'fu" });
    expect(at(`${SHOT}    ta|ke: { count: 3 }\n`)).toMatchObject({ word: 'take', pair: 'value' });
    expect(at(`${SHOT}    ta|ke:\n      count: 3\n`)).toMatchObject({ pair: 'value' });
    expect(at(`${SHOT}    ta|ke:\n`)).toMatchObject({ pair: 'colon', to: 8, colonEnd: 9 });
    expect(at('sho|ts:\n  a:\n    iso: 3\n')).toMatchObject({ pair: 'value' });
  });
});

test('what stands beside the caret is known on both its sides', () => {
  expect(at('shots:\n  a:\n    iso: 3\n    |\n    rig: y\n')?.beside).toEqual(['iso', 'rig']);
  expect(at('title: x\n|\nshots:\n  a:\n    iso: 3\n')?.beside).toEqual(['title', 'shots']);
  expect(at(`${SHOT}    light: [one, |, two]\n`)?.beside).toEqual(['one', 'two']);
  expect(at('shots:\n  a:\n    iso: 3\n  |\n  b:\n    iso: 3\n')?.beside).toEqual(['a', 'b']);
});
