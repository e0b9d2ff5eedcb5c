/** Another editor, set up as its page says: it is told what the command line says. */
import { execFileSync } from 'node:child_process';
import { chmodSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { planTemplate } from '../../shared/assist/template.ts';
import { check } from './command-line.ts';
import { Folder } from './host.ts';
import { LANGUAGE_SERVER, ROOT } from './paths.ts';

interface Position {
  readonly line: number;
  readonly character: number;
}

interface Diagnostic {
  readonly range: { readonly start: Position; readonly end: Position };
  readonly severity: 1 | 2 | 3 | 4;
  readonly code: string;
  readonly message: string;
}

const SEVERITIES = ['error', 'warning', 'note', 'hint'];

/** What the page of editors says to write for this editor. */
const LINES = /```lua\n([\s\S]*?)```/.exec(
  readFileSync(path.join(ROOT, 'server/EDITORS.md'), 'utf8'),
)![1]!;

/** What the server publishes to Neovim, said as the command line says it. */
const publishedTo = (folder: Folder, file: string) => {
  const script = path.join(ROOT, 'tests/editor/neovim.lua');
  const lines = path.join(folder.path, 'init.lua');
  writeFileSync(lines, LINES);
  const program = path.join(folder.path, 'lamella-language-server');
  writeFileSync(program, `#!/bin/sh\nexec "${process.execPath}" "${LANGUAGE_SERVER}" "$@"\n`);
  chmodSync(program, 0o755);
  const options = ['--headless', '-u', 'NONE', '-i', 'NONE', '-n'];
  const output = execFileSync('nvim', [...options, '-c', `luafile ${script}`], {
    cwd: folder.path,
    encoding: 'utf8',
    env: {
      ...process.env,
      PATH: `${folder.path}${path.delimiter}${process.env.PATH}`,
      LAMELLA_LINES: lines,
      LAMELLA_FILE: file,
      ...Object.fromEntries(
        ['CONFIG', 'DATA', 'STATE', 'CACHE'].map((kind) => [`XDG_${kind}_HOME`, folder.path]),
      ),
    },
  });
  const place = ({ line, character }: Position) => ({ line: line + 1, column: character + 1 });
  return (JSON.parse(output) as Diagnostic[]).map(({ range, severity, code, message }) => ({
    rule: code,
    severity: SEVERITIES[severity - 1],
    message,
    range: { start: place(range.start), end: place(range.end) },
  }));
};

const samples = readdirSync(path.join(ROOT, 'samples'), { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.shootplan.yaml'))
  .map((name) => [name, readFileSync(path.join(ROOT, 'samples', name), 'utf8')] as const);

const WRITTEN = {
  'too-slow.shootplan.yaml': planTemplate().replace('shutter: 1/100 s', 'shutter: 1/20 s'),
  'unclosed.shootplan.yaml': planTemplate().replace('title: New plan', 'title: "New plan'),
  // The column counts UTF-16 units, of which each of these letters takes two.
  'far-letters.shootplan.yaml': planTemplate().replace(
    'deliver: {',
    'deliver: { "𝑎𝑏𝑐": 1, size-of: 3,',
  ),
};

const files = { ...Object.fromEntries(samples), ...WRITTEN };

test.each(Object.keys(files))('Neovim is told of %s what the command line says', (file) => {
  const folder = new Folder(files);
  try {
    const said = check(folder.path, file).map(({ rule, severity, message, range }) => ({
      rule,
      severity,
      message,
      range,
    }));
    if (file in WRITTEN) expect(said).not.toEqual([]);
    expect(publishedTo(folder, file)).toEqual(said);
  } finally {
    folder.remove();
  }
});
