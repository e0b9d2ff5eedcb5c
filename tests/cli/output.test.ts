/** What `-o` writes over, and what it leaves: as a user, on a real disk. */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import {
  chmodSync,
  lstatSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  utimesSync,
} from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { placeFile } from '../../server/files/place-file.ts';
import { createCore } from '../../shared/core/core.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { bundled } from '../protocol/support/bundle.ts';
import { folderWith, lamella } from './support.ts';

const NAME = 'a.shootplan.yaml';
const PLAN = `${EXAMPLE_PLAN}edit:\n  rate: 25 fps\n  cuts:\n    one: { shot: skin, duration: 1 s }\n`;

/** Nothing to trace, which would take long. */
const SHORT = 'shootplan: 1\nshots:\n  skin: { aperture: f/8 }\n';
const writing = bundled('server/commands/write-output.ts');
const besides = bundled('server/files/beside.ts');

const FORMS = [
  ['sheet', 'out.html', []],
  ['sheet', 'out.md', []],
  ['timeline', 'out.otio', []],
  ['timeline', 'out.csv', []],
  ['frame', 'out.png', ['--shot', 'skin', '--width', '16']],
  ['compare', 'out.html', [NAME, '--format', 'html']],
  ['compare', 'out.md', [NAME, '--format', 'md']],
  ['compare', 'out.json', [NAME, '--format', 'json']],
  ['compare', 'out.txt', [NAME]],
] as const;

const write = (
  cwd: string,
  [command, file, more]: readonly [string, string, readonly string[]],
  ...args: string[]
) => lamella(cwd, [command, NAME, ...more, '-o', file, ...args], { createCore });

describe.each(FORMS)('%s -o %s', (...form) => {
  const [command, file] = form;
  const plan = ['sheet', 'compare'].includes(command) ? SHORT : PLAN;

  it('leaves what it did not write, unless it is told', async () => {
    const cwd = folderWith({ [NAME]: plan, [file]: 'shootplan: 1\ntitle: mine\n' });
    const refused = await write(cwd, form);
    expect(refused).toMatchObject({ status: 2, out: '' });
    expect(refused.err).toBe(
      `lamella: ${file} can't be written: it exists and Lamella did not write it; --force replaces it.\n`,
    );
    expect(readFileSync(path.join(cwd, file), 'utf8')).toBe('shootplan: 1\ntitle: mine\n');
    expect(readdirSync(cwd)).toHaveLength(2);

    expect((await write(cwd, form, '--force')).status).toBe(0);
    const made = readFileSync(path.join(cwd, file));
    chmodSync(path.join(cwd, file), 0o640);
    // Its own it knows again, and the file's mode stays.
    expect((await write(cwd, form)).status).toBe(0);
    expect(readFileSync(path.join(cwd, file)).equals(made)).toBe(true);
    expect(statSync(path.join(cwd, file)).mode & 0o777).toBe(0o640);
    expect(readdirSync(cwd)).toHaveLength(2);
  });
});

describe('a file that a command makes', () => {
  it('is known again where it is longer than what is read of its beginning', async () => {
    const sample = (name: string) =>
      readFileSync(new URL(`../../samples/${name}`, import.meta.url), 'utf8');
    const kit = 'workshop-kit.shootplan.yaml';
    const cwd = folderWith({ [NAME]: sample('lantern.shootplan.yaml'), [kit]: sample(kit) });
    const form = ['frame', 'out.png', ['--shot', 'whole-lantern', '--width', '400']] as const;
    for (let times = 0; times < 2; times++) expect((await write(cwd, form)).status).toBe(0);
    expect(statSync(path.join(cwd, 'out.png')).size).toBeGreaterThan(8 * 1024);
  });

  it('is never written through a link, not even when told', async () => {
    const cwd = folderWith({ [NAME]: PLAN });
    const args = ['timeline', NAME, '-o', 'link.csv'];
    expect((await write(cwd, FORMS[3])).status).toBe(0);
    const own = readFileSync(path.join(cwd, 'out.csv'), 'utf8');
    for (const to of ['out.csv', NAME, 'nowhere', 'link.csv']) {
      const link = path.join(cwd, 'link.csv');
      symlinkSync(to, link);
      const refused = await lamella(cwd, args, { createCore });
      expect(refused.status).toBe(2);
      expect(refused.err).toContain('it is a link; --force puts the file in its place');
      expect((await lamella(cwd, [...args, '--force'], { createCore })).status).toBe(0);
      expect(lstatSync(link).isFile()).toBe(true);
      rmSync(link);
    }
    expect(readFileSync(path.join(cwd, NAME), 'utf8')).toBe(PLAN);
    expect(readFileSync(path.join(cwd, 'out.csv'), 'utf8')).toBe(own);
    expect(readdirSync(cwd).sort()).toEqual([NAME, 'out.csv']);
  });

  it('never takes the place of a device', async () => {
    const cwd = folderWith({ [NAME]: PLAN });
    const { status, err } = await lamella(cwd, ['timeline', NAME, '-o', '/dev/null', '--force'], {
      createCore,
    });
    expect(status).toBe(2);
    expect(err).toContain('it is a pipe or a device, not a file');
    expect(lstatSync('/dev/null').isCharacterDevice()).toBe(true);
  });

  it.each([
    ['x'.repeat(300), 'the path is too long'],
    ['a\0b.html', 'the path has a NUL character'],
    ['loop/a.html', 'its links lead in a circle'],
  ])('is refused in plain words: %j', async (file, why) => {
    const cwd = folderWith({ [NAME]: PLAN });
    symlinkSync('loop', path.join(cwd, 'loop'));
    const { status, err } = await lamella(cwd, ['timeline', NAME, '-o', file], { createCore });
    expect(status).toBe(2);
    expect(err).toContain(`can't be written: ${why}.\n`);
    expect(err).not.toContain('\0');
  });

  it('is one of them whole, where many write at once', async () => {
    const cwd = folderWith({});
    const file = path.join(cwd, 'out.csv');
    const head = 'number,cut,shot,start timecode,end timecode,\r\n';
    const all = Array.from({ length: 24 }, (_, run) => head + `${run}\r\n`.repeat(20_000));
    const ends = await Promise.allSettled(
      all.map((text) => placeFile(file, Buffer.from(text), 'csv')),
    );
    expect(ends.filter(({ status }) => status === 'rejected')).toEqual([]);
    expect(all).toContain(readFileSync(file, 'utf8'));
    expect(readdirSync(cwd)).toEqual(['out.csv']);
  });

  it('is new once only, where many make it at once', async () => {
    const file = path.join(folderWith({}), NAME);
    const ends = await Promise.allSettled(
      Array.from({ length: 8 }, (_, run) => placeFile(file, Buffer.from(`${run}`), 'nothing')),
    );
    const made = ends.flatMap(({ status }, run) => (status === 'fulfilled' ? [`${run}`] : []));
    expect(made).toEqual([readFileSync(file, 'utf8')]);
  });

  it('leaves the old one, where the disk takes no more', async () => {
    const old = 'number,cut,shot,start timecode,end timecode,\r\n';
    const cwd = folderWith({ 'out.csv': old });
    const script = `
      const { writeOutput } = require(${JSON.stringify(writing.file)});
      const terminal = { cwd: process.cwd(), err: (text) => process.stderr.write(text) };
      writeOutput(terminal, { output: 'out.csv' }, 'It', 'csv', 'x'.repeat(100_000)).then(
        (status) => { process.exitCode = status; },
      );`;
    // POSIX `ulimit -f`, in blocks of 512 or 1,024 bytes: a write beyond fails as on a full disk.
    const shell = spawn('sh', ['-c', 'ulimit -f 8; exec "$0" -e "$1"', process.execPath, script], {
      cwd,
    });
    let err = '';
    shell.stderr.on('data', (piece) => {
      err += piece;
    });
    const [status] = await once(shell, 'close');
    expect(err).toBe(
      "lamella: out.csv can't be written: the system allows no file of that size.\n",
    );
    expect(status).toBe(2);
    expect(readFileSync(path.join(cwd, 'out.csv'), 'utf8')).toBe(old);
    expect(readdirSync(cwd)).toEqual(['out.csv']);
  });
});

describe('what a write was made in', () => {
  const left = (letter: string) => `.lamella-${letter.repeat(16)}.tmp`;
  const day = 86_400;

  it('goes with the next write where it is old, ours and a file', async () => {
    const folder = folderWith({
      [left('a')]: 'half a sheet',
      [left('b')]: 'of a run that writes just now',
      '.lamella-mine.tmp': 'a name that we never give',
      'kept.tmp': '',
    });
    symlinkSync(path.join(folder, 'kept.tmp'), path.join(folder, left('c')));
    mkdirSync(path.join(folder, left('d')));
    const old = Date.now() / 1000 - day;
    for (const name of [left('a'), '.lamella-mine.tmp', left('d')])
      utimesSync(path.join(folder, name), old, old);
    await placeFile(path.join(folder, 'out.txt'), Buffer.from('x'), 'nothing');
    expect(readdirSync(folder).sort()).toEqual(
      ['.lamella-mine.tmp', left('b'), left('c'), left('d'), 'kept.tmp', 'out.txt'].sort(),
    );
  });

  it('goes where a signal ends the run, and the signal still ends it', async () => {
    const folder = folderWith({});
    const script = `require(${JSON.stringify(besides.file)}).withBeside('out.txt', async (beside) => {
      require('node:fs').writeFileSync(beside, 'half');
      console.log(require('node:fs').readdirSync('.').length);
      await new Promise((resolve) => setTimeout(resolve, 60_000));
    });`;
    const child = spawn(process.execPath, ['-e', script], { cwd: folder });
    const [made] = await once(child.stdout, 'data');
    expect(String(made)).toBe('1\n');
    const ended = once(child, 'exit');
    child.kill('SIGTERM');
    expect(await ended).toEqual([null, 'SIGTERM']);
    expect(readdirSync(folder)).toEqual([]);
  });
});
