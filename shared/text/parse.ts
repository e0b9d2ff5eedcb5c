/** The meaning of a chunk's text, and its errors; calculated once per chunk. */
import { countMarks, MAX_DEPTH, MAX_ENTRY_LENGTH, MAX_MARKS } from '../syntax/budgets.ts';
import { LineTable } from '../syntax/lines.ts';
import { blockMap, moveNode, pair, scalar, span } from '../syntax/nodes.ts';
import { parse as parseSyntax, readCommon } from '../syntax/parser.ts';
import { checkCharacters, readLoneReturns } from './characters.ts';
import type { Chunk, ParsedChunk } from './chunk.ts';
import { tooDeepAt } from './depth.ts';
import { tellForeign } from './foreign.ts';
import { readYaml } from './from-yaml.ts';
import { tellLoose } from './loose.ts';
import { readMergeMarks } from './merge-marks.ts';
import { checkMap } from './misread.ts';
import { hasOddKey, readOddBlanks } from './odd-blanks.ts';
import { tellOutOfLine } from './out-of-line.ts';
import { moveProblem, Problems } from './problems.ts';
import { Recovery } from './recovery.ts';
import type { Oddity, SplitChunk } from './split-state.ts';
import { readTabs, type Spaced } from './tabs.ts';
import type { MapNode, Span } from './tree.ts';

const parsed = new WeakMap<Chunk, ParsedChunk>();

/** The tree and problems of `chunk`; the same object for the same chunk. */
export function parseChunk(chunk: Chunk): ParsedChunk {
  let known = parsed.get(chunk);
  if (!known) {
    known = parse(chunk);
    parsed.set(chunk, known);
  }
  return known;
}

function parse(chunk: Chunk): ParsedChunk {
  const { bom = false } = chunk as Partial<SplitChunk> & Chunk;
  if (!bom) return parseText(chunk, chunk.text);
  const behindMark = (offset: number) => offset + 1;
  const { tree, problems } = parseText(chunk, chunk.text.slice(1));
  return {
    tree: tree && moveNode(tree, behindMark),
    problems: problems.map((each) => moveProblem(each, behindMark)),
  };
}

function parseText(chunk: Chunk, written: string): ParsedChunk {
  const { meant = chunk.indent, oddity = null } = chunk as Partial<SplitChunk> & Chunk;
  const problems = new Problems();
  if (written.length > MAX_ENTRY_LENGTH) {
    const args = { length: String(written.length), limit: String(MAX_ENTRY_LENGTH) };
    problems.tooMuch('too-long', firstLine(written), args);
    return { tree: null, problems: problems.all() };
  }
  checkCharacters(written, problems);
  const unmerged = readLoneReturns(written, problems);
  const text = chunk.kind === 'entry' ? readMergeMarks(unmerged, problems) : unmerged;
  if (meant !== chunk.indent && chunk.kind !== 'loose') {
    tellOutOfLine(text, new LineTable(text), 0, text.length, chunk.indent, meant, problems);
  }
  const tree = treeOf(chunk, text, oddity, problems);
  return { tree, problems: problems.all() };
}

function treeOf(
  chunk: Chunk,
  text: string,
  oddity: Oddity | null,
  problems: Problems,
): MapNode | null {
  if (chunk.kind === 'loose') {
    tellLoose(text, oddity, problems);
    if (oddity === null) readOddBlanks(text, problems);
    return null;
  }
  if (oddity !== 'missing-colon') {
    const common = readCommon(text);
    if (common?.pairs.length === 1 && !hasOddKey(common)) return checkMap(common, text, problems);
  }
  const deep = tooDeepAt(text, MAX_DEPTH);
  if (deep >= 0) {
    problems.tooMuch('too-deep', span(deep, deep + 1), { limit: String(MAX_DEPTH) });
    return null;
  }
  if (oddity !== 'missing-colon') return readUncommon(text, chunk.indent, problems);
  // A name without its colon: the lines below it are read all the same.
  const tree = recover(text, null, problems);
  if (tree || chunk.kind === 'entry') return tree;
  const name = chunk.path.at(-1) as string;
  const start = text.indexOf(name);
  const end = start + name.length;
  return blockMap([pair(scalar(name, 'plain', start, end), null, end)]);
}

/** `errorAt`: where YAML stumbled; null: unknown. */
function recover(text: string, errorAt: number | null, problems: Problems): MapNode | null {
  const syntax = parseSyntax(text);
  const tree = syntax && new Recovery(text, syntax, problems).entry(errorAt);
  return tree && checkMap(tree, text, problems);
}

function readUncommon(text: string, indent: number, problems: Problems): MapNode | null {
  if (countMarks(text) > MAX_MARKS) {
    const odd = readOddBlanks(text, problems);
    if (odd) return readSpaced(odd, indent, problems);
    return recover(text, null, problems);
  }
  const { root, foreign, error } = readYaml(text);
  const entry = root?.kind === 'map' && !root.flow && root.pairs.length === 1 ? root : null;
  const isSound = !error && (entry !== null || foreign.length > 0);
  const odd = isSound && !hasOddKey(entry) ? null : readOddBlanks(text, problems);
  if (odd) return readSpaced(odd, indent, problems);
  if (isSound) {
    tellForeign(foreign, text, 0, problems);
    return entry && checkMap(entry, text, problems);
  }
  const tabs = readTabs(text, indent, problems);
  if (tabs) return readSpaced(tabs, indent, problems);
  return recover(text, error?.at ?? 0, problems);
}

/** A broken entry that something else than spaces indents, read with spaces in its place. */
function readSpaced({ text, back }: Spaced, indent: number, problems: Problems): MapNode | null {
  const found = new Problems();
  const common = readCommon(text);
  const tree =
    common?.pairs.length === 1 ? checkMap(common, text, found) : readUncommon(text, indent, found);
  for (const each of found.all()) problems.add(moveProblem(each, back));
  return tree && moveNode(tree, back);
}

/** The first line's text, to point at a chunk that is not read. */
function firstLine(text: string): Span {
  const line = text.slice(0, 200).split(/[\r\n]/, 1)[0] ?? '';
  return span(line.search(/[^ ]|$/), Math.max(1, line.length));
}
