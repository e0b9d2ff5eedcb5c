/**
 * `npm run long`: what takes too long for every commit. Prints a table for tests/bench/PERFORMANCE.md, and ends with
 * status 1 where anything failed; what failed is printed whole, to be kept as a test, and stays in
 * `.cache/long-failures.jsonl`.
 */
import { appendFileSync, mkdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { workDays } from './days.ts';
import { fuzz } from './fuzz.ts';
import { killServer } from './kills.ts';

const ROOT = process.cwd();
const [inputs = '100000', kills = '50', seed = '1848', edits = '1000000'] = process.argv.slice(2);
const KEPT = path.join(ROOT, '.cache/long-failures.jsonl');
/** At once, since a run of hours may be stopped: a line each, and none is ever removed. */
const keep = (failure: object) => {
  mkdirSync(path.dirname(KEPT), { recursive: true });
  appendFileSync(KEPT, `${JSON.stringify({ seed, ...failure })}\n`);
};
const say = (text: string) => process.stdout.write(`${text}\n`);
let failed = 0;

say(`| texts, seed ${seed} | inputs | findings | longest, CPU ms | failures |`);
say('| --- | --- | --- | --- | --- |');
for (const result of fuzz(Number(inputs), ROOT, Number(seed), keep)) {
  const { kind, findings, longestMs, failures } = result;
  const counts = [result.inputs, findings, Math.ceil(longestMs), failures.length];
  say(`| ${kind} | ${counts.map((each) => each.toLocaleString('en')).join(' | ')} |`);
  for (const { why, text } of failures) say(`\n${why}\n${JSON.stringify(text)}\n`);
  failed += failures.length;
}

const plan = readFileSync(path.join(ROOT, 'samples/first-draft.shootplan.yaml'), 'utf8');
const server = path.join(ROOT, 'dist/lamella-language-server.cjs');
const killed = await killServer(Number(kills), server, plan);
say(`\nServer killed in mid-edit ${killed.kills} times: ${killed.failures.length} failures.`);
for (const failure of killed.failures) {
  say(failure);
  keep({ failure });
}
failed += killed.failures.length;

const worked = workDays(Number(edits), ROOT, Number(seed));
say(
  `\n${worked.edits.toLocaleString('en')} edits in ${worked.days} days: ${worked.failures.length} failures.`,
);
for (const { plan, seed, edit, of, aged, fresh, texts } of worked.failures)
  say(
    `\n${plan}, seed ${seed}, edit ${edit}: ${of}\n${aged}\n${fresh}\n${JSON.stringify([...texts])}`,
  );
for (const failure of worked.failures) keep({ ...failure, texts: [...failure.texts] });
failed += worked.failures.length;
process.exitCode = failed > 0 ? 1 : 0;
