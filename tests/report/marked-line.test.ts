/** The line of a finding in a terminal: the carets stand under the value, whatever the line is. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { markedLine } from '../../shared/report/marked-line.ts';

/** What the carets stand under. */
function under(line: string, start: number, end: number): string {
  const shown = markedLine(line, start, end);
  if (shown === null) throw new Error('nothing shown');
  const [, blanks = '', carets = ''] = /^( *)(\^+)$/.exec(shown.mark) ?? [];
  expect(carets.length).toBeGreaterThan(0);
  return shown.text.slice(blanks.length, blanks.length + carets.length);
}

const word = fc.stringMatching(/^[a-z]{1,30}$/);

describe('the carets', () => {
  it('stand under the value, with anything before and behind it', () => {
    fc.assert(
      fc.property(
        fc.nat({ max: 8 }),
        fc.array(word, { maxLength: 12 }),
        word,
        fc.array(word, { maxLength: 12 }),
        (indent, before, value, after) => {
          const lead = ' '.repeat(indent) + before.map((each) => `${each} `).join('');
          const line = [lead + value, ...after].join(' ');
          const start = lead.length;
          expect(under(line, start, start + value.length)).toBe(value);
          // As much as a terminal is wide, and what is cut off is marked.
          const { text } = markedLine(line, start, start + value.length)!;
          expect(text.length).toBeLessThanOrEqual(104);
          expect(text.startsWith('… ') || line.trimStart().startsWith(text.slice(0, 20))).toBe(
            true,
          );
          expect(text.endsWith(' …') || line.endsWith(text.slice(-20))).toBe(true);
        },
      ),
    );
  });

  it('are at least one, also where the value is empty', () => {
    expect(markedLine('field:', 6, 6)).toEqual({ text: 'field:', mark: '      ^' });
  });

  it('end with the line, where the value goes on in the next', () => {
    expect(under('  field: "60', 9, Number.POSITIVE_INFINITY)).toBe('"60');
  });

  it('begin without the indent of the line', () => {
    expect(markedLine('      iso: 90', 11, 13)).toEqual({ text: 'iso: 90', mark: '     ^^' });
  });

  // Wide characters take two columns of a terminal (Unicode Standard Annex 11), combining ones none.
  it('count columns, not characters', () => {
    expect(markedLine('題: 5', 3, 4)!.mark).toBe('    ^');
    expect(markedLine('e\u0301: 5', 4, 5)!.mark).toBe('   ^');
    expect(markedLine('🎬🎬: 5', 6, 7)!.mark).toBe('      ^');
  });

  it('stand under nothing of a blank line', () => {
    expect(markedLine('   ', 0, 1)).toBeNull();
  });
});
