/** What is printed, in another language: sheets, figures, comparisons, the way a shot is solved. */
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect } from 'vitest';
import type { Core } from '../../shared/api/facade.ts';
import { createCore } from '../../shared/core/core.ts';
import { comparePlans } from '../../shared/report/compare/compare.ts';
import { comparisonDocument } from '../../shared/report/compare/document.ts';
import { markdownText } from '../../shared/report/document/markdown.ts';
import { terminalText } from '../../shared/report/document/terminal.ts';
import { figuresDocument } from '../../shared/report/figures-text.ts';
import { sheetDocument } from '../../shared/report/sheet/document.ts';
import { sheetPage } from '../../shared/report/sheet/html.ts';
import { solvedDocument } from '../../shared/report/solve-text.ts';
import { textReport } from '../../shared/report/text.ts';
import { Say } from '../../shared/say/say.ts';
import { laws } from '../support/each.ts';
import { inPseudo, untranslated, withoutBrackets } from '../support/pseudo.ts';

const SAMPLES = fileURLToPath(new URL('../../samples/', import.meta.url));
const ROOT = 'file:///samples';
const samples = readdirSync(SAMPLES).filter((name) => name.endsWith('.shootplan.yaml'));
const textOf = (sample: string): string => readFileSync(`${SAMPLES}${sample}`, 'utf8');
const plans = samples.map(textOf).join('\n');
const say = new Say();

function coreOf(change: (text: string) => string = (text) => text): Core {
  const core = createCore({ rootOf: () => ROOT });
  for (const sample of samples) core.give(`${ROOT}/${sample}`, change(textOf(sample)));
  return core;
}

/** Of the workspace and the changed plan; values that JSON has, printed as they are there. */
const NAMES = 'file samples another rear grey';

/** Other settings and another name, so that there is something to compare. */
const other = (text: string): string =>
  text
    .replace(/aperture: f\/(?:8|11|16)$/gm, 'aperture: f/5.6')
    .replace(/^( {2})(\w[\w-]*):\n( {4}subject:)/m, '$1another:\n$3');

/** Cores of the samples and of the changed samples, two a language: each keeps what it said in its own. */
interface Cores {
  readonly core: Core;
  readonly changed: Core;
}
const coresOf = (): Cores => ({ core: coreOf(), changed: coreOf(other) });
const [inEnglish, inBrackets] = [coresOf(), coresOf()];

const compared = ({ core, changed }: Cores, file: string) =>
  comparePlans(core.compared(file), changed.compared(file));

const PRINTED: Readonly<Record<string, (cores: Cores, file: string) => string>> = {
  findings: ({ core }, file) =>
    textReport(
      [
        {
          name: file,
          findings: core
            .findings(file)
            .map((finding) => ({ finding, fixes: core.fixesOf(finding) })),
          nameOf: () => file,
          line: (index) => core.line(file, index),
        },
      ],
      false,
    ),
  figures: ({ core }, file) =>
    terminalText(
      figuresDocument(
        file,
        core.figures(file),
        core.recording(file),
        core.editFigures(file),
        core.dayFigures(file),
        say,
      ),
      false,
    ),
  page: ({ core }, file) => wordsOfPage(sheetPage(core.sheet(file), { say }, '')),
  sheet: ({ core }, file) => markdownText(sheetDocument(core.sheet(file), say)),
  comparison: (cores, file) =>
    terminalText(comparisonDocument(compared(cores, file), say, 'terminal'), false),
  'comparison as Markdown': (cores, file) =>
    markdownText(comparisonDocument(compared(cores, file), say, 'page')),
  solved: ({ core }, file) =>
    core
      .lenses(file)
      .map(({ shot }) => core.solve(file, shot))
      .map((solved) => (solved ? terminalText(solvedDocument(solved), false) : ''))
      .join('\n'),
};

const wordsOfPage = (html: string): string =>
  html
    .replace(/<style>[\s\S]*?<\/style>/g, '')
    .replace(/<[^>]*>/g, '\n')
    .replaceAll('&amp;', '&')
    .replaceAll('&gt;', '>')
    .replaceAll('&#39;', "'");

/** Columns are as wide as their words; a sentence that begins with a part has a capital. */
const bare = (text: string): string =>
  withoutBrackets(text).replace(/\s+/g, ' ').toLowerCase().trim();

laws(
  samples,
  (sample) => sample,
  (sample, law) => {
    const file = `${ROOT}/${sample}`;

    for (const [what, print] of Object.entries(PRINTED))
      law(what, () => {
        const english = print(inEnglish, file);
        const pseudo = inPseudo(() => print(inBrackets, file));
        // Labels of drawings are cut where they are too long, and brackets make them longer.
        if (what !== 'page') expect(bare(pseudo)).toBe(bare(english));
        const said = pseudo.replace(/^ {4}\|.*$/gm, '').replaceAll(sample, '');
        expect([...new Set(untranslated(said, `${plans}\n${NAMES}`))]).toEqual([]);
      });
  },
);
