/** `check --fix`: what is written and what is left alone. */
import { spawnSync } from 'node:child_process';
import {
  chmodSync,
  lstatSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  readlinkSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { NotReplaced, replaceFile } from '../../server/files/replace-file.ts';
import { createCore } from '../../shared/core/core.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { changed } from '../support/plans.ts';
import { folderWith, lamella, type Ran } from './support.ts';

const NAME = 'plan.shootplan.yaml';
const BARE = changed(EXAMPLE_PLAN, { 'shots/skin/preflight': null });
/** A decimal comma and missing checks: one is seen as the whole of the other only when it is gone. */
const WRONG = BARE.replace('depth: 1.5 mm', 'depth: 1,5 mm  # by the ruler');

const run = (folder: string, args: readonly string[], input?: string | Uint8Array): Promise<Ran> =>
  lamella(folder, ['check', ...args], {
    createCore,
    ...(input !== undefined && { input }),
  });

const read = (folder: string, name = NAME): string => readFileSync(path.join(folder, name), 'utf8');

describe('check --fix', () => {
  it('writes the fixes, says each, and reports what is left', async () => {
    const folder = folderWith({ [NAME]: WRONG });
    const { status, out, err } = await run(folder, ['--fix', '--fail-on', 'warning']);
    expect(err.split('\n')).toEqual([
      expect.stringMatching(/^plan\.shootplan\.yaml:\d+:\d+: Write 1\.5 mm \(misread-scalar\)$/),
      expect.stringMatching(
        /^plan\.shootplan\.yaml:\d+:1: Add the missing checks of `skin` \(check-missing\)$/,
      ),
      '2 fixes in 1 file.',
      '',
    ]);
    expect(read(folder)).toContain('depth: 1.5 mm  # by the ruler');
    expect(read(folder)).toContain('solution-ready: open');
    expect(out).not.toMatch(/check-missing|misread-scalar/);
    expect(out).toContain('1 file checked: ');
    expect(status).toBe(0);
    expect((await run(folder, ['--fail-on', 'warning'])).out).toBe(out);
  });

  it('exits by what is left', async () => {
    const folder = folderWith({
      [NAME]: changed(WRONG, { 'shots/frost/aperture': 'f/4', 'shots/frost/iso': '320' }),
    });
    expect((await run(folder, ['--fix', '--fail-on', 'warning'])).status).toBe(1);
  });

  it('keeps the report clean for programs', async () => {
    const folder = folderWith({ [NAME]: WRONG });
    const { out } = await run(folder, ['--fix', '--format', 'json']);
    const rules = JSON.parse(out).files[0].findings.map(({ rule }: { rule: string }) => rule);
    expect(rules).not.toContain('check-missing');
  });

  it('leaves a file alone that needs nothing', async () => {
    const folder = folderWith({ [NAME]: EXAMPLE_PLAN, 'b.shootplan.yaml': WRONG });
    const before = statSync(path.join(folder, NAME), { bigint: true });
    const { err } = await run(folder, ['--fix']);
    expect(err).toMatch(/2 fixes in 1 file\.\n$/);
    const after = statSync(path.join(folder, NAME), { bigint: true });
    expect([after.ino, after.mtimeNs, after.ctimeNs]).toEqual([
      before.ino,
      before.mtimeNs,
      before.ctimeNs,
    ]);
    expect((await run(folder, ['--fix'])).err).toBe('Nothing to fix without a choice.\n');
  });

  it('makes no fix that has a side effect, nor one of several', async () => {
    // Stopping down costs light, and there are several ways.
    const short = changed(EXAMPLE_PLAN, {
      'shots/frost/aperture': 'f/4',
      'shots/frost/iso': '320',
    });
    const clips = `${BARE}clips: { skin: [{ file: media/0001.mp4 }] }\n`;
    const folder = folderWith({ [NAME]: short, 'clips.shootplan.yaml': clips });
    await run(folder, ['--fix']);
    expect(read(folder)).toBe(short);
    expect(read(folder, 'clips.shootplan.yaml')).toBe(clips);
  });

  it.each([
    ['line feeds', '\n', ''],
    ['carriage returns and line feeds', '\r\n', ''],
    ['a byte order mark', '\r\n', '\ufeff'],
  ])('keeps %s, comments and layout', async (_, eol, mark) => {
    const text = mark + WRONG.replaceAll('\n', eol);
    const folder = folderWith({ [NAME]: text });
    await run(folder, ['--fix']);
    const fixed = read(folder);
    expect(fixed.startsWith(mark)).toBe(true);
    expect(fixed.slice(mark.length)).not.toContain('\ufeff');
    const lines = fixed.split(eol);
    expect(lines.every((line) => !/[\r\n]/.test(line))).toBe(true);
    const kept = text.split(eol).filter((line) => !line.includes('1,5'));
    expect(kept.filter((line) => !lines.includes(line))).toEqual([]);
    expect(fixed).toContain('1.5 mm  # by the ruler');
  });

  it('keeps the mode, and leaves nothing beside the file', async () => {
    const folder = folderWith({ [NAME]: WRONG });
    chmodSync(path.join(folder, NAME), 0o640);
    await run(folder, ['--fix']);
    expect(statSync(path.join(folder, NAME)).mode & 0o777).toBe(0o640);
    expect(readdirSync(folder)).toEqual([NAME]);
  });

  it('follows a link inside the folder, which stays a link, and none that leads out', async () => {
    const folder = folderWith({ 'in/real.yaml': WRONG, 'out.shootplan.yaml': WRONG });
    symlinkSync('real.yaml', path.join(folder, 'in', NAME));
    symlinkSync('../out.shootplan.yaml', path.join(folder, 'in/out.shootplan.yaml'));
    const { status, err } = await run(folder, ['--fix', '--root', 'in', 'in']);
    expect(status).toBe(2);
    expect(err).toContain('outside');
    expect(read(folder, 'out.shootplan.yaml')).toBe(WRONG);
    expect(lstatSync(path.join(folder, 'in', NAME)).isSymbolicLink()).toBe(true);
    expect(readlinkSync(path.join(folder, 'in', NAME))).toBe('real.yaml');
    expect(read(folder, 'in/real.yaml')).toContain('solution-ready: open');
  });

  it('fixes a file that plans use only where it is named', async () => {
    const shots = WRONG.indexOf('\nshots:');
    const files = {
      'kit/kit.shootplan.yaml': WRONG.slice(0, shots),
      [NAME]: `shootplan: 1\ntitle: x\nuse: [kit/kit.shootplan.yaml]\n${WRONG.slice(shots)}`,
    };
    const folder = folderWith(files);
    const { out } = await run(folder, ['--fix', NAME]);
    expect(read(folder, 'kit/kit.shootplan.yaml')).toBe(files['kit/kit.shootplan.yaml']);
    expect(out).toContain('misread-scalar');
    expect(read(folder)).toContain('solution-ready: open');
    await run(folder, ['--fix', NAME, 'kit']);
    expect(read(folder, 'kit/kit.shootplan.yaml')).toContain('1.5 mm');
  });

  it('leaves a file that is not text as it is', async () => {
    const bytes = Buffer.concat([Buffer.from(WRONG), Buffer.from('# caf\u00e9\n', 'latin1')]);
    const folder = folderWith({ [NAME]: bytes });
    expect((await run(folder, ['--fix'])).status).toBe(1);
    expect(readFileSync(path.join(folder, NAME)).equals(bytes)).toBe(true);
  });

  it.each([
    [['-', '--stdin-name', NAME, '--fix'], "--fix can't write to standard input; add --dry-run"],
    [['--dry-run'], '--dry-run goes with --fix.'],
    [['--fix', '--dry-run', '--format', 'json'], '--dry-run prints a diff'],
    [['--fix=yes'], '--fix takes no value'],
  ])('%j is wrong use', async (args, said) => {
    const folder = folderWith({ [NAME]: WRONG });
    const { status, out, err } = await run(folder, args, WRONG);
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(err).toContain(said);
    expect(read(folder)).toBe(WRONG);
  });
});

describe('check --fix --dry-run', () => {
  it('prints what would be written, and writes nothing', async () => {
    const folder = folderWith({ [NAME]: WRONG, 'b.shootplan.yaml': EXAMPLE_PLAN });
    const { status, out, err } = await run(folder, ['--fix', '--dry-run']);
    expect(status).toBe(0);
    expect(err).toMatch(/\n2 fixes in 1 file; nothing was written\.\n$/);
    expect(out).toMatch(/^--- a\/plan\.shootplan\.yaml\n\+\+\+ b\/plan\.shootplan\.yaml\n@@ /);
    expect(out).toContain(
      '\n-    depth: 1,5 mm  # by the ruler\n+    depth: 1.5 mm  # by the ruler\n',
    );
    expect(out).not.toContain('b.shootplan.yaml\n@@');
    expect(read(folder)).toBe(WRONG);
  });

  it('says nothing on the output where there is nothing to change', async () => {
    const folder = folderWith({ [NAME]: EXAMPLE_PLAN });
    expect((await run(folder, ['--fix', '--dry-run'])).out).toBe('');
  });

  // The reference is git: its `apply` makes of the diff what `--fix` writes.
  it.each([
    ['line feeds', (text: string) => text],
    ['carriage returns and line feeds', (text: string) => text.replaceAll('\n', '\r\n')],
    ['a byte order mark', (text: string) => `\ufeff${text}`],
    ['no break at the end', (text: string) => text.trimEnd()],
  ])('is a diff that git applies, with %s', async (_, written) => {
    const text = written(WRONG);
    const folder = folderWith({ [NAME]: text, 'fixed/plan.shootplan.yaml': text });
    const { out } = await run(folder, ['--fix', '--dry-run', NAME]);
    const { status, stderr } = spawnSync('git', ['apply', '-p1', '-'], {
      cwd: folder,
      input: out,
      encoding: 'utf8',
    });
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
    await run(folder, ['--fix', 'fixed']);
    expect(read(folder)).toBe(read(folder, 'fixed/plan.shootplan.yaml'));
    expect(read(folder)).not.toBe(text);
  });

  it('takes standard input', async () => {
    const folder = folderWith({});
    const { out } = await run(folder, ['-', '--stdin-name', NAME, '--fix', '--dry-run'], WRONG);
    expect(out).toContain('+    depth: 1.5 mm');
    expect(readdirSync(folder)).toEqual([]);
  });

  it('lets nothing in a plan act on the terminal', async () => {
    const text = WRONG.replace('# by the ruler', '# by \u001b[2Jthe\u202e ruler');
    const { out } = await run(folderWith({ [NAME]: text }), ['--fix', '--dry-run']);
    expect(out).toContain('\\u{1b}[2Jthe\\u{202e} ruler');
    for (const active of ['\u001b', '\u202e']) expect(out).not.toContain(active);
  });
});

describe('a file that is replaced', () => {
  const file = (folder: string) => path.join(folder, NAME);

  it('is not, where another program changed it meanwhile', async () => {
    const folder = folderWith({ [NAME]: 'title: theirs\n' });
    const replaced = replaceFile(file(folder), folder, 'title: ours\n', 'title: new\n');
    await expect(replaced).rejects.toThrow(NotReplaced);
    expect(read(folder)).toBe('title: theirs\n');
    expect(readdirSync(folder)).toEqual([NAME]);
  });

  it('is not, where a link has come to lead out of the root', async () => {
    const folder = folderWith({ 'out.yaml': 'a: 1\n' });
    mkdirSync(path.join(folder, 'in'));
    symlinkSync('../out.yaml', path.join(folder, 'in', NAME));
    const root = path.join(folder, 'in');
    await expect(replaceFile(path.join(root, NAME), root, 'a: 1\n', 'a: 2\n')).rejects.toThrow(
      /a link to .*out\.yaml, which is outside/,
    );
    expect(read(folder, 'out.yaml')).toBe('a: 1\n');
  });

  it('is left as it is where nothing can take its place', async () => {
    const folder = folderWith({});
    mkdirSync(file(folder));
    writeFileSync(path.join(file(folder), 'inside'), '');
    await expect(replaceFile(file(folder), folder, 'a', 'b')).rejects.toThrow(/EISDIR/);
    expect(readdirSync(folder)).toEqual([NAME]);
  });
});
