/**
 * Finds the effect of an edit. The edit is made, the findings are read, and it is taken back, to
 * the very same chunks. Kept results are then valid again, since equal values keep what follows
 * from them.
 */
import type { LocatedEdit } from '../api/located.ts';
import type { FileId } from '../plan/place.ts';
import { ruleNamed } from '../rules/registry.ts';
import type { Finding } from '../rules/rule.ts';
import type { ChunkedText } from '../text/chunked-text.ts';
import type { Wording } from '../text/problem.ts';
import type { CheckContext } from './context.ts';

/**
 * Without what is the same at the beginning and the end of each file's findings, which is nearly
 * everything.
 */
interface Compared {
  /** Findings of the same kind at the same place, before and after. */
  readonly before: ReadonlyMap<string, readonly Finding[]>;
  readonly after: ReadonlyMap<string, readonly Finding[]>;
}

export interface Outcome extends Compared {
  /** What is new, or that there is more of than before. */
  readonly worse: readonly Finding[];
}

/** A finding that is new, or that there is more of than before. */
function addedOrWorsened({ before, after }: Compared): Finding[] {
  return [...after].flatMap(([identity, now]) => {
    const then = before.get(identity) ?? [];
    if (now.length > then.length) return now.slice(then.length);
    return now.flatMap((finding, index) => worsened(finding, then[index]) ?? []);
  });
}

const RANK = { error: 3, warning: 2, note: 1, hint: 0 } as const;
/** A change below this share of the size is rounding. */
const WORSE_BY = 0.01;

/** What is new of a finding that was there before; undefined where nothing is. */
function worsened(now: Finding, then: Finding | undefined): Finding | undefined {
  const beyond = ruleNamed(now.rule)?.beyond;
  if (!beyond || !then) return isWorse(now, then) ? now : undefined;
  const facts = beyond(now.facts, then.facts);
  return facts === null ? undefined : { ...now, facts };
}

function isWorse(now: Finding, then: Finding | undefined): boolean {
  if (!then) return true;
  if (RANK[now.severity] !== RANK[then.severity]) return RANK[now.severity] > RANK[then.severity];
  const rule = ruleNamed(now.rule);
  const sizeNow = rule?.size?.(now.facts)?.value;
  const sizeThen = rule?.size?.(then.facts)?.value;
  if (sizeNow === undefined || sizeThen === undefined) return false;
  // A load below its limit has a size below 0.
  return sizeNow - sizeThen > Math.abs(sizeThen) * WORSE_BY;
}

/** Same rule, same value at fault; for text also the same kind of fault. */
export function identityOf(finding: Finding): string {
  const { file, entry, path } = finding.at;
  const code = (finding.facts as Partial<Wording> | undefined)?.code ?? '';
  return [finding.rule, finding.shot ?? '', file, entry, path.join('.'), code].join(' ');
}

/** The unit of `Trials.effort` is a tenth of this. */
const EFFORT_OF_CHARACTER = 10;

/** What an edit brought when it was tried last, since the plan was as it is. */
interface Tried {
  /** With how sure what it made worse is, where somebody wanted that. */
  outcome?: Outcome;
  isSure?: boolean;
}

/**
 * The same edit is tried once, whoever proposes it: shots that share a rig share its fixes.
 *
 * @param isWanted whether what it made worse is worth telling; left out: always
 */
export function tryOut(
  context: CheckContext,
  edits: readonly LocatedEdit[],
  isWanted: (compared: Compared) => boolean = () => true,
): Outcome {
  const { trials } = context;
  const tried = trials.kept<Tried>(`trial ${JSON.stringify(edits)}`, () => ({}));
  if (tried.outcome && (tried.isSure || !isWanted(tried.outcome))) return tried.outcome;
  const then = trials.kept('findings', () => findingsIn(context));
  return trials.run(() => {
    const undo = applyEdits(context, edits);
    try {
      const compared = outcomeOf(then, findingsIn(context));
      // How sure a finding is costs much: only of those that count it is asked, while they are there.
      const isSure = isWanted(compared);
      const worse = addedOrWorsened(compared);
      const outcome = {
        ...compared,
        worse: isSure ? worse.map((finding) => context.analysis.certain(finding)) : worse,
      };
      Object.assign(tried, { outcome, isSure });
      return outcome;
    } finally {
      undo();
    }
  });
}

type ByFile = ReadonlyMap<FileId, readonly Finding[]>;

const findingsIn = ({ store, analysis }: CheckContext): ByFile =>
  new Map([...store.files()].map((file) => [file, analysis.plainFindings(file)]));

/** Findings that an edit doesn't affect are the same objects as before. */
function outcomeOf(then: ByFile, now: ByFile): Compared {
  const before = new Map<string, Finding[]>();
  const after = new Map<string, Finding[]>();
  for (const file of new Set([...then.keys(), ...now.keys()])) {
    const [was, is] = [then.get(file) ?? [], now.get(file) ?? []];
    const shorter = Math.min(was.length, is.length);
    let head = 0;
    while (head < shorter && was[head] === is[head]) head++;
    let tail = 0;
    while (tail < shorter - head && was.at(-1 - tail) === is.at(-1 - tail)) tail++;
    group(was.slice(head, was.length - tail), before);
    group(is.slice(head, is.length - tail), after);
  }
  return { before, after };
}

function group(findings: readonly Finding[], by: Map<string, Finding[]>): void {
  for (const finding of findings) {
    const identity = identityOf(finding);
    const same = by.get(identity);
    if (same) same.push(finding);
    else by.set(identity, [finding]);
  }
}

/**
 * Makes the edits, last first, and answers with what takes them back. They go by offsets: where one
 * brings a CR and an LF together, the lines behind it are counted anew.
 */
function applyEdits({ store, trials }: CheckContext, edits: readonly LocatedEdit[]): () => void {
  const undone: (() => void)[] = [];
  for (const file of new Set(edits.map((edit) => edit.file))) {
    const document = store.text(file);
    if (!document) continue;
    const own = edits.filter((edit) => edit.file === file);
    for (const { from, to, text, reread } of runsOf(document, own).reverse()) {
      trials.spend(EFFORT_OF_CHARACTER * reread);
      undone.push(store.replace(file, from, to, text));
    }
  }
  return () => {
    for (const undo of undone.reverse()) undo();
  };
}

interface Run {
  readonly from: number;
  readonly to: number;
  readonly text: string;
  /** Characters of what is read anew for it. */
  readonly reread: number;
}

/** Edits of one chunk as one, in the order of the text: a fix may have thousands. */
function runsOf(document: ChunkedText, edits: readonly LocatedEdit[]): Run[] {
  const placed = edits
    .map(({ range, text }) => ({
      start: document.locate(range.start),
      end: document.locate(range.end),
      text,
    }))
    .sort((a, b) => a.start.index - b.start.index || a.start.offset - b.start.offset);
  const runs: Run[] = [];
  for (let next = 0; next < placed.length; ) {
    const { index, offset } = placed[next]!.start;
    const chunk = document.chunks[index]?.text ?? '';
    let [text, kept] = ['', offset];
    let to = document.absolute(index, offset);
    for (let each = placed[next]; each?.start.index === index; each = placed[++next]) {
      text += chunk.slice(kept, each.start.offset) + each.text;
      kept = each.end.index === index ? each.end.offset : chunk.length;
      to = document.absolute(each.end.index, each.end.offset);
    }
    const reread = chunk.length + text.length;
    runs.push({ from: document.absolute(index, offset), to, text, reread });
  }
  return runs;
}
