/** `lamella new` as it is shipped. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { LENSES, SUBJECT_KINDS } from '../../shared/assist/new-plan/kit.ts';
import { lamellaIn } from '../support/command-line.ts';

const SHIPPED = path.resolve(import.meta.dirname, '../../dist/lamella.cjs');
const folder = mkdtempSync(path.join(tmpdir(), 'lamella-new-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const run = (...args: readonly string[]) => {
  const { status, stdout, stderr } = spawnSync(process.execPath, [SHIPPED, ...args], {
    cwd: folder,
    encoding: 'utf8',
  });
  return { status, out: stdout, err: stderr };
};
const written = (name: string) => readFileSync(path.join(folder, name), 'utf8');

describe('new', () => {
  it('writes a plan that checks cleanly, and never over one', () => {
    const name = 'a.shootplan.yaml';
    expect(run('new', '-o', name)).toEqual({
      status: 0,
      out: '',
      err: `The plan was written to ${name}.\n`,
    });
    const first = written(name);
    expect(run('check', '--fail-on', 'note', name).status).toBe(0);
    const again = run('new', '--subject', 'film', '-o', name);
    expect(again.status).toBe(2);
    expect(again.err).toContain('it already exists and was not overwritten');
    expect(written(name)).toBe(first);
  });

  it('takes what is named', () => {
    const name = 'b.shootplan.yaml';
    const [lens, subject] = [LENSES.at(-1)!.name, SUBJECT_KINDS.at(-1)!.name];
    expect(run('new', '--lens', lens, '--subject', subject, '-o', name).status).toBe(0);
    expect(written(name)).toContain(`, ${lens}]`);
    expect(written(name)).toContain(`kind: ${subject}`);
    expect(run('check', '--fail-on', 'note', name).status).toBe(0);
  });

  it('takes what data sheets say, and leaves out what they do not', () => {
    const name = 'sheet.shootplan.yaml';
    const lens = ['--focal-length', '90mm', '--f-range', 'f/2.8-22', '--closest', '0.28 m'];
    const args = [
      ...lens,
      '--magnification',
      '1:1',
      '--sensor',
      'four-thirds',
      '--lux',
      '900 lx at 1 m',
    ];
    expect(run('new', ...args, '-o', name).status).toBe(0);
    const text = written(name);
    expect(text).toContain('aperture: f/2.8 to 22');
    expect(text).toContain('sensor: 17.3 x 13 mm');
    expect(text).toContain('illuminance-distance: 1 m');
    expect(text).not.toMatch(/filter-thread|pixels|emitting-size|flange-distance/);
    expect(run('check', name).status).toBe(0);
  });

  it.each([
    [
      ['--lux', 'bright', '-o', 'c.shootplan.yaml'],
      /--lux can't be "bright"\. Give lux at a distance/,
    ],
    [
      ['--lens', 'macro-100', '--lens-mass', '1 kg', '-o', 'c.shootplan.yaml'],
      /--lens names a piece; it can't be taken from a data sheet too/,
    ],
    [[], /needs -o FILE/],
    [['-o', 'plan.txt'], /ends in \.shootplan\.yaml/],
    [['c.shootplan.yaml'], /give the file after -o/],
    [['--lens', 'macro', '-o', 'c.shootplan.yaml'], /There are macro-100, tele-135, long-200\./],
    [['--subject', 'cloud', '-o', 'c.shootplan.yaml'], /There are solid, film, bubble, surface\./],
    [['-o', 'none/c.shootplan.yaml'], /can't be written: there is no folder none\.$/m],
  ])('%j is wrong use', async (args, said) => {
    const { status, err } = await lamellaIn(folder, ['new', ...args]);
    expect(status).toBe(2);
    expect(err).toMatch(said);
  });
});
