/**
 * Texts that are no plans, by the hundred thousand: bytes, text in the shape of YAML, and samples with
 * something done to them. Nothing may throw or hang, all that is said stands inside the text, and a core
 * that has read all texts before says of each what a new one says.
 */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { decode } from '../../server/files/decode.ts';
import type { Core } from '../../shared/api/facade.ts';
import { shards } from '../fuzz/text-plans.ts';
import { type Random, randomFrom } from '../published/support/random.ts';
import { coreWith, PLAN } from '../support/plans.ts';

export interface FuzzResult {
  readonly kind: string;
  readonly inputs: number;
  readonly findings: number;
  /** Longest that any took of the processor, ms, so that what else the machine does doesn't count. */
  readonly longestMs: number;
  readonly failures: readonly { readonly why: string; readonly text: string }[];
}

/** Longer than this somebody notices. */
const MOST_MS = 1_000;
/** After so many, more of the kind tell nothing new. */
const MOST_FAILURES = 5;

type Make = (random: Random, samples: readonly string[]) => string;

const bytes: Make = (random, samples) => {
  const noise = Uint8Array.from({ length: random.whole(0, 400) }, () => random.whole(0, 255));
  const sample = new TextEncoder().encode(random.pick(samples));
  const at = random.whole(0, sample.length);
  const whole = random.pick([
    noise,
    Buffer.concat([sample.subarray(0, at), noise, sample.subarray(at)]),
  ]);
  const decoded = decode(whole);
  return decoded.ok ? decoded.text : (decoded.lenient ?? '');
};

const yamlShaped: Make = (random) => {
  let text = '';
  for (let count = random.whole(1, 60); count > 0; count--) text += random.pick(shards);
  return text;
};

/** Pieces cut, put in, doubled and exchanged, within a line and across lines. */
const mutated: Make = (random, samples) => {
  let text = random.pick(samples);
  for (let count = random.whole(1, 5); count > 0; count--) {
    const at = random.whole(0, text.length);
    const length = random.pick([0, 1, random.whole(0, 30), random.whole(0, 300)]);
    const piece = random.pick([
      '',
      random.pick(shards),
      text.slice(at, at + length).repeat(2),
      text.slice(random.whole(0, text.length)).slice(0, length),
    ]);
    text = text.slice(0, at) + piece + text.slice(at + length);
  }
  return text;
};

const KINDS: Readonly<Record<string, Make>> = { bytes, 'shaped as YAML': yamlShaped, mutated };

/** @param keep is told of every failure as it is found */
export function fuzz(
  inputs: number,
  root: string,
  seed: number,
  keep: (failure: { readonly kind: string; readonly why: string; readonly text: string }) => void,
): readonly FuzzResult[] {
  const folder = path.join(root, 'samples');
  const samples = readdirSync(folder)
    .filter((name) => name.endsWith('.shootplan.yaml'))
    .map((name) => readFileSync(path.join(folder, name), 'utf8'));
  return Object.entries(KINDS).map(([kind, make], index) => {
    const random = randomFrom(seed + index);
    const count = Math.ceil(inputs / Object.keys(KINDS).length);
    const failures: { why: string; text: string }[] = [];
    let [findings, longestMs] = [0, 0];
    // One for all texts of the kind: what it remembers of them must change no answer.
    const aged = coreWith('');
    for (let run = 0; run < count && failures.length < MOST_FAILURES; run++) {
      const text = make(random, samples);
      const started = process.cpuUsage();
      const fault = faultOf(text, (found) => {
        findings += found;
      });
      const took = cpuMs(started);
      const why = fault ?? agedFault(aged, text);
      longestMs = Math.max(longestMs, took);
      const said = why ?? (took > MOST_MS ? `took ${Math.round(took)} ms` : undefined);
      if (said === undefined) continue;
      failures.push({ why: said, text });
      keep({ kind, why: said, text });
    }
    return { kind, inputs: count, findings, longestMs, failures };
  });
}

function cpuMs(since: NodeJS.CpuUsage): number {
  const { user, system } = process.cpuUsage(since);
  return (user + system) / 1000;
}

/** What is wrong with how a text is dealt with; undefined: nothing. */
function faultOf(text: string, count: (findings: number) => void): string | undefined {
  try {
    const core = coreWith(text);
    const found = core.findings(PLAN);
    count(found.length);
    core.figures(PLAN);
    return misplaced(core, text);
  } catch (error) {
    return error instanceof Error ? (error.stack ?? error.message) : String(error);
  }
}

/** What a core says of a text after many others, against one that has seen no other. */
function agedFault(aged: Core, text: string): string | undefined {
  try {
    const fresh = coreWith(text);
    aged.give(PLAN, text);
    for (const wanted of aged.wanted(PLAN)) aged.refuse(wanted, 'not-found');
    for (const wanted of fresh.wanted(PLAN)) fresh.refuse(wanted, 'not-found');
    const [old, young] = [aged, fresh].map((core) =>
      JSON.stringify([core.findings(PLAN), [...core.figures(PLAN)]]),
    );
    return old === young ? undefined : `an aged core differs: ${old} instead of ${young}`;
  } catch (error) {
    return error instanceof Error ? (error.stack ?? error.message) : String(error);
  }
}

function misplaced(core: Core, text: string): string | undefined {
  const lengths = text.split(/\r\n|\r|\n/).map(({ length }) => length);
  for (const { rule, range, what } of core.findings(PLAN)) {
    if (rule === 'rule-failed') return `a rule failed: ${what}`;
    for (const { line, character } of [range.start, range.end])
      if (!(character <= (lengths[line] ?? -1))) return `${rule} stands outside the text`;
    const { start, end } = range;
    if (start.line > end.line || (start.line === end.line && start.character > end.character))
      return `${rule} ends before it begins`;
  }
  return undefined;
}
