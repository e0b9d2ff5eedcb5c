/** `lamella frame`: the picture that it writes, where, and what it says beside it. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { decode } from 'fast-png';
import { expect, it } from 'vitest';
import { runCommandLine } from '../../server/command-line.ts';
import { createCore } from '../../shared/core/core.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { changed } from '../support/plans.ts';
import { folderWith } from './support.ts';

const NAME = 'a.shootplan.yaml';
const COLOURED = changed(EXAMPLE_PLAN, {
  'shots/skin/tilt': '7 deg',
  'subjects/soap':
    '{ kind: film, orientation: upright, size: 160 x 100 mm, thickness: 100 to 900 nm }',
});

async function run(text: string, ...args: readonly string[]) {
  const cwd = folderWith({ [NAME]: text });
  const out: (string | Uint8Array)[] = [];
  let err = '';
  const status = await runCommandLine(['frame', ...args], {
    createCore,
    rules: [],
    sheetScript: () => '',
    reviewScript: () => '',
    createClipReader: () => {
      throw new Error('no clip is read for a frame');
    },
    terminal: {
      cwd,
      colour: false,
      out: (piece) => {
        out.push(piece);
      },
      err: (piece) => {
        err += piece;
      },
      progress: () => undefined,
      onInterrupt: () => () => undefined,
      input: async () => new Uint8Array(),
    },
  });
  return { status, out, err, file: (name: string) => readFileSync(path.join(cwd, name)) };
}

it('writes a PNG of the recorded shape, and says beside it what it is', async () => {
  const { status, out, err, file } = await run(
    COLOURED,
    NAME,
    '--shot',
    'skin',
    '-o',
    'f.png',
    '--width',
    '64',
  );
  expect({ status, out }).toEqual({ status: 0, out: [] });
  // Signature and header: W3C, Portable Network Graphics (third edition), 5.2 and 11.2.1.
  const bytes = file('f.png');
  expect([...bytes.subarray(0, 8)]).toEqual([137, 80, 78, 71, 13, 10, 26, 10]);
  expect([bytes.readUInt32BE(16), bytes.readUInt32BE(20)]).toEqual([64, 36]);
  const { data, channels, text } = decode(bytes);
  expect({ channels, length: data.length }).toEqual({ channels: 3, length: 64 * 36 * 3 });
  expect(text.Description).toContain('Traced from the plan, not a photograph.');
  expect(err.split('\n').slice(0, 2)).toEqual([
    'The frame was written to f.png.',
    'Traced from the plan, not a photograph.',
  ]);
  expect(err).toContain('100 nm at the top to 900 nm at the bottom');
});

it('draws bands of colour, the same at every run', async () => {
  const [one, two] = [
    await run(COLOURED, NAME, '--shot', 'skin', '--width', '160'),
    await run(COLOURED, NAME, '--shot', 'skin', '--width', '160'),
  ];
  const png = one.out[0] as Uint8Array;
  expect(one.out).toHaveLength(1);
  expect(two.out[0]).toEqual(png);
  const { data, width, height } = decode(png);
  expect([width, height]).toEqual([160, 90]);
  const down = Array.from({ length: height }, (_, row) => {
    const at = (row * width + width / 2) * 3;
    return [data[at]!, data[at + 1]!, data[at + 2]!] as const;
  });
  const leads = (of: (colour: readonly [number, number, number]) => boolean) => down.some(of);
  // Between 100 and 900 nm a film runs through all of them (A. Michel-Lévy 1888).
  expect(leads(([r, g, b]) => r > 1.5 * g && b > g)).toBe(true);
  expect(leads(([r, g, b]) => b > 1.5 * r && b > g)).toBe(true);
  expect(leads(([r, g, b]) => g > 1.2 * r && g > 1.2 * b)).toBe(true);
  expect(leads(([r, g, b]) => r > 1.5 * b && g > 1.5 * b)).toBe(true);
});

it.each([
  ['no shot', ['--shot', 'skim'], 'has no shot "skim". Did you mean skin?'],
  ['no shot named', [], 'frame needs --shot NAME.'],
  [
    'a width in words',
    ['--shot', 'skin', '--width', 'wide'],
    '--width takes whole pixels from 16 to 1920',
  ],
  ['a width too large', ['--shot', 'skin', '--width', '99999'], '--width takes whole pixels'],
  ["a plan's name", ['--shot', 'skin', '-o', NAME], 'would overwrite it'],
  [
    'a folder that is not there',
    ['--shot', 'skin', '-o', 'x/f.png', '--width', '32'],
    "can't be written",
  ],
])('refuses %s', async (_, args, said) => {
  const { status, out, err, file } = await run(EXAMPLE_PLAN, NAME, ...args);
  expect({ status, out }).toEqual({ status: 2, out: [] });
  expect(err).toContain(said);
  expect(file(NAME).toString()).toBe(EXAMPLE_PLAN);
});

it('says why there is nothing to draw', async () => {
  const wide = changed(EXAMPLE_PLAN, { 'shots/skin/field': '1 mm' });
  const { status, out, err } = await run(wide, NAME, '--shot', 'skin');
  expect({ status, out }).toEqual({ status: 2, out: [] });
  expect(err).toBe("lamella: skin can't be drawn: the rig can't frame the field of the shot\n");
});

it('names what is missing instead of making it up', async () => {
  const { err } = await run(EXAMPLE_PLAN, NAME, '--shot', 'skin', '-o', 'f.png', '--width', '32');
  expect(err).toContain('The film has no colours here: needs `thickness` of soap.');
  expect(err).toContain('The background is drawn black: needs `background-luminance` of soap.');
});
