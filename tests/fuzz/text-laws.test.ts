/**
 * What holds of the text layer whatever is typed. Outside references: `yaml` (npm), which reads
 * whole documents, and `vscode-languageserver-textdocument` (npm) for lines and columns.
 */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { isMap, parseDocument } from 'yaml';
import type { Chunk } from '../../shared/text/chunk.ts';
import { ChunkedText, type TextPosition } from '../../shared/text/chunked-text.ts';
import { fromDocument, yamlOptions } from '../../shared/text/from-yaml.ts';
import { parseChunk } from '../../shared/text/parse.ts';
import type { TextProblem } from '../../shared/text/problem.ts';
import { split } from '../../shared/text/split.ts';
import { manyRuns } from '../support/runs.ts';
import { merge } from './text-merge.ts';
import { hostilePlan, plan, shards } from './text-plans.ts';

const unit = fc.double({ min: 0, max: 1, noNaN: true, maxExcluded: true });
const edit = fc.record({
  at: unit,
  drop: fc.oneof(fc.constant(0), fc.integer({ min: 1, max: 5 }), fc.integer({ min: 5, max: 300 })),
  put: fc.oneof(
    fc.constantFrom(...shards),
    fc.constant(''),
    fc.constant('shots:\n  one:\n    a: 1\n  two:\n    b: 2\nkit:\n  tubes:\n    t: {}\n'),
  ),
  toLine: fc.boolean(),
});
const start = fc.oneof(fc.constant(plan), fc.constant(''), hostilePlan);

test('after any edits the chunks are those of the whole text, and as they were once all are taken back', () => {
  fc.assert(
    fc.property(start, fc.array(edit, { minLength: 1, maxLength: 12 }), (before, edits) => {
      const chunked = ChunkedText.from(before);
      let document = TextDocument.create('plan', 'shootplan', 0, before);
      const made: { readonly undo: () => void; readonly old: readonly Chunk[] }[] = [];
      for (const { at, drop, put, toLine } of edits) {
        const text = document.getText();
        const near = Math.floor(at * (text.length + 1));
        const from = document.positionAt(toLine ? text.lastIndexOf('\n', near - 1) + 1 : near);
        const range = { start: from, end: document.positionAt(document.offsetAt(from) + drop) };
        const old = [...chunked.chunks];
        const change = chunked.applyChange(range, put);
        document = TextDocument.update(document, [{ range, text: put }], 1);
        made.push({ undo: change.undo, old: [...old] });
        old.splice(change.at, change.removed.length, ...change.added);
        expect(old.every((chunk, index) => chunk === chunked.chunks[index])).toBe(true);
        expect(chunked.text()).toBe(document.getText());
        expect(chunked.chunks).toEqual(split(document.getText()));
      }
      for (const { undo, old } of made.reverse()) {
        undo();
        expect(chunked.chunks.length).toBe(old.length);
        expect(old.every((chunk, index) => chunk === chunked.chunks[index])).toBe(true);
      }
      // The states came back too: what is cut again agrees.
      chunked.applyChange(
        { start: { line: 3, character: 0 }, end: { line: 3, character: 0 } },
        '\n',
      );
      expect(chunked.chunks).toEqual(split(chunked.text()));
      expect(chunked.length).toBe(chunked.text().length);
    }),
    { numRuns: manyRuns(300) },
  );
}, 3_600_000);

test('places are counted as LSP counts them', () => {
  const position = fc.record({
    line: fc.integer({ min: -1, max: 90 }),
    character: fc.integer({ min: -1, max: 90 }),
  });
  fc.assert(
    fc.property(start, unit, position, (text, at, anywhere) => {
      const chunked = ChunkedText.from(text);
      const document = TextDocument.create('plan', 'shootplan', 0, text);
      expect(chunked.lineCount).toBe(document.lineCount);
      const offset = Math.floor(at * (text.length + 1));
      const { index, offset: within } = chunked.locateOffset(offset);
      expect(chunked.absolute(index, within)).toBe(offset);
      const theirs = document.positionAt(offset);
      // Between CR and LF they step back.
      if (document.offsetAt(theirs) === offset) {
        expect(chunked.positionOf(index, within)).toEqual(theirs);
      }
      const absolute = ({ line, character }: TextPosition) => {
        const found = chunked.locate({ line, character });
        return chunked.absolute(found.index, found.offset);
      };
      expect(absolute(anywhere)).toBe(document.offsetAt(anywhere));
    }),
    { numRuns: manyRuns(300) },
  );
}, 3_600_000);

/** What we call a problem and YAML does not. */
const stricter = ({ rule, code }: TextProblem): boolean =>
  rule !== 'syntax' ||
  [
    'no-key',
    'stray-item',
    'missing-colon',
    'out-of-line',
    'control-character',
    'not-utf-8',
    'lone-return',
    'odd-blank',
    'too-many',
  ].includes(code);

test('a whole document without an error reads to the same tree, one with an error has a problem', () => {
  const seen = { same: 0, stricter: 0, broken: 0 };
  fc.assert(
    fc.property(hostilePlan, (text) => {
      // A lone CR is a break in YAML 1.2.2 (5.4), which `yaml` does not follow.
      const standard = text.replace(/\r(?!\n)/g, '\n');
      const document = parseDocument(standard, yamlOptions);
      const { root, problems } = merge(split(text));
      if (document.errors.length > 0) {
        seen.broken++;
        expect(problems, JSON.stringify(document.errors[0]?.code)).not.toEqual([]);
      } else if (document.contents && !isMap(document.contents)) {
        expect(problems, 'a plan is a mapping').not.toEqual([]);
      } else if (problems.length > 0) {
        seen.stricter++;
        expect(problems.filter((each) => !stricter(each))).toEqual([]);
      } else {
        seen.same++;
        expect(root).toEqual(fromDocument(document, standard).root);
      }
    }),
    { numRuns: manyRuns(500) },
  );
  expect(Math.min(...Object.values(seen))).toBeGreaterThan(10);
}, 3_600_000);

test('a defect inside an entry leaves the others as they are, and points into its own', () => {
  const inLine = shards.filter((shard) => !/[\r\n]/.test(shard));
  const chunks = split(plan);
  const entries = chunks.filter((chunk) => chunk.kind === 'entry' && chunk.breaks > 1);
  fc.assert(
    fc.property(
      fc.constantFrom(...entries),
      unit,
      fc.constantFrom(...inLine),
      (entry, at, shard) => {
        const first = entry.text.indexOf('\n') + 1 + entry.indent + 1;
        const from = first + Math.floor(at * (entry.text.length - 1 - first));
        const lineStart = entry.text.lastIndexOf('\n', from - 1) + 1;
        // At or left of the entry's own column a line is no longer inside it.
        fc.pre(from - lineStart > entry.indent);
        const spoilt = entry.text.slice(0, from) + shard + entry.text.slice(from);
        const before = chunks.map((chunk) => chunk.text);
        before[chunks.indexOf(entry)] = spoilt;
        const after = split(before.join(''));
        for (const chunk of chunks) {
          if (chunk === entry) continue;
          const same = after.find(
            (each) => each.text === chunk.text && `${each.path}` === `${chunk.path}`,
          );
          expect(same && parseChunk(same), chunk.text).toEqual(parseChunk(chunk));
        }
      },
    ),
    { numRuns: manyRuns(500) },
  );
}, 3_600_000);

test('problems point into their chunk, and every fix can be applied', () => {
  fc.assert(
    fc.property(hostilePlan, (text) => {
      for (const chunk of split(text)) {
        for (const { at, fixes, related } of parseChunk(chunk).problems) {
          const edits = fixes.flatMap((each) => each.edits.map((one) => one.span));
          for (const place of [at, ...(related ? [related] : []), ...edits]) {
            expect(place.start).toBeGreaterThanOrEqual(0);
            expect(place.end).toBeGreaterThanOrEqual(place.start);
            expect(place.end).toBeLessThanOrEqual(chunk.text.length);
          }
        }
      }
    }),
    { numRuns: manyRuns(500) },
  );
}, 3_600_000);
