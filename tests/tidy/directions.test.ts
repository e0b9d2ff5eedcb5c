/** One way through the house: what a folder of the core may import, and no circles between files. */
import { describe, expect, it } from 'vitest';
import { importsOf, sharedSources, sources } from './support/project.ts';

/**
 * From the ground up: each storey may import those that it names, which all stand before it.
 * `assist/located.ts` is data that reports and the workspace share; the workspace's middle (the
 * analysis and what is asked of it) bears the answers of assist/, which its top hands out.
 */
const STOREYS: Readonly<Record<string, readonly string[]>> = {
  words: [],
  syntax: [],
  text: ['syntax'],
  quantity: ['words'],
  engine: [],
  optics: ['quantity'],
  exposure: ['optics', 'quantity'],
  mirror: ['optics', 'quantity'],
  film: ['optics', 'quantity'],
  load: ['quantity'],
  recording: ['quantity'],
  clips: ['quantity', 'recording'],
  timeline: ['quantity'],
  plan: ['words', 'text', 'quantity'],
  figures: [
    'words',
    'plan',
    'quantity',
    'optics',
    'exposure',
    'mirror',
    'film',
    'load',
    'recording',
    'clips',
    'timeline',
  ],
  rules: [
    'words',
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
    'timeline',
  ],
  settle: ['words', 'rules', 'figures', 'plan', 'quantity', 'optics', 'exposure'],
  located: ['words', 'rules', 'plan', 'text'],
  report: [
    'words',
    'located',
    'rules',
    'figures',
    'plan',
    'quantity',
    'optics',
    'mirror',
    'clips',
    'timeline',
  ],
  workspace: [
    'words',
    'located',
    'rules',
    'figures',
    'plan',
    'text',
    'quantity',
    'engine',
    'optics',
    'clips',
  ],
  assist: [
    'words',
    'workspace',
    'settle',
    'report',
    'located',
    'rules',
    'figures',
    'plan',
    'text',
    'quantity',
    'optics',
    'exposure',
    'mirror',
    'film',
    'timeline',
    'clips',
  ],
  top: [
    'words',
    'assist',
    'report',
    'workspace',
    'located',
    'rules',
    'figures',
    'plan',
    'text',
    'quantity',
    'clips',
  ],
};

/** Files that stand in another storey than their folder. */
const ELSEWHERE: Readonly<Record<string, string>> = {
  'shared/assist/located.ts': 'located',
  'shared/assist/words.ts': 'located',
  'shared/assist/settled.ts': 'located',
  'shared/workspace/core.ts': 'top',
  'shared/workspace/facade.ts': 'top',
};

/**
 * Types alone may be named from above: an edit of a plan is said in the plan's terms, and answers
 * in the shapes that hosts are promised.
 */
const TYPES_FROM_ABOVE: Readonly<Record<string, readonly string[]>> = {
  text: ['plan'],
  assist: ['top'],
  workspace: ['top'],
};

const storeyOf = (file: string): string => ELSEWHERE[file] ?? file.split('/')[1] ?? '';

describe('the storeys', () => {
  it('stand on those before them', () => {
    const names = Object.keys(STOREYS);
    for (const [index, name] of names.entries())
      for (const below of STOREYS[name] ?? [])
        expect(names.slice(0, index), `${name} on ${below}`).toContain(below);
  });

  it('name no file that is not there', () => {
    for (const file of Object.keys(ELSEWHERE)) expect(sharedSources).toContain(file);
  });
});

describe('every file of the core', () => {
  it.each(sharedSources)('%s imports its own storey or one below', (file) => {
    const storey = storeyOf(file);
    const allowed = STOREYS[storey];
    expect(allowed, `${storey} has its place among the storeys`).toBeDefined();
    for (const { file: other, isType } of importsOf(file)) {
      if (other === undefined || storeyOf(other) === storey) continue;
      const above = isType ? (TYPES_FROM_ABOVE[storey] ?? []) : [];
      expect([...(allowed ?? []), ...above], `imports ${other}`).toContain(storeyOf(other));
    }
  });
});

/** Who speaks to whom outside the core: hosts use the core, and the client not even that. */
describe('the hosts', () => {
  const of = (folder: string): readonly string[] =>
    sources.filter((file) => file.startsWith(`${folder}/`) && file.endsWith('.ts'));

  it.each(of('server'))('%s knows no editor', (file) => {
    for (const { written, file: other } of importsOf(file)) {
      expect(written).not.toBe('vscode');
      expect(other ?? 'shared/').toMatch(/^(server\/|shared\/|package\.json$)/);
    }
  });

  it.each(of('client').filter((file) => !file.startsWith('client/build/')))(
    '%s does nothing that the server can do',
    (file) => {
      for (const { file: other, isType } of importsOf(file))
        if (other !== undefined && !isType)
          expect(other).toMatch(/^(client\/|shared\/assist\/new-plan\/kit\.ts$)/);
    },
  );
});

/** Each circle of imports once, as the files on it. Types leave none behind in the program. */
function circles(files: readonly string[]): readonly (readonly string[])[] {
  const next = new Map(
    files.map((file) => [
      file,
      importsOf(file).flatMap(({ file: other, isType }) => (other && !isType ? [other] : [])),
    ]),
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
  expect(circles(sources)).toEqual([]);
});
