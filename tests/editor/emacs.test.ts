/**
 * Emacs with Eglot, set up as its page says: it is told what the command line says, its first fix does
 * what it says, and it formats as the command line does. It takes Emacs with Eglot (Debian:
 * `apt-get install emacs-nox elpa-eglot`); where that is not found, a test of that name says so.
 */
import { execFileSync, spawnSync } from 'node:child_process';
import { chmodSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { planTemplate } from '../../shared/assist/template.ts';
import { check, type Finding } from './command-line.ts';
import { Folder } from './host.ts';
import { sample } from './opened.ts';
import { CLI, LANGUAGE_SERVER, ROOT } from './paths.ts';

interface Position {
  readonly line: number;
  readonly character: number;
}

interface Told {
  readonly published: readonly {
    readonly range: { readonly start: Position; readonly end: Position };
    readonly severity: 1 | 2 | 3 | 4;
    readonly code: string;
    readonly message: string;
  }[];
  /** Of them the first that has fixes, and their titles. */
  readonly at: number;
  readonly fixes: readonly string[];
  readonly fixed: string | null;
  readonly formatted: string;
}

const SEVERITIES = ['error', 'warning', 'note', 'hint'];

/** What the page of editors says to write for this editor. */
const LINES = /```elisp\n([\s\S]*?)```/.exec(
  readFileSync(path.join(ROOT, 'server/EDITORS.md'), 'utf8'),
)![1]!;

const FILES = {
  'too-slow.shootplan.yaml': planTemplate().replace('shutter: 1/100 s', 'shutter:   1/20 s'),
  'unclosed.shootplan.yaml': planTemplate().replace('title: New plan', 'title: "New plan'),
  // The column counts UTF-16 units, of which each of these letters takes two.
  'far-letters.shootplan.yaml': planTemplate().replace(
    'deliver: {',
    'deliver: { "𝑎𝑏𝑐": 1, size-of: 3,',
  ),
  'first-draft.shootplan.yaml': sample('first-draft.shootplan.yaml'),
};
const NAMES = Object.keys(FILES);

/** Eglot comes with Emacs from 29 on, before that as a package; -q leaves out no package of the system. */
const emacs = (...rest: readonly string[]): readonly string[] => ['--batch', '-q', ...rest];
const REQUIRE = '(progn (require (quote package)) (package-initialize) (require (quote eglot)))';
const isThere = spawnSync('emacs', emacs('--eval', REQUIRE)).status === 0;

function toldIn(folder: Folder): readonly Told[] {
  const lines = path.join(folder.path, 'init.el');
  writeFileSync(lines, LINES);
  const program = path.join(folder.path, 'lamella-language-server');
  writeFileSync(program, `#!/bin/sh\nexec "${process.execPath}" "${LANGUAGE_SERVER}" "$@"\n`);
  chmodSync(program, 0o755);
  const script = path.join(ROOT, 'tests/editor/emacs.el');
  const output = execFileSync('emacs', emacs('-l', script), {
    cwd: folder.path,
    encoding: 'utf8',
    stdio: ['ignore', 'pipe', 'pipe'],
    env: {
      ...process.env,
      HOME: folder.path,
      PATH: `${folder.path}${path.delimiter}${process.env.PATH}`,
      LAMELLA_LINES: lines,
      LAMELLA_FILES: NAMES.join(':'),
    },
  });
  return JSON.parse(output);
}

function formatted(text: string): string {
  const { stdout } = spawnSync(process.execPath, [CLI, 'format', '-'], {
    input: text,
    encoding: 'utf8',
  });
  return stdout;
}

const place = ({ line, character }: Position) => ({ line: line + 1, column: character + 1 });

function comparesWithEmacs(): void {
  const folder = new Folder(FILES);
  try {
    const all = toldIn(folder);
    expect(all).toHaveLength(NAMES.length);
    for (const [index, each] of all.entries()) comparesFile(folder, NAMES[index]!, each);
    expect(all[0]!.formatted).not.toBe(FILES['too-slow.shootplan.yaml']);
  } finally {
    folder.remove();
  }
}

function comparesFile(folder: Folder, file: string, told: Told): void {
  const said = check(folder.path, file);
  const published = told.published.map(({ range, severity, code, message }) => ({
    rule: code,
    severity: SEVERITIES[severity - 1],
    message,
    range: { start: place(range.start), end: place(range.end) },
  }));
  expect(published, file).toEqual(
    said.map(({ rule, severity, message, range }) => ({ rule, severity, message, range })),
  );

  const fixable = said[told.at]!;
  const [offered = ''] = told.fixes;
  // A side effect stands behind the title in brackets.
  const isOne = fixable.fixes!.some(({ title }) => offered.startsWith(title));
  expect(isOne, `${file}: ${offered}`).toBe(true);
  const text = folder.read(file);
  folder.write(file, told.fixed!);
  const same = ({ rule, message }: Finding): boolean =>
    rule === fixable.rule && message === fixable.message;
  expect(check(folder.path, file).filter(same).length, file).toBe(said.filter(same).length - 1);

  expect(told.formatted, file).toBe(formatted(text));
}

/** Brackets that close each other, and the server by its name: what can be seen without Emacs. */
function readsItsLines(): void {
  process.stderr.write('Emacs with Eglot was not found; on Debian: emacs-nox elpa-eglot.\n');
  let depth = 0;
  for (const mark of LINES.replace(/"(?:[^"\\]|\\.)*"/g, '').match(/[()]/g)!) {
    depth += mark === '(' ? 1 : -1;
    expect(depth).toBeGreaterThanOrEqual(0);
  }
  expect(depth).toBe(0);
  expect(LINES).toContain('"lamella-language-server" "--stdio"');
}

if (isThere)
  test('Emacs is told what the command line says, fixes and formats as it does', comparesWithEmacs);
else
  test(
    'Emacs with Eglot is NOT INSTALLED: it was not run, only its lines were read',
    readsItsLines,
  );
