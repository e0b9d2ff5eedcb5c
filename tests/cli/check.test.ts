import { mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import type { CheckReport } from '../../shared/report/json.ts';
import { folderWith, lamella } from './support.ts';

const report = (out: string): CheckReport => JSON.parse(out);

describe('exit status of check', () => {
  const folder = () =>
    folderWith({
      'clean.shootplan.yaml': 'title: quiet\n',
      'error.shootplan.yaml': 'a: !error broken\n',
      'warning.shootplan.yaml': 'a: !warning dim\n',
      'note.shootplan.yaml': 'a: !note note\n',
    });

  it.each([
    ['clean', 'note', 0],
    ['note', 'note', 1],
    ['note', 'warning', 0],
    ['warning', 'warning', 1],
    ['warning', 'error', 0],
    ['error', 'error', 1],
  ])('%s under --fail-on %s is %i', async (name, bar, status) => {
    const ran = await lamella(folder(), ['check', `${name}.shootplan.yaml`, '--fail-on', bar]);
    expect(ran).toMatchObject({ status, err: '' });
  });

  it('fails on errors where no bar is given', async () => {
    expect(await lamella(folder(), ['check', 'warning.shootplan.yaml'])).toMatchObject({
      status: 0,
    });
    expect(await lamella(folder(), ['check'])).toMatchObject({ status: 1 });
  });
});

describe('what check reads', () => {
  it('reads every plan below a folder but hidden ones and packages, sorted', async () => {
    const folder = folderWith({
      'b.shootplan.yaml': 'a: 1\n',
      'a/z.shootplan.yaml': 'a: 1\n',
      'a/notes.yaml': 'a: !error not a plan\n',
      'node_modules/x/y.shootplan.yaml': 'a: !error\n',
      '.hidden/y.shootplan.yaml': 'a: !error\n',
    });
    const { out } = await lamella(folder, ['check', '.', 'b.shootplan.yaml', '--format=json']);
    expect(report(out).files.map(({ file }) => file)).toEqual([
      'a/z.shootplan.yaml',
      'b.shootplan.yaml',
    ]);
  });

  it('follows `use`, and reports a used file once however many plans use it', async () => {
    const folder = folderWith({
      'one.shootplan.yaml': 'use: kit/kit.shootplan.yaml\n',
      'two.shootplan.yaml': 'use: kit/kit.shootplan.yaml\n',
      'kit/kit.shootplan.yaml': 'use: more.shootplan.yaml\na: !error in the kit\n',
      'kit/more.shootplan.yaml': 'b: !warning further on\n',
    });
    const args = ['check', 'one.shootplan.yaml', 'two.shootplan.yaml', '--format', 'json'];
    const { out, status } = await lamella(folder, args);
    expect(report(out).files.map(({ file, findings }) => [file, findings.length])).toEqual([
      ['one.shootplan.yaml', 0],
      ['two.shootplan.yaml', 0],
      ['kit/kit.shootplan.yaml', 1],
      ['kit/more.shootplan.yaml', 1],
    ]);
    expect(status).toBe(1);
  });

  it('says of a used file that is not there, is outside the root, or is a link leading out', async () => {
    const folder = folderWith({
      'in/plan.shootplan.yaml': 'use: gone.shootplan.yaml\n',
      'in/up.shootplan.yaml': 'use: ../out.shootplan.yaml\n',
      'in/link.shootplan.yaml': 'use: leads-out.shootplan.yaml\n',
      'out.shootplan.yaml': 'a: !error must not be read\n',
    });
    symlinkSync(
      path.join(folder, 'out.shootplan.yaml'),
      path.join(folder, 'in/leads-out.shootplan.yaml'),
    );
    const said = async (name: string) => {
      const ran = await lamella(folder, [
        'check',
        `in/${name}`,
        '--format',
        'json',
        '--root',
        'in',
      ]);
      return report(ran.out).files.flatMap(({ findings }) => findings.map((each) => each.message));
    };
    expect(await said('plan.shootplan.yaml')).toEqual(['not-found']);
    expect(await said('up.shootplan.yaml')).toEqual([]);
    expect(await said('link.shootplan.yaml')).toEqual(['outside-workspace']);
  });

  it('takes the nearest repository as the root, else the folder of the plan', async () => {
    const files = {
      'plans/plan.shootplan.yaml': 'use: ../kit.shootplan.yaml\n',
      'kit.shootplan.yaml': 'a: !error in the kit\n',
    };
    const args = ['check', 'plans/plan.shootplan.yaml'];
    const loose = folderWith(files);
    expect(await lamella(loose, args)).toMatchObject({ status: 0 });
    const repository = folderWith(files);
    mkdirSync(path.join(repository, '.git'));
    expect(await lamella(repository, args)).toMatchObject({ status: 1 });
  });

  it('keeps a byte order mark for the core', async () => {
    const folder = folderWith({ 'a.shootplan.yaml': '\ufeffa: !error after the mark\n' });
    const { out } = await lamella(folder, ['check', '--format', 'json']);
    expect(report(out).files[0]?.findings[0]?.range.start).toEqual({ line: 1, column: 5 });
  });
});

describe('files that are no text', () => {
  it('names the line of the first byte that is not UTF-8, and still checks the rest', async () => {
    const latin1 = Buffer.from('title: Caf\u00e9\r\nb: caf\u00e9\nc: !error later\n', 'latin1');
    const folder = folderWith({ 'a.shootplan.yaml': latin1 });
    const { out, status } = await lamella(folder, ['check', '--format', 'json']);
    const findings = report(out).files[0]?.findings ?? [];
    expect(findings.map(({ rule, range }) => [rule, range.start])).toEqual([
      ['syntax', { line: 1, column: 11 }],
      ['told-to', { line: 3, column: 4 }],
    ]);
    expect(findings[0]?.message).toContain('Byte 11 of the file');
    expect(status).toBe(1);
  });

  it.each([
    ['a sequence cut off by another character', [0x61, 0x0a, 0xe2, 0x82, 0x28], 3, 2],
    ['a sequence cut off by the end', [0x61, 0x0a, 0x62, 0xf0, 0x9f, 0x98], 4, 2],
    ['half a surrogate pair', [0xed, 0xa0, 0x80], 1, 1],
    ['a slash made too long', [0x61, 0xc0, 0xaf], 2, 1],
  ])('finds %s', async (_what, bytes, byte, line) => {
    const folder = folderWith({ 'a.shootplan.yaml': Uint8Array.from(bytes) });
    const { out } = await lamella(folder, ['check', '--format', 'json']);
    const [finding] = report(out).files[0]?.findings ?? [];
    expect(finding?.message).toContain(`Byte ${byte} of the file`);
    expect(finding?.range.start.line).toBe(line);
  });

  it('says one thing of a UTF-16 file', async () => {
    const text = Buffer.from('\ufeffa: !error x\n', 'utf16le');
    const folder = folderWith({ 'a.shootplan.yaml': text });
    const { out } = await lamella(folder, ['check', '--format', 'json']);
    expect(report(out).files[0]?.findings.map(({ rule }) => rule)).toEqual(['syntax']);
  });

  it('names a file over 4 MB and does not read it', async () => {
    const folder = folderWith({ 'a.shootplan.yaml': Buffer.alloc(4 * 1024 * 1024 + 1, '#') });
    const { out, status } = await lamella(folder, ['check']);
    expect(out).toContain('a.shootplan.yaml:1:1');
    expect(out).toContain('not read: it is over 4.0 MB');
    expect(status).toBe(1);
  });
});

describe('wrong use of check', () => {
  it.each([
    [['check', 'gone.shootplan.yaml'], 'gone.shootplan.yaml: no such file or folder.'],
    [['check', 'notes.txt'], 'notes.txt: not a plan; plans are named *.shootplan.yaml.'],
    [['check', 'empty'], 'empty: no *.shootplan.yaml in this folder or below it.'],
    [['check', '--root', 'gone'], '--root gone: no such folder.'],
    [['check', '--formt', 'json'], 'There is no option --formt. Did you mean --format?'],
    [['check', '--format', 'xml'], '--format takes text, json, sarif or github, not "xml".'],
    [['check', '--format'], '--format needs a value: text, json, sarif or github.'],
    [['check', '--root', '--format', 'json'], '--root needs a value: a folder.'],
    [['check', '--fail-on', 'hint'], '--fail-on takes error, warning or note, not "hint".'],
    [['check', '--lengths', 'inches', '--format', 'json'], 'JSON is always in millimetres'],
    [['check', '-'], '--stdin-name NAME says which file it stands for'],
    [['check', '-', 'a.shootplan.yaml'], 'goes with no other file'],
    [['check', '--stdin-name', 'a.shootplan.yaml'], '--stdin-name goes with "-"'],
    [['check', '-', '--stdin-name', 'a.yaml'], 'a.yaml: not a plan'],
  ])('%j', async (args, message) => {
    const folder = folderWith({ 'notes.txt': '', 'empty/notes.txt': '' });
    const { status, err } = await lamella(folder, args);
    expect(status).toBe(2);
    expect(err).toContain(message);
  });

  it('still reports the files that it could read', async () => {
    const folder = folderWith({ 'a.shootplan.yaml': 'a: !error broken\n' });
    const args = ['check', 'a.shootplan.yaml', 'gone.shootplan.yaml'];
    const { status, out, err } = await lamella(folder, args);
    expect(status).toBe(2);
    expect(out).toContain('broken');
    expect(err).toContain('gone.shootplan.yaml');
  });

  it('refuses a file outside the root, and a link that leads out of it', async () => {
    const folder = folderWith({ 'in/x.txt': '', 'out.shootplan.yaml': 'a: !error secret\n' });
    symlinkSync(path.join(folder, 'out.shootplan.yaml'), path.join(folder, 'in/a.shootplan.yaml'));
    for (const file of ['out.shootplan.yaml', 'in/a.shootplan.yaml']) {
      const { status, out, err } = await lamella(folder, ['check', file, '--root', 'in']);
      expect({ status, out }).toEqual({ status: 2, out: '' });
      expect(err).toContain(`outside ${path.join(folder, 'in')}`);
    }
  });

  it('says that a failure is its own, and never passes it off as a clean file', async () => {
    const folder = folderWith({ 'a.shootplan.yaml': 'a: !throw\n' });
    const { status, err } = await lamella(folder, ['check']);
    expect(status).toBe(2);
    expect(err).toContain('a bug in Lamella');
    expect(err).toContain('told to fail');
  });
});

it('counts in JSON the clear shots that the text counts', async () => {
  const folder = folderWith({
    'a.shootplan.yaml': 'shot: one\nshot: two\n',
    'b.shootplan.yaml': 'a: fine\n',
  });
  const { out } = await lamella(folder, ['check', '--format', 'json']);
  expect(JSON.parse(out).files).toMatchObject([
    { shots: { clear: 0, all: 2 } },
    { shots: { clear: 0, all: 0 } },
  ]);
});

describe('standard input', () => {
  it('stands for the named file, which need not exist', async () => {
    const folder = folderWith({ 'plans/kit.shootplan.yaml': 'a: !error in the kit\n' });
    const { out, status } = await lamella(
      folder,
      ['check', '-', '--stdin-name', 'plans/new.shootplan.yaml', '--format', 'json'],
      { input: 'use: kit.shootplan.yaml\nb: !warning unsaved\n' },
    );
    expect(report(out).files.map(({ file, findings }) => [file, findings[0]?.message])).toEqual([
      ['plans/new.shootplan.yaml', 'unsaved'],
      ['plans/kit.shootplan.yaml', 'in the kit'],
    ]);
    expect(status).toBe(1);
  });

  it('wins over the file of that name', async () => {
    const folder = folderWith({ 'a.shootplan.yaml': 'a: !error saved\n' });
    const args = ['check', '-', '--stdin-name', 'a.shootplan.yaml'];
    expect(await lamella(folder, args, { input: 'a: fine\n' })).toMatchObject({ status: 0 });
  });
});

describe('the JSON of check', () => {
  it('has the shape that is promised', async () => {
    const folder = folderWith({
      'a.shootplan.yaml': 'title: x\nb: "\u{1f41a}" !priced dim, related (fix: 2 s)\n',
    });
    const { out } = await lamella(folder, ['check', '--format', 'json']);
    expect(JSON.parse(out)).toEqual({
      version: 1,
      files: [
        {
          file: 'a.shootplan.yaml',
          shots: { clear: 0, all: 0 },
          findings: [
            {
              rule: 'told-to',
              severity: 'warning',
              message: 'dim, related',
              // From 1; the shell is two UTF-16 units wide.
              range: { start: { line: 2, column: 9 }, end: { line: 2, column: 40 } },
              related: [
                {
                  file: 'a.shootplan.yaml',
                  range: { start: { line: 1, column: 1 }, end: { line: 1, column: 2 } },
                  message: 'the first line',
                },
              ],
              fixes: [{ title: 'Write 2 s', sideEffects: 'costs a stop' }],
            },
          ],
        },
      ],
    });
  });

  it('escapes what a terminal or a reader would act on', async () => {
    const folder = folderWith({ 'a.shootplan.yaml': 'b: !error \u202e\u009b31m\u001b[2J\u2028\n' });
    const { out } = await lamella(folder, ['check', '--format', 'json']);
    // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what must not be there.
    expect(out).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202e\u2028]/);
    expect(report(out).files[0]?.findings[0]?.message).toBe('\u202e\u009b31m\u001b[2J\u2028');
  });
});

it('reads a plan whose path needs escaping', async () => {
  const folder = folderWith({ 'a b/(1) 100%/é#?.shootplan.yaml': 'use: k(2).shootplan.yaml\n' });
  writeFileSync(path.join(folder, 'a b/(1) 100%/k(2).shootplan.yaml'), 'a: !error found\n');
  const { out } = await lamella(folder, ['check', 'a b/(1) 100%/é#?.shootplan.yaml']);
  expect(out).toContain('a b/(1) 100%/k(2).shootplan.yaml:1:4');
});
