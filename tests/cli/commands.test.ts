import { describe, expect, it } from 'vitest';
import { version } from '../../package.json';
import { BENCH_ASSUMPTIONS } from '../../shared/assumptions/bench-table.ts';
import { ASSUMPTIONS } from '../../shared/assumptions/table.ts';
import type { FiguresReport } from '../../shared/report/json.ts';
import { folderWith, lamella } from './support.ts';

describe('figures', () => {
  const folder = () => folderWith({ 'a.shootplan.yaml': 'shot: drift\nshot: lantern\n' });

  it('gives every shot, or the one that was asked for, as JSON', async () => {
    const args = ['figures', 'a.shootplan.yaml', '--format', 'json'];
    const all: FiguresReport = JSON.parse((await lamella(folder(), args)).out);
    expect(all).toMatchObject({ version: 1, file: 'a.shootplan.yaml' });
    expect(Object.keys(all.shots)).toEqual(['drift', 'lantern']);
    const ran = await lamella(folder(), [...args, '--shot', 'lantern']);
    expect(Object.keys(JSON.parse(ran.out).shots)).toEqual(['lantern']);
    expect(ran.status).toBe(0);
  });

  it('says units, the reader’s lengths, and why a figure is not known', async () => {
    const { out } = await lamella(folder(), [
      ...['figures', 'a.shootplan.yaml', '--shot', 'drift', '--lengths', 'inches'],
    ]);
    expect(out).toBe(`a.shootplan.yaml

drift
  magnification                       1.5x
  depth                               front 0.02 in, needed unknown: needs \`tilt\`
`);
  });

  it('can’t say figures of a file that it does not read', async () => {
    const folder = folderWith({ 'a.shootplan.yaml': Buffer.alloc(4 * 1024 * 1024 + 1, '#') });
    const { status, err } = await lamella(folder, ['figures', 'a.shootplan.yaml']);
    expect(status).toBe(2);
    expect(err).toContain('a.shootplan.yaml: This file was not read');
  });

  it.each([
    [['figures'], 'figures takes one plan, but got 0'],
    [['figures', 'a.shootplan.yaml', 'b.shootplan.yaml'], 'figures takes one plan, but got 2'],
    [['figures', 'gone.shootplan.yaml'], 'gone.shootplan.yaml: no such file or folder.'],
    [['figures', 'a.txt'], 'a.txt: not a plan'],
    [
      ['figures', 'a.shootplan.yaml', '--shot', 'drfit'],
      'has no shot "drfit". Did you mean drift?',
    ],
    [['figures', 'a.shootplan.yaml', '--shot', 'x'], 'Its shots: drift, lantern.'],
  ])('%j', async (args, message) => {
    const { status, err } = await lamella(folder(), args);
    expect(status).toBe(2);
    expect(err).toContain(message);
  });
});

describe('explain', () => {
  it('says when, why and what to do, with examples', async () => {
    const { out, status } = await lamella('/', ['explain', 'told-to']);
    expect(status).toBe(0);
    expect(out).toBe(`told-to  warning

Reported when a line says so.

A test has to decide what is found.

Remove the mark.

Examples that fail
  A mark.
    shots/a/aperture: !error

Examples that pass
  No mark.
    without shots/a/aperture
`);
  });

  it('lists the rules where none is named', async () => {
    const { out, status } = await lamella('/', ['explain']);
    expect(status).toBe(0);
    expect(out.split('\n')[0]).toBe('also-told-to  note  nothing does.');
    expect(out).toContain('told-to       warning  a line says so.');
  });

  it('lists what is assumed of values that a plan leaves out', async () => {
    const { out, status } = await lamella('/', ['explain', 'assumptions']);
    expect(status).toBe(0);
    expect(out).toContain(`
\`loss\` of a lens
  Value: 0.3 stops (0.1 stops to 0.5 stops)
  Light lost in the glass. It cancels where the light was read through the same lens. A
  \`t-stop\` gives it.
  Source: common practice
`);
    for (const { of } of Object.values(ASSUMPTIONS)) expect(out).toContain(of);
    for (const { of } of Object.values(BENCH_ASSUMPTIONS)) expect(out).toContain(of);
    for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(88);
    const { err } = await lamella('/', ['explain', 'asumptions']);
    expect(err).toContain('Did you mean assumptions?');
    expect(await lamella('/', ['explain', 'loss'])).toMatchObject({ status: 2, out: '' });
  });

  it('offers the nearest for a name that is none', async () => {
    const { err, status } = await lamella('/', ['explain', 'tol-to']);
    expect(status).toBe(2);
    expect(err).toContain('There is no rule "tol-to". Did you mean told-to?');
  });
});

describe('lamella itself', () => {
  it('says its version', async () => {
    expect(await lamella('/', ['--version'])).toEqual({ status: 0, out: `${version}\n`, err: '' });
  });

  it('helps: 0 where help was asked for, 2 where nothing was', async () => {
    const asked = await lamella('/', ['--help']);
    expect(asked).toMatchObject({ status: 0, err: '' });
    for (const command of ['check', 'figures', 'explain'])
      expect(asked.out).toContain(`lamella ${command}`);
    const bare = await lamella('/', []);
    expect(bare).toMatchObject({ status: 2, out: '', err: asked.out });
  });

  it.each(['check', 'figures', 'explain'])('helps with %s', async (command) => {
    const { status, out } = await lamella('/', [command, '--help']);
    expect(status).toBe(0);
    expect(out).toContain(`lamella ${command}`);
    expect(out).toContain('Exit status');
  });

  it('offers the nearest command', async () => {
    const { status, err } = await lamella('/', ['chekc']);
    expect(status).toBe(2);
    expect(err).toContain('There is no command "chekc". Did you mean check?');
  });
});
