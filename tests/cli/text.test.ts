import { describe, expect, it } from 'vitest';
import { wantsColour } from '../../server/terminal.ts';
import { folderWith, lamella } from './support.ts';

/** The row of carets and the row above it. */
const markedRows = (out: string): [string, string] => {
  const rows = out.split('\n');
  const at = rows.findIndex((row) => /^ *\| *\^+$/.test(row));
  return [rows[at - 1] ?? '', rows[at] ?? ''];
};

describe('the text of check', () => {
  it('says what, where, marks the value, and offers ways out with their price', async () => {
    const folder = folderWith({
      'a.shootplan.yaml': 'title: x\n    aperture: !priced soft, related (fix: f/11)\n',
    });
    const { out } = await lamella(folder, ['check']);
    expect(out).toBe(`warning  soft, related  told-to
  a.shootplan.yaml:2:15
    | aperture: !priced soft, related (fix: f/11)
    |           ${'^'.repeat(33)}
  see a.shootplan.yaml:1:1: the first line
  fix: Write f/11 (costs a stop)

1 file checked: 1 warning.
`);
  });

  it('counts what it found', async () => {
    const folder = folderWith({ 'a.shootplan.yaml': 'a: !error x\nb: !error y\nc: !hint z\n' });
    const { out } = await lamella(folder, ['check']);
    expect(out.trimEnd().split('\n').at(-1)).toBe('1 file checked: 2 errors, 1 hint.');
    const clean = folderWith({ 'a.shootplan.yaml': '', 'b.shootplan.yaml': '' });
    expect((await lamella(clean, ['check'])).out).toBe('2 files checked: no findings.\n');
  });

  it('keeps the mark under the value behind wide and combining characters', async () => {
    const folder = folderWith({ 'a.shootplan.yaml': 'b: 水滴 e\u0301 !error x\n' });
    const [, mark] = markedRows((await lamella(folder, ['check'])).out);
    // Common practice of terminals: ideographs take two columns, combining marks none.
    expect(mark).toBe(`    | ${' '.repeat('b: '.length + 4 + ' e '.length)}${'^'.repeat(8)}`);
  });

  it('cuts a long line around the value', async () => {
    const folder = folderWith({ 'a.shootplan.yaml': `b: ${'\u{1f41a}'.repeat(300)} !error x\n` });
    const [line, mark] = markedRows((await lamella(folder, ['check'])).out);
    expect(line.length).toBeLessThan(120);
    expect(line).toContain('!error x');
    // No half of a surrogate pair.
    expect(encodeURIComponent(line)).toContain('%F0%9F%90%9A');
    expect(mark).toContain('^'.repeat(8));
  });

  it('makes terminal escapes and marks of direction visible instead of obeying them', async () => {
    const folder = folderWith({ 'a.shootplan.yaml': 'b: !error \u001b[31mred\u202e\u009b1m\n' });
    const { out } = await lamella(folder, ['check']);
    expect(out).toContain('\\u{1b}[31mred\\u{202e}\\u{9b}1m');
    // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what must not be there.
    expect(out).not.toMatch(/[\u001b\u009b\u202e]/);
  });

  it('colours only where colour is wanted', async () => {
    const folder = folderWith({ 'a.shootplan.yaml': 'a: !error x\n' });
    const plain = await lamella(folder, ['check']);
    const coloured = await lamella(folder, ['check'], { colour: true });
    expect(coloured.out).toContain('\u001b[1;31merror\u001b[0m');
    // biome-ignore lint/suspicious/noControlCharactersInRegex: colours are control characters.
    expect(coloured.out.replace(/\u001b\[[\d;]*m/g, '')).toBe(plain.out);
  });
});

/** no-color.org and force-color.org say these. */
describe('whether to colour', () => {
  it.each([
    [{}, true, true],
    [{}, false, false],
    [{ TERM: 'dumb' }, true, false],
    [{ NO_COLOR: '1' }, true, false],
    [{ NO_COLOR: '' }, true, true],
    [{ FORCE_COLOR: '1' }, false, true],
    [{ FORCE_COLOR: '0' }, true, false],
    [{ FORCE_COLOR: '' }, false, false],
    [{ FORCE_COLOR: '1', NO_COLOR: '1' }, false, true],
  ])('%j on a terminal: %s', (environment, isTerminal, wanted) => {
    expect(wantsColour(environment, isTerminal)).toBe(wanted);
  });
});
