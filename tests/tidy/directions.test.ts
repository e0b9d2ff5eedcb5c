/** One way through the house: what a folder of the core may import, and no circles between files. */
import { describe, expect, it } from 'vitest';
import { each } from '../support/each.ts';
import { importsOf, sharedSources, sources, tracked } from './support/project.ts';

/** From the ground up: each storey may import those that it names, which all stand before it. */
const STOREYS: Readonly<Record<string, readonly string[]>> = {
  words: [],
  syntax: [],
  text: ['syntax'],
  format: ['syntax', 'text'],
  quantity: ['words'],
  assumptions: ['words', 'quantity'],
  engine: [],
  day: [],
  optics: ['quantity'],
  'lens-fit': ['optics'],
  exposure: ['optics', 'quantity'],
  mirror: ['optics', 'quantity'],
  film: ['optics', 'quantity'],
  load: ['quantity'],
  recording: ['quantity'],
  'looked-at': ['optics'],
  clips: ['quantity', 'recording', 'looked-at'],
  timeline: ['quantity'],
  say: ['words', 'quantity', 'exposure'],
  plan: ['words', 'syntax', 'text', 'quantity'],
  'bring-back': ['words', 'syntax', 'text', 'quantity', 'plan', 'clips'],
  figures: [
    'words',
    'assumptions',
    'say',
    'plan',
    'quantity',
    'optics',
    'lens-fit',
    'exposure',
    'mirror',
    'film',
    'day',
    'load',
    'recording',
    'clips',
    'looked-at',
    'timeline',
  ],
  rules: [
    'words',
    'assumptions',
    'say',
    'figures',
    'plan',
    'text',
    'quantity',
    'optics',
    'exposure',
    'mirror',
    'film',
    'load',
    'recording',
    'clips',
    'looked-at',
    'timeline',
  ],
  frame: ['words', 'say', 'figures', 'plan', 'exposure', 'mirror', 'film'],
  solve: ['words', 'engine', 'rules', 'figures', 'plan', 'quantity', 'optics', 'exposure'],
  measure: ['words', 'figures', 'plan', 'quantity', 'optics', 'lens-fit'],
  api: ['format', 'say', 'rules', 'figures', 'plan', 'text', 'clips', 'looked-at'],
  report: [
    'engine',
    'words',
    'bring-back',
    'assumptions',
    'say',
    'api',
    'rules',
    'figures',
    'day',
    'plan',
    'quantity',
    'optics',
    'mirror',
    'clips',
    'looked-at',
    'timeline',
  ],
  workspace: [
    'words',
    'say',
    'api',
    'rules',
    'figures',
    'plan',
    'text',
    'quantity',
    'engine',
    'clips',
    'looked-at',
  ],
  assist: [
    'engine',
    'format',
    'assumptions',
    'words',
    'say',
    'api',
    'workspace',
    'frame',
    'solve',
    'measure',
    'lens-fit',
    'report',
    'rules',
    'figures',
    'plan',
    'text',
    'quantity',
    'optics',
    'exposure',
    'film',
    'timeline',
    'clips',
    'bring-back',
  ],
  core: ['engine', 'api', 'assist', 'workspace', 'figures', 'plan'],
};

const storeyOf = (file: string): string => file.split('/')[1] ?? '';

describe('the storeys', () => {
  it('stand on those before them', () => {
    const names = Object.keys(STOREYS);
    for (const [index, name] of names.entries())
      for (const below of STOREYS[name] ?? [])
        expect(names.slice(0, index), `${name} on ${below}`).toContain(below);
  });

  it('are the folders of the core', () => {
    expect([...new Set(sharedSources.map(storeyOf))].sort()).toEqual(Object.keys(STOREYS).sort());
  });

  it('import their own or one below, types too', () => {
    const upward = sharedSources.flatMap((file) => {
      const storey = storeyOf(file);
      const allowed = [storey, ...(STOREYS[storey] ?? [])];
      return importsOf(file)
        .filter(({ file: other }) => other !== undefined && !allowed.includes(storeyOf(other)))
        .map(({ written }) => `${file} imports ${written}`);
    });
    expect(upward).toEqual([]);
  });
});

/** Who speaks to whom outside the core: hosts use the core, and the client not even that. */
describe('the hosts', () => {
  const of = (folder: string): readonly string[] =>
    sources.filter((file) => file.startsWith(`${folder}/`) && file.endsWith('.ts'));

  it('the server knows no editor', () => {
    each(of('server'), (file) => {
      for (const { written, file: other } of importsOf(file)) {
        expect(written).not.toBe('vscode');
        expect(other ?? 'shared/').toMatch(/^(server\/|shared\/|package\.json$)/);
      }
    });
  });

  it('the client does nothing that the server can do', () => {
    each(
      of('client').filter((file) => !file.startsWith('client/build/')),
      (file) => {
        for (const { file: other, isType } of importsOf(file))
          if (other !== undefined && !isType)
            expect(other).toMatch(/^(client\/|shared\/assist\/new-plan\/(?:kit|questions)\.ts$)/);
      },
    );
  });
});

/** Each circle of imports once, as the files on it; an import of a type is one too. */
function circles(files: readonly string[]): readonly (readonly string[])[] {
  const next = new Map(
    files.map((file) => [file, importsOf(file).flatMap(({ file: other }) => other ?? [])]),
  );
  const found: string[][] = [];
  const done = new Set<string>();
  const way: string[] = [];
  const visit = (file: string): void => {
    const at = way.indexOf(file);
    if (at >= 0) found.push(way.slice(at));
    if (at >= 0 || done.has(file)) return;
    way.push(file);
    for (const other of next.get(file) ?? []) visit(other);
    way.pop();
    done.add(file);
  };
  for (const file of files) visit(file);
  return found;
}

it('no files import each other in a circle', () => {
  const generated = tracked.filter((file) => /^shared\/.*\/generated\/.*\.ts$/.test(file));
  expect(generated).toContain('shared/plan/generated/names.ts');
  expect(circles([...sources, ...generated])).toEqual([]);
});
