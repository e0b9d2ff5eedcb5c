/** The command line as it is shipped, in a process of its own. */
import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { closeSync, openSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { text } from 'node:stream/consumers';
import { describe, expect, it } from 'vitest';
import { planTemplate } from '../../shared/assist/template.ts';
import { bundled } from '../protocol/support/bundle.ts';
import { folderWith } from './support.ts';

const ROOT = path.resolve(import.meta.dirname, '../..');
const SHIPPED = path.join(ROOT, 'dist/lamella.cjs');
const parts = [bundled('server/cli-check.ts'), bundled('server/cli-commands.ts')];

const lamella = (cwd: string, args: readonly string[], env: Record<string, string> = {}) =>
  spawn(process.execPath, [SHIPPED, ...args], {
    cwd,
    env: { PATH: process.env.PATH ?? '', ...env },
  });

async function ran(child: ReturnType<typeof lamella>, input?: string | Uint8Array) {
  child.stdin.on('error', () => undefined);
  child.stdin.end(input);
  const closed = once(child, 'close');
  const [out, err] = await Promise.all([text(child.stdout), text(child.stderr)]);
  const [status] = await closed;
  return { status, out, err };
}

const BROKEN = planTemplate().replace('rig: near', 'rig: neer');

describe('lamella in a process', () => {
  it('exits 0, 1 and 2', async () => {
    const folder = folderWith({
      'clean.shootplan.yaml': planTemplate(),
      'broken.shootplan.yaml': BROKEN,
    });
    const clean = await ran(lamella(folder, ['check', 'clean.shootplan.yaml']));
    expect(clean).toMatchObject({ status: 0, err: '' });
    const broken = await ran(lamella(folder, ['check', 'broken.shootplan.yaml']));
    expect(broken).toMatchObject({ status: 1, err: '' });
    expect(broken.out).toMatch(/broken\.shootplan\.yaml:\d+:10\n/);
    expect(broken.out).toContain('rig: neer');
    expect((await ran(lamella(folder, ['check', 'gone.shootplan.yaml']))).status).toBe(2);
    expect((await ran(lamella(folder, []))).status).toBe(2);
  });

  it('tells it in another language, from the file that LAMELLA_TRANSLATION names', async () => {
    const folder = folderWith({
      'broken.shootplan.yaml': BROKEN,
      'messages.de.json': JSON.stringify({
        'No {0} is called {1}.{2}': 'Ein {0} namens {1} fehlt.{2}',
        'the first one': 'das {0} erste',
      }),
      'messages.fr.json': '{',
    });
    const told = (LAMELLA_TRANSLATION: string) =>
      ran(lamella(folder, ['check', 'broken.shootplan.yaml'], { LAMELLA_TRANSLATION }));
    const german = await told('messages.de.json');
    expect(german.out).toContain('Ein rig namens neer fehlt. Did you mean `near`?');
    expect(german.err).toBe(
      'lamella: The translation of “the first one” has {0}, which the message has not.\n',
    );
    expect(german.status).toBe(1);
    expect((await told('')).out).toContain('No rig is called neer.');
    for (const file of ['messages.fr.json', 'gone.json', '.', os.devNull]) {
      const { status, err } = await told(file);
      expect(status).toBe(2);
      expect(err).toMatch(new RegExp(`^lamella: The translation ${file} can't be read: `));
    }
  });

  it('reads standard input', async () => {
    const args = ['check', '-', '--stdin-name', 'new.shootplan.yaml', '--format', 'json'];
    const { status, out } = await ran(lamella(folderWith({}), args), BROKEN);
    expect(status).toBe(1);
    expect(JSON.parse(out)).toMatchObject({
      version: 1,
      files: [{ file: 'new.shootplan.yaml', findings: [{ rule: 'unknown-name' }] }],
    });
  });

  it.each([
    ['check', '-', '--stdin-name', 'new.shootplan.yaml'],
    ['format', '-'],
  ])('says that a folder is no input: %s', (...given) => {
    const folder = folderWith({});
    const opened = openSync(folder, 'r');
    const args = [SHIPPED, ...given];
    const { status, stdout, stderr } = spawnSync(process.execPath, args, {
      cwd: folder,
      stdio: [opened, 'pipe', 'pipe'],
      encoding: 'utf8',
    });
    closeSync(opened);
    expect(stdout).toBe('');
    expect(stderr).toBe('lamella: Standard input is a folder, not a file.\n');
    expect(status).toBe(2);
  });

  it('stops reading standard input that never ends', async () => {
    const args = ['check', '-', '--stdin-name', 'new.shootplan.yaml'];
    const { status, out } = await ran(lamella(folderWith({}), args), Buffer.alloc(9_000_000, '#'));
    expect(status).toBe(1);
    expect(out).toContain('was not read');
  });

  it('gives figures of a shot', async () => {
    const folder = folderWith({ 'a.shootplan.yaml': planTemplate() });
    const args = ['figures', 'a.shootplan.yaml', '--shot', 'first', '--format', 'json'];
    const { status, out } = await ran(lamella(folder, args));
    expect(status).toBe(0);
    // 36 mm of sensor for the 48 mm of subject that the template asks for.
    expect(JSON.parse(out).shots.first.magnification).toBeCloseTo(36 / 48, 9);
    const told = await ran(lamella(folder, ['figures', 'a.shootplan.yaml']));
    expect(told.out).toMatch(/^ {2}magnification +0\.75x$/m);
  });

  it('explains every rule that it can find', async () => {
    const list = await ran(lamella('/', ['explain']));
    const names = list.out.match(/^[a-z][a-z-]+/gm) ?? [];
    expect(names).toContain('depth-short');
    const depth = await ran(lamella('/', ['explain', 'depth-short']));
    expect(depth.out).toMatch(/^depth-short {2}warning\n/);
  });

  it('colours when it is told to, and not into a pipe', async () => {
    const folder = folderWith({ 'a.shootplan.yaml': BROKEN });
    const piped = await ran(lamella(folder, ['check']));
    const forced = await ran(lamella(folder, ['check'], { FORCE_COLOR: '1' }));
    expect(piped.out).not.toContain('\u001b[');
    expect(forced.out).toContain('\u001b[1;31merror');
  });

  it('exits 2 when its output can’t be written', async () => {
    const folder = folderWith({ 'a.shootplan.yaml': planTemplate() });
    const readOnly = openSync(path.join(folder, 'a.shootplan.yaml'), 'r');
    const child = spawn(process.execPath, [SHIPPED, 'check'], {
      cwd: folder,
      stdio: ['ignore', readOnly, 'pipe'],
    });
    closeSync(readOnly);
    const closed = once(child, 'close');
    const err = await text(child.stderr!);
    expect((await closed)[0]).toBe(2);
    expect(err).toMatch(/^lamella: standard output can't be written/);
  });

  it('ends quietly when its reader goes away', async () => {
    const shots = Array.from({ length: 3000 }, (_, i) => `  s${i}: { rig: none-${i} }\n`).join('');
    const folder = folderWith({ 'a.shootplan.yaml': `shootplan: 1\nshots:\n${shots}` });
    const child = lamella(folder, ['check']);
    const closed = once(child, 'close');
    const err = text(child.stderr);
    child.stdout.once('data', () => child.stdout.destroy());
    await closed;
    expect(await err).toBe('');
  });
});

const findingsIn = async (text: string) => {
  const folder = folderWith({ 'many.shootplan.yaml': text });
  const { out, status } = await ran(lamella(folder, ['check', '--format', 'json']));
  expect(status).toBe(1);
  return JSON.parse(out).files[0].findings as readonly {
    readonly rule: string;
    readonly severity: string;
    readonly message: string;
    readonly fixes?: readonly unknown[];
  }[];
};

it('lists every finding of a file of very many', async () => {
  const names = 25_000;
  const findings = await findingsIn(
    `shootplan: 1\nshots:\n  one:\n    light: [${'nod, '.repeat(names)}]\n`,
  );
  expect(findings.filter(({ rule }) => rule === 'unknown-name')).toHaveLength(names);
});

it('says how far it tried the fixes of a file of very many', async () => {
  const keys = Array.from({ length: 800 }, (_, i) => `      wrong-${i}: ${i} mm\n`).join('');
  const [first, ...others] = await findingsIn(
    `shootplan: 1\nkit:\n  bodies:\n    body-a:\n      sensor: 36 x 24 mm\n${keys}`,
  );
  expect(first).toMatchObject({ rule: 'too-much', severity: 'warning' });
  const tried = Number(/first (\d+) findings only/.exec(first!.message)?.[1]);
  expect(tried).toBeGreaterThan(10);
  expect(others.filter(({ rule }) => rule === 'unknown-key')).toHaveLength(800);
  expect(others.findLastIndex(({ fixes = [] }) => fixes.length > 0)).toBe(tried - 1);
});

it('loads nothing of the language server', () => {
  const packages = new Set(
    parts
      .flatMap(({ inputs }) => inputs)
      .flatMap((input) => /node_modules\/((?:@[^/]+\/)?[^/]+)/.exec(input)?.[1] ?? []),
  );
  expect([...packages]).toContain('yaml');
  expect([...packages].filter((name) => name.startsWith('vscode'))).toEqual([]);
});

it('loads what only other commands need where one is called, and not for a check', () => {
  const [check, others] = parts;
  for (const needed of ['shared/core/core.ts', 'server/commands/sheet.ts']) {
    expect(others!.inputs).toContain(needed);
    expect(check!.inputs).not.toContain(needed);
  }
});

it('reads a plan of common shapes without the YAML library, and any other with it', async () => {
  const folder = folderWith({
    'common.shootplan.yaml': planTemplate(),
    'other.shootplan.yaml': planTemplate().replace('rig: near', 'rig: &a near'),
  });
  const loads = async (name: string) => {
    const args = ['-r', path.join(ROOT, 'tests/cli/loaded.cjs'), SHIPPED, 'check', name];
    const { err } = await ran(spawn(process.execPath, args, { cwd: folder }));
    return err;
  };
  expect(await loads('common.shootplan.yaml')).not.toContain('yaml.cjs');
  expect(await loads('other.shootplan.yaml')).toContain('yaml.cjs');
});
