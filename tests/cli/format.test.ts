/** `lamella format`: what is written, what is only told, and the exit status. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { createCore } from '../../shared/core/core.ts';
import { folderWith, lamella } from './support.ts';

const ROUGH = 'shots:\n    a:\n        iso:   100\n';
const TIDY = 'shots:\n  a:\n    iso: 100\n';
const [A, B] = ['a.shootplan.yaml', 'b.shootplan.yaml'];
const read = (folder: string, name: string): string =>
  readFileSync(path.join(folder, name), 'utf8');

describe('format', () => {
  it('writes the plans that change and names them', async () => {
    const folder = folderWith({ [A]: ROUGH, [B]: TIDY });
    expect(await lamella(folder, ['format', '.'], { createCore })).toEqual({
      status: 0,
      out: `${A}\n`,
      err: '1 plan is formatted.\n',
    });
    expect([read(folder, A), read(folder, B)]).toEqual([TIDY, TIDY]);
    expect((await lamella(folder, ['format', A, '--check'], { createCore })).status).toBe(0);
  });

  it('writes nothing with --check, and exits by what it would change', async () => {
    const folder = folderWith({ [A]: ROUGH, [B]: TIDY });
    expect(await lamella(folder, ['format', '--check'], { createCore })).toEqual({
      status: 1,
      out: `${A}\n`,
      err: '1 plan would change.\n',
    });
    expect(read(folder, A)).toBe(ROUGH);
  });

  it('keeps aligned columns when told to', async () => {
    const folder = folderWith({ [A]: TIDY.replace('iso: 1', 'iso:   1') });
    const args = ['format', '--check', '--align'];
    expect((await lamella(folder, [...args, 'keep'], { createCore })).status).toBe(0);
    expect((await lamella(folder, [...args, 'tidy'], { createCore })).status).toBe(1);
  });

  it('prints standard input', async () => {
    const folder = folderWith({});
    const ran = (args: string[], input: string | Uint8Array) =>
      lamella(folder, ['format', '-', ...args], { createCore, input });
    expect(await ran([], ROUGH)).toEqual({ status: 0, out: TIDY, err: '' });
    expect((await ran(['--check'], ROUGH)).status).toBe(1);
    expect((await ran([], Uint8Array.of(0xff, 0xfe, 0xff))).status).toBe(2);
  });

  it('says what it could not format', async () => {
    const folder = folderWith({ [A]: Uint8Array.of(0x61, 0xff), [B]: ROUGH });
    const { status, err } = await lamella(folder, ['format', A, B, 'none'], { createCore });
    expect(status).toBe(2);
    expect(err).toContain(`${A} can't be read as text`);
    expect(err).toContain('none');
    expect(read(folder, B)).toBe(TIDY);
  });
});
