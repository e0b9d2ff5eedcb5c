/** The meaning of a chunk's text, and its errors; calculated once per chunk. */
import {
  countMarks,
  MAX_DEPTH,
  MAX_ENTRY_LENGTH,
  MAX_MARKS,
  tooDeepAt,
} from '../syntax/budgets.ts';
import { LineTable } from '../syntax/lines.ts';
import { blockMap, moveNode, pair, scalar, span } from '../syntax/nodes.ts';
import { parse as parseSyntax } from '../syntax/parser.ts';
import type { MapNode, Span } from '../syntax/tree.ts';
import { checkCharacters, readLoneReturns } from './characters.ts';
import type { Chunk, ParsedChunk } from './chunk.ts';
import { tellForeign } from './foreign.ts';
import { readYaml } from './from-yaml.ts';
import { tellLoose, tellOutOfLine } from './line-defects.ts';
import { readMergeMarks } from './merge-marks.ts';
import { checkMap } from './misread.ts';
import { hasOddKey, readOddBlanks } from './odd-blanks.ts';
import { moveProblem, Problems } from './problems.ts';
import { Recovery } from './recovery.ts';
import type { Oddity, SplitChunk } from './split-state.ts';
import { readTabs } from './tabs.ts';

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
  const tree = readText(text, chunk.indent, oddity === 'missing-colon', problems);
  if (tree || oddity !== 'missing-colon' || chunk.kind === 'entry') return tree;
  const name = chunk.path.at(-1) as string;
  const end = text.indexOf(name) + name.length;
  return blockMap([pair(scalar(name, 'plain', end - name.length, end), null, end)]);
}

/** `isWord`: its name lacks the colon; the lines below it are read all the same. */
function readText(
  text: string,
  indent: number,
  isWord: boolean,
  problems: Problems,
): MapNode | null {
  const check = (map: MapNode | null) => map && checkMap(map, text, problems);
  const syntax = parseSyntax(text);
  const common = syntax?.defects.length === 0 && syntax.root.pairs.length === 1 && syntax.root;
  if (common && !hasOddKey(common)) return check(common);
  const deep = tooDeepAt(text);
  if (!syntax || deep >= 0) {
    const at = Math.max(0, deep);
    problems.tooMuch('too-deep', span(at, at + 1), { limit: String(MAX_DEPTH) });
    return null;
  }
  const recover = (at: number | null) => check(new Recovery(text, syntax, problems).entry(at));
  if (isWord) return recover(null);
  const yaml = countMarks(text) > MAX_MARKS ? null : readYaml(text);
  const root = yaml?.root;
  const entry = root?.kind === 'map' && !root.flow && root.pairs.length === 1 ? root : null;
  const isSound = yaml && !yaml.error && (entry !== null || yaml.foreign.length > 0);
  const spaced =
    (isSound && !hasOddKey(entry) ? null : readOddBlanks(text, problems)) ??
    (isSound || !yaml ? null : readTabs(text, indent, problems));
  if (spaced) {
    const found = new Problems();
    const tree = readText(spaced.text, indent, false, found);
    for (const each of found.all()) problems.add(moveProblem(each, spaced.back));
    return tree && moveNode(tree, spaced.back);
  }
  if (!isSound) return recover(yaml ? (yaml.error?.at ?? 0) : null);
  tellForeign(yaml.foreign, text, 0, problems);
  return check(entry);
}

/** The first line's text, to point at a chunk that is not read. */
function firstLine(text: string): Span {
  const line = text.slice(0, 200).split(/[\r\n]/, 1)[0] ?? '';
  return span(line.search(/[^ ]|$/), Math.max(1, line.length));
}
