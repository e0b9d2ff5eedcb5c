/**
 * What an edit makes the core do, counted: how often each computation ran. Counts are the same on
 * every machine, so that a dependency too many is seen here and not in a benchmark.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ChunkedText } from '../../shared/text/chunked-text.ts';
import { Analysis } from '../../shared/workspace/analysis.ts';
import { Store } from '../../shared/workspace/store.ts';
import { lineOf, planOf } from '../bench/plan-of.ts';
import { positionAt } from '../laws/canonical.ts';
import { PLAN, ROOT } from '../support/plans.ts';

const SHOTS = 200;
const text = planOf(SHOTS);

/** Counts of one edit of a line, from a plan that has been read whole. */
function countsOf(line: number, change: (text: string) => string) {
  const store = new Store();
  const analysis = new Analysis(store, { rootOf: () => ROOT });
  store.give(PLAN, text);
  analysis.findings(PLAN);
  analysis.readiness(PLAN);
  store.graph.computed.clear();
  const old = text.split('\n')[line]!;
  store.edit(
    PLAN,
    { start: { line, character: 0 }, end: { line, character: old.length } },
    change(old),
  );
  analysis.findings(PLAN);
  analysis.readiness(PLAN);
  const count = (name: string) => store.graph.computed.get(name) ?? 0;
  return {
    parse: count('parse'),
    lower: count('lower'),
    bench: count('bench'),
    figures: count('figures'),
    shots: count('shot'),
    plan: count('plan-findings'),
  };
}

const shotLine = (key: string) => lineOf(text, 77, key);
const kitLine = (needle: string) => text.split('\n').findIndex((line) => line.includes(needle));

/** The plan with a cut for every second shot. */
const withCuts = `${text}
edit:
  cuts:
${Array.from({ length: SHOTS / 2 }, (_, index) => `    cut-${index}: { shot: shot-${2 * index}, duration: 4 s }\n`).join('')}`;

/** How often the edit was worked out anew after a change of one line. */
function editsWorkedOut(line: number, change: (text: string) => string): number {
  const store = new Store();
  const analysis = new Analysis(store, { rootOf: () => ROOT });
  store.give(PLAN, withCuts);
  analysis.findings(PLAN);
  store.graph.computed.clear();
  const old = withCuts.split('\n')[line]!;
  store.edit(
    PLAN,
    { start: { line, character: 0 }, end: { line, character: old.length } },
    change(old),
  );
  analysis.findings(PLAN);
  return store.graph.computed.get('edit') ?? 0;
}

describe('the edit of the film is worked out again', () => {
  const inCut = (key: string) => lineOf(withCuts, 76, key);

  it('where a cut or what it reads of its shot changes', () => {
    const cut = withCuts.split('\n').findIndex((line) => line.includes('cut-38:'));
    expect(editsWorkedOut(cut, (line) => line.replace('4 s', '5 s'))).toBe(1);
    expect(editsWorkedOut(inCut('take'), (line) => line.replace('20 s', '30 s'))).toBe(1);
  });

  it('and not where anything else of a shot does, nor in a shot that no cut shows', () => {
    expect(editsWorkedOut(inCut('iso'), (line) => line.replace('500', '640'))).toBe(0);
    expect(editsWorkedOut(inCut('aperture'), (line) => line.replace('f/8', 'f/11'))).toBe(0);
    const unused = lineOf(withCuts, 77, 'take');
    expect(editsWorkedOut(unused, (line) => line.replace('20 s', '30 s'))).toBe(0);
  });

  it('nor for a line more above it', () => {
    const mains = withCuts.split('\n').findIndex((line) => line.startsWith('mains:'));
    expect(editsWorkedOut(mains, (line) => `${line}\n`)).toBe(0);
  });
});

describe('an edit makes the core work only on what depends on it', () => {
  it('a value in a shot: one entry, one shot', () => {
    const counts = countsOf(shotLine('iso'), (line) => line.replace('500', '640'));
    expect(counts).toEqual({ parse: 1, lower: 1, bench: 1, figures: 1, shots: 1, plan: 0 });
  });

  it('what rules about the whole plan read of a shot: these once, and no other shot', () => {
    const counts = countsOf(shotLine('white-balance'), (line) => line.replace('5600', '3200'));
    expect(counts).toEqual({ parse: 1, lower: 1, bench: 1, figures: 1, shots: 1, plan: 1 });
  });

  it('a comment: one entry is read and nothing follows', () => {
    const counts = countsOf(shotLine('iso'), (line) => `${line} # as metered`);
    expect(counts).toEqual({ parse: 1, lower: 1, bench: 0, figures: 0, shots: 0, plan: 0 });
  });

  it('a blank line above everything: nothing at all but the chunk it stands in', () => {
    const counts = countsOf(kitLine('mains:'), (line) => `${line}\n`);
    expect(counts).toMatchObject({ bench: 0, figures: 0, shots: 0 });
    expect(counts.parse).toBeLessThanOrEqual(2);
  });

  it('a lens: the shots that use it and no others', () => {
    const used = countsOf(kitLine('aperture: f/1.8 to 22'), (line) => line.replace('22', '16'));
    expect(used).toMatchObject({ parse: 1, lower: 1, figures: SHOTS });
    const unused = countsOf(kitLine('aperture: f/4 to 32'), (line) => line.replace('32', '22'));
    expect(unused).toMatchObject({ parse: 1, lower: 1, figures: 0 });
  });

  it('a light that no shot names: no shot', () => {
    const counts = countsOf(kitLine('colour-temperature: 3200 K'), (line) =>
      line.replace('3200', '3000'),
    );
    expect(counts).toMatchObject({ parse: 1, lower: 1, figures: 0, shots: 0 });
  });

  it('a new shot: that shot', () => {
    const counts = countsOf(
      lineOf(text, 77, 'take'),
      (line) => `${line}\n  extra:\n    subject: frost-plate\n    rig: plain\n    field: 420 mm`,
    );
    expect(counts).toMatchObject({ figures: 1, shots: 1 });
    expect(counts.lower).toBeLessThanOrEqual(3);
  });

  it('reads the list of all entries a fixed number of times, however many shots there are', () => {
    const readers = (shots: number, list: string) => {
      const store = new Store();
      const analysis = new Analysis(store, { rootOf: () => ROOT });
      store.give(PLAN, planOf(shots));
      analysis.findings(PLAN);
      analysis.readiness(PLAN);
      return store.graph.readers(list);
    };
    // One reader for each group that is gathered; a reader for each shot would be work squared.
    for (const list of ['ids', 'entries', 'entry-ids']) {
      const [few, many] = [readers(100, list), readers(200, list)];
      expect(few, list).toBeGreaterThan(0);
      expect(many - few, list).toBeLessThan(20);
    }
  });

  it('re-reads a text whole in under 2 % of edits', () => {
    let edits = 0;
    let whole = 0;
    fc.assert(
      fc.property(
        fc.array(
          fc.tuple(fc.nat(), fc.constantFrom('5', ' ', '\n', 'f/16', ': ', '"', '# x', '- ', '[')),
          {
            minLength: 20,
            maxLength: 20,
          },
        ),
        (list) => {
          const document = ChunkedText.from(text);
          for (const [seed, written] of list) {
            const position = positionAt(text, seed % text.length);
            const { added } = document.applyChange({ start: position, end: position }, written);
            edits++;
            if (added.length > document.chunks.length / 2) whole++;
          }
        },
      ),
      { numRuns: 50 },
    );
    expect(edits).toBe(1000);
    expect(whole / edits).toBeLessThan(0.02);
  });
});
