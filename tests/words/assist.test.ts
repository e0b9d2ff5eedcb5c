/** What helps while writing, in another language: hovers, hints, lenses and offers of every sample. */
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect } from 'vitest';
import { LENS_KINDS, type LensKind } from '../../shared/api/beside-text.ts';
import type { Core } from '../../shared/api/facade.ts';
import type { Position } from '../../shared/api/located.ts';
import { createCore } from '../../shared/core/core.ts';
import { laws } from '../support/each.ts';
import { inPseudo, untranslated, withoutBrackets } from '../support/pseudo.ts';

const SAMPLES = fileURLToPath(new URL('../../samples/', import.meta.url));
const ROOT = 'file:///samples';
const samples = readdirSync(SAMPLES).filter((name) => name.endsWith('.shootplan.yaml'));
const textOf = (sample: string): string => readFileSync(`${SAMPLES}${sample}`, 'utf8');
const plans = samples.map(textOf).join('\n');

function make(): Core {
  const core = createCore({ rootOf: () => ROOT });
  for (const sample of samples) core.give(`${ROOT}/${sample}`, textOf(sample));
  return core;
}

/** On every key, and on what stands behind it. */
function spotsIn(text: string): readonly Position[] {
  return text.split('\n').flatMap((line, index) =>
    [...line.matchAll(/(?<=^|[\s{[,])[^\s{}[\],#]/g)].map(({ index: character }) => ({
      line: index,
      character,
    })),
  );
}

const WHOLE = { start: { line: 0, character: 0 }, end: { line: 100_000, character: 0 } };

const without = (kind: LensKind) => new Set(LENS_KINDS.filter((other) => other !== kind));

/** Every text with a name of where it stands. */
const ASKED: Readonly<Record<string, (core: Core, file: string) => readonly string[]>> = {
  // Kind by kind: how much fits beside each other is another matter in each language.
  lenses: (core, file) =>
    core
      .lenses(file)
      .flatMap(({ shot }) =>
        LENS_KINDS.map((kind) => core.lensWords(file, shot, without(kind)) ?? ''),
      ),
  // Labels are as short as their language has them, and so is how many stand on a line.
  hints: (core, file) => {
    const all = core.hints(file, WHOLE);
    const isFirst = (at: number) => all[at - 1]?.position.line !== all[at]!.position.line;
    return all.filter((_, at) => isFirst(at)).map(({ tooltip = '' }) => tooltip);
  },
  hovers: (core, file) =>
    spotsIn(core.text(file) ?? '').map((spot) => core.hover(file, spot)?.markdown ?? ''),
  solved: (core, file) =>
    core.lenses(file).flatMap(({ shot }) => {
      const solved = core.solve(file, shot);
      return solved ? textsIn(solved) : [];
    }),
  // Some places of each plan, since an offer tries out what it offers.
  offers: (core, file) =>
    spotsIn(core.text(file) ?? '')
      .filter((_, index) => index % 12 === 0)
      .flatMap((spot) => core.completions(file, spot).items.map(({ detail }) => detail)),
};

/** What a record says to programs. */
const DATA: ReadonlySet<string> = new Set(['file', 'state', 'kind', 'outcome', 'holds']);

/** All texts in a value for people. */
const textsIn = (value: unknown): readonly string[] =>
  typeof value === 'string'
    ? [value]
    : typeof value === 'object' && value !== null
      ? Object.entries(value).flatMap(([key, inner]) => (DATA.has(key) ? [] : textsIn(inner)))
      : [];

/** One core a language: each keeps what it said in its own. */
const [inEnglish, inBrackets] = [make(), make()];

laws(
  samples,
  (sample) => sample,
  (sample, law) => {
    const file = `${ROOT}/${sample}`;

    law('labels of hints', () => {
      const labels = inPseudo(() => inBrackets.hints(file, WHOLE).map(({ label }) => label));
      expect(labels.filter((label) => untranslated(label, plans).length > 0)).toEqual([]);
    });

    for (const [what, ask] of Object.entries(ASKED))
      law(what, () => {
        const english = ask(inEnglish, file);
        const pseudo = inPseudo(() => ask(inBrackets, file));
        // A sentence that is made of a part has a capital, or the bracket before it.
        const lower = (text: string) => text.toLowerCase();
        expect(pseudo.map(withoutBrackets).map(lower)).toEqual(english.map(lower));
        const left = pseudo.flatMap((text) => {
          const bare = untranslated(text, plans);
          return bare.length > 0 ? [`${text} (${bare.join(', ')})`] : [];
        });
        expect([...new Set(left)]).toEqual([]);
      });
  },
);
