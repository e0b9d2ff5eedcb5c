/**
 * `npm run mutants [FOLDER…] [--seed N] [--count N]`: draws single wrong lines in folders of `shared/`
 * and tells which of them no test notices.
 */
import { fork } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { parseArgs } from 'node:util';
import { ROOT } from '../tidy/support/project.ts';
import { equivalents, isEquivalent } from './equivalents.ts';
import type { Mutation } from './mutations.ts';
import { FOLDERS, mutationsIn, sayMutation } from './pick.ts';
import { forgetUnchanged, RUN, type Told, tryMutants } from './trials.ts';

/** A mutant that takes longer goes on for ever. */
const MOST_MS = 120_000;
const DRAWN = path.join(RUN, 'drawn.json');

if (process.send === undefined) await askedFor();
else await asChild(Number(process.argv[2]));

async function asChild(from: number): Promise<void> {
  // Whoever started it is gone: so is this group, with vitest's worker in it.
  process.on('disconnect', () => process.kill(-process.pid, 'SIGKILL'));
  const mutations = JSON.parse(readFileSync(DRAWN, 'utf8')) as Mutation[];
  await tryMutants(mutations, from, (told) => process.send?.(told));
  process.exit(0);
}

async function askedFor(): Promise<void> {
  const { values, positionals } = parseArgs({
    allowPositionals: true,
    options: {
      seed: { type: 'string', default: String(Date.now() % 1_000_000) },
      count: { type: 'string', default: '15' },
    },
  });
  const seed = Number(values.seed);
  console.log(`seed ${seed}`);
  mkdirSync(RUN, { recursive: true });
  for (const place of positionals.length > 0 ? positionals : FOLDERS)
    await inPlace(place, seed, Number(values.count));
  rmSync(RUN, { recursive: true });
}

async function inPlace(place: string, seed: number, count: number): Promise<void> {
  const known = equivalents();
  const drawn = mutationsIn(place, seed, count);
  const mutations = drawn.filter((mutation) => !isEquivalent(mutation, known));
  writeFileSync(DRAWN, JSON.stringify(mutations));
  forgetUnchanged();
  let [survived, from] = [0, 0];
  while (from < mutations.length) {
    from = await untilItEnds(from, ({ tried, by, tests }) => {
      const mutation = mutations[tried ?? -1];
      if (mutation === undefined || by !== null) return;
      survived++;
      console.log(`survived: ${sayMutation(mutation)}`);
      console.log(
        tests?.length === 0 ? '    no test reaches it' : `    tried: ${tests?.join(' ')}`,
      );
    });
  }
  const noticed = mutations.length - survived;
  const equivalent = drawn.length - mutations.length;
  console.log(
    `${place}: ${noticed} of ${mutations.length} noticed (${Math.round((100 * noticed) / (mutations.length || 1))}%), ${equivalent} equivalent`,
  );
}

/** Has a child try mutants until all are tried or one loops, which counts as noticed. @returns the next to try */
function untilItEnds(from: number, tell: (told: Told) => void): Promise<number> {
  return new Promise((resolve, reject) => {
    const child = fork(process.argv[1] as string, [String(from)], { detached: true, cwd: ROOT });
    let next = from;
    let watch: NodeJS.Timeout | undefined;
    // The child leads a group of its own, with vitest's worker in it.
    const end = () => process.kill(-(child.pid as number), 'SIGKILL');
    child.on('message', (told: Told) => {
      clearTimeout(watch);
      if (told.trying === undefined) return tell(told);
      watch = setTimeout(end, MOST_MS);
      next = told.trying + 1;
    });
    child.on('exit', (status, signal) => {
      clearTimeout(watch);
      if (status === 0) resolve(Number.POSITIVE_INFINITY);
      else if (signal === 'SIGKILL' && next > from) resolve(next);
      else reject(new Error('the tests could not be run, see above'));
    });
  });
}
