/**
 * Runs tests on mutants, in a process of its own that may be ended while a mutant loops. Sources are
 * changed only on their way into the tests: no file is ever written over.
 */
import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { BaseSequencer, createVitest, type TestModule, type Vitest } from 'vitest/node';
import { ROOT } from '../tidy/support/project.ts';
import { type Mutation, mutated } from './mutations.ts';
import { nearestTests } from './reach.ts';

/** Tests that stand nearest to a file; more of them find hardly more and take much longer. */
const MOST_TESTS = 9;
/** All the tests that are tried on one mutant, by how long they take on the unchanged sources. */
const MOST_MS = 20_000;

/** Of this run alone: the process asked for and its children share it. */
export const RUN = path.join(
  ROOT,
  `.cache/mutants/run-${process.send ? process.ppid : process.pid}`,
);
const ENTERED = path.join(RUN, 'entered.jsonl');
const UNCHANGED = path.join(RUN, 'unchanged.json');

/** How each test file did on the unchanged sources. */
interface Unchanged {
  readonly ms: number;
  /** Numbers of functions, see `functionsOf`. */
  readonly entered: readonly number[];
}

interface State {
  /** While the unchanged sources run: what notes which functions are entered. */
  readonly noted: readonly Mutation[];
  readonly mutant: Mutation | undefined;
}

let state: State = { noted: [], mutant: undefined };

/** @param mutations all, of which those before `from` have been tried */
export async function tryMutants(
  mutations: readonly Mutation[],
  from: number,
  tell: (message: Told) => void,
): Promise<void> {
  const vitest = await newVitest();
  const unchanged = await onUnchanged(vitest, mutations);
  for (const [index, mutant] of [...mutations.entries()].slice(from)) {
    tell({ trying: index });
    const tests = testsFor(mutant, functionsOf(mutations), unchanged);
    state = { noted: [], mutant };
    const file = path.join(ROOT, mutant.file);
    readAnew(vitest, file);
    const modules = tests.length === 0 ? [] : await run(vitest, tests);
    readAnew(vitest, file);
    const by = modules.find((module) => !module.ok());
    tell({ tried: index, tests, by: by === undefined ? null : named(by) });
  }
  await vitest.close();
}

export interface Told {
  readonly trying?: number;
  readonly tried?: number;
  readonly tests?: readonly string[];
  readonly by?: string | null;
}

const named = (module: TestModule): string => path.relative(ROOT, module.moduleId);

/** In the order asked for: by itself, vitest begins with the slowest. */
class AsGiven extends BaseSequencer {
  override async sort<T>(files: T[]): Promise<T[]> {
    return files;
  }
}

const newVitest = (): Promise<Vitest> =>
  createVitest(
    'test',
    {
      config: false,
      root: ROOT,
      watch: false,
      include: ['tests/**/*.test.ts'],
      isolate: false,
      maxWorkers: 1,
      bail: 1,
      update: false,
      sequence: { sequencer: AsGiven },
      restoreMocks: true,
      testTimeout: 600_000,
      reporters: [{}],
      env: { LAMELLA_ENTERED: ENTERED },
      setupFiles: ['tests/support/same-seed.ts', 'tests/mutants/reached.ts'],
    },
    {
      logLevel: 'silent',
      plugins: [
        {
          name: 'mutants',
          enforce: 'pre',
          transform: (code: string, id: string) => changed(code, path.relative(ROOT, id)),
        },
      ],
    },
  );

function changed(code: string, file: string): string | null {
  if (state.mutant?.file === file) return mutated(code, state.mutant);
  const noted = state.noted.filter((mutation) => mutation.file === file);
  return noted.length === 0 ? null : withNotes(code, noted);
}

/** Every function that has a mutant tells when it is entered. */
function withNotes(code: string, mutations: readonly Mutation[]): string {
  const functions = functionsOf(state.noted);
  const inserted = new Map<string, readonly [number, string]>();
  for (const { file, body } of mutations) {
    if (body === undefined) continue;
    const note = `globalThis.__entered[${functions.indexOf(keyOf(file, body.start))}] = 1`;
    inserted.set(
      `${body.start} in`,
      body.isBlock ? [body.start + 1, `${note};`] : [body.start, `(${note},`],
    );
    if (!body.isBlock) inserted.set(`${body.start} out`, [body.end, ')']);
  }
  return [...inserted.values()]
    .sort(([a], [b]) => b - a)
    .reduce((text, [at, note]) => text.slice(0, at) + note + text.slice(at), code);
}

/** A worker starts without any module: only the file itself is read anew, not what imports it. */
function readAnew(vitest: Vitest, file: string): void {
  for (const { moduleGraph } of Object.values(vitest.vite.environments))
    for (const module of moduleGraph.getModulesByFile(file) ?? []) module.transformResult = null;
}

const keyOf = (file: string, start: number): string => `${file} ${start}`;

/** The functions that have a mutant, numbered as they come. */
const functionsOf = (mutations: readonly Mutation[]): readonly string[] => [
  ...new Set(mutations.flatMap(({ file, body }) => (body ? [keyOf(file, body.start)] : []))),
];

async function run(vitest: Vitest, tests: readonly string[]): Promise<readonly TestModule[]> {
  const project = vitest.getRootProject();
  // A run tells of everything that vitest knows, also of earlier runs.
  vitest.state.filesMap.clear();
  const { testModules } = await vitest.runTestSpecifications(
    tests.map((test) => project.createSpecification(path.join(ROOT, test))),
  );
  return testModules;
}

/** The first error of the first test that failed, for whoever has to find out. */
function whyOf(module: TestModule): string {
  const failed = [...module.children.allTests('failed')].map(
    (test) => `${test.fullName}: ${test.result().errors?.[0]?.message}`,
  );
  return [named(module), ...module.errors().map(({ message }) => message), ...failed].join('\n  ');
}

/** All tests that are near to any of the mutations, on the sources as they are. */
async function onUnchanged(
  vitest: Vitest,
  mutations: readonly Mutation[],
): Promise<ReadonlyMap<string, Unchanged>> {
  if (existsSync(UNCHANGED))
    return new Map(JSON.parse(readFileSync(UNCHANGED, 'utf8')) as [string, Unchanged][]);
  const tests = new Set(mutations.flatMap(({ file }) => nearestTests(file, MOST_TESTS)));
  state = { noted: mutations, mutant: undefined };
  rmSync(ENTERED, { force: true });
  const { config } = vitest.getRootProject();
  config.bail = 0;
  const modules = await run(vitest, [...tests]);
  config.bail = 1;
  for (const { file } of mutations) readAnew(vitest, path.join(ROOT, file));
  for (const module of modules.filter((one) => !one.ok()))
    console.error(`left out, fails without any mutant: ${whyOf(module)}`);
  const entered = new Map(
    readFileSync(ENTERED, 'utf8')
      .trim()
      .split('\n')
      .map((line) => JSON.parse(line) as { test: string; entered: number[] })
      .map((line) => [path.relative(ROOT, line.test), line.entered]),
  );
  const unchanged = new Map(
    modules
      .filter((module) => module.ok())
      .map((module) => {
        const { duration, collectDuration } = module.diagnostic();
        const test = named(module);
        return [test, { ms: duration + collectDuration, entered: entered.get(test) ?? [] }];
      }),
  );
  writeFileSync(UNCHANGED, JSON.stringify([...unchanged]));
  return unchanged;
}

/** So many of the nearest tests are tried however long they take. */
const ALWAYS = 2;

/** Tests that enter the function of a mutant, the quickest first, as many as the time allows. */
function testsFor(
  mutant: Mutation,
  functions: readonly string[],
  unchanged: ReadonlyMap<string, Unchanged>,
): readonly string[] {
  const { file, body } = mutant;
  const near = nearestTests(file, MOST_TESTS).flatMap((test) => {
    const past = unchanged.get(test);
    const isReached =
      past !== undefined &&
      (body === undefined || past.entered.includes(functions.indexOf(keyOf(file, body.start))));
    return isReached ? [{ test, ms: past.ms }] : [];
  });
  const nearest = near.slice(0, ALWAYS);
  let left = MOST_MS;
  return near
    .toSorted((a, b) => a.ms - b.ms)
    .filter((one) => {
      left -= one.ms;
      return left > 0 || nearest.includes(one);
    })
    .map(({ test }) => test);
}

export const forgetUnchanged = (): void => rmSync(UNCHANGED, { force: true });
