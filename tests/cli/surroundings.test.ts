/** What surrounds a run: locales, signals, names on the disk and whose files they are. */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { chmodSync, copyFileSync, readdirSync, readFileSync, symlinkSync } from 'node:fs';
import path from 'node:path';
import { text } from 'node:stream/consumers';
import { expect, it } from 'vitest';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { folderWith, lamella } from './support.ts';

const SHIPPED = path.resolve(import.meta.dirname, '../../dist/lamella.cjs');
const NAME = 'a.shootplan.yaml';

const start = (cwd: string, args: readonly string[], env: Record<string, string> = {}) =>
  spawn(process.execPath, [SHIPPED, ...args], { cwd, env: { ...process.env, ...env } });

it('says the same in every locale and time zone', async () => {
  const cwd = folderWith({ [NAME]: EXAMPLE_PLAN });
  // Turkish has two letters I, German a comma in decimals; POSIX 2017, 8.2.
  const said = await Promise.all(
    [
      { LC_ALL: 'C', LANG: 'C', TZ: 'UTC' },
      { LC_ALL: 'tr_TR.UTF-8', LANG: 'tr_TR.UTF-8', TZ: 'Asia/Kathmandu' },
      { LC_ALL: 'de_DE.UTF-8', LANG: 'de_DE.UTF-8', TZ: 'America/St_Johns' },
    ].map((env) => text(start(cwd, ['figures', NAME], env).stdout)),
  );
  expect(said[0]).toContain('skin');
  expect(new Set(said).size).toBe(1);
});

it('leaves the old file whole when it is stopped, and says by which signal it ended', async () => {
  const old = '<!doctype html>\n<html lang="en"><head><meta name="generator" content="Lamella">';
  const cwd = folderWith({ [NAME]: EXAMPLE_PLAN, 'out.html': old });
  for (const signal of ['SIGTERM', 'SIGHUP', 'SIGINT'] as const) {
    const child = start(cwd, ['check', '-', '--stdin-name', NAME, '--fix', '--dry-run']);
    const sheet = start(cwd, ['sheet', NAME, '-o', 'out.html']);
    await once(sheet, 'spawn');
    sheet.kill(signal);
    child.kill(signal);
    const ends = await Promise.all([once(sheet, 'close'), once(child, 'close')]);
    expect(ends).toEqual([
      [null, signal],
      [null, signal],
    ]);
  }
  expect(readFileSync(path.join(cwd, 'out.html'), 'utf8')).toBe(old);
  expect(readdirSync(cwd).sort()).toEqual([NAME, 'out.html']);
});

it('reads what has odd names and leaves links that lead in a circle', async () => {
  const cwd = folderWith({
    'plans/a\n::error::b.shootplan.yaml': '!error x\n',
    'plans/it\'s "c".shootplan.yaml': '',
    'plans/A.shootplan.yaml': '',
    'plans/a.shootplan.yaml': '',
  });
  symlinkSync('../plans', path.join(cwd, 'plans/circle'));
  symlinkSync('loop.shootplan.yaml', path.join(cwd, 'plans/loop.shootplan.yaml'));
  const { status, out, err } = await lamella(cwd, ['check', 'plans', '--format', 'github']);
  expect(status).toBe(2);
  expect(err).toBe('lamella: plans/loop.shootplan.yaml: a link that leads to itself.\n');
  // One command, though the name has a line that would be one.
  expect(out.match(/^::/gm)).toHaveLength(1);
});

// A superuser may read everything, so the run is another's.
it('names a file that another user keeps to himself', async () => {
  const cwd = folderWith({ [NAME]: EXAMPLE_PLAN });
  chmodSync(cwd, 0o755);
  chmodSync(path.join(cwd, NAME), 0);
  const isRoot = process.getuid?.() === 0;
  // The other user may not be let into the folder of the project.
  for (const part of ['lamella.cjs', 'lamella-check.cjs', 'lamella-check.cjs.compiled', 'yaml.cjs'])
    copyFileSync(path.join(path.dirname(SHIPPED), part), path.join(cwd, part));
  const child = isRoot
    ? spawn(process.execPath, ['lamella.cjs', 'check', NAME], { cwd, uid: 65_534, gid: 65_534 })
    : start(cwd, ['check', NAME]);
  const [err, [status]] = await Promise.all([text(child.stderr), once(child, 'close')]);
  expect([status, err]).toEqual([2, `lamella: ${NAME}: no permission to read it.\n`]);
});
