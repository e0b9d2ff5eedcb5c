/** The table of assumptions as a document: what is missing, what is taken for it, and why. */
import { type Block, paragraph, section, type Table, table, worded } from '../api/document.ts';
import { type Assumption, isPrior } from '../assumptions/assumption.ts';
import { BENCH_ASSUMPTIONS } from '../assumptions/bench-table.ts';
import { ASSUMPTIONS } from '../assumptions/table.ts';
import type { QuantityId } from '../quantity/index.ts';
import { Say } from '../say/say.ts';
import { shown } from '../say/shown.ts';
import { inLanguage, message } from '../words/message.ts';
import { terminalText } from './document/terminal.ts';
import { wrap } from './wrap.ts';

const WIDTH = 88;

/** One assumption, in the language in force. */
interface AssumptionRow {
  /** "`loss` of a lens" */
  readonly missing: string;
  readonly middle: string;
  /** "0.1 stops to 0.5 stops"; empty where what is assumed has no ends. */
  readonly ends: string;
  readonly source: string;
  readonly note: string;
}

const rows = (): readonly AssumptionRow[] =>
  [...Object.values(ASSUMPTIONS), ...Object.values(BENCH_ASSUMPTIONS)].map(row);

const row = ({ key, of, quantity, value, source, note }: Assumption): AssumptionRow => ({
  missing: key === null ? inLanguage(of) : message`\`${key}\` of ${inLanguage(of)}`,
  ...valueWords(value, quantity),
  source: inLanguage(source),
  note: inLanguage(note),
});

function valueWords(
  value: Assumption['value'],
  quantity: QuantityId | null,
): Pick<AssumptionRow, 'middle' | 'ends'> {
  if (!isPrior(value))
    return {
      middle: inLanguage(value.middle),
      ends: value.ends === null ? '' : inLanguage(value.ends),
    };
  const say = new Say(() => 'mm');
  const print = (number: number): string =>
    quantity === null ? String(number) : shown(quantity, number, say);
  return {
    middle: print(value.middle),
    ends: message`${print(value.low)} to ${print(value.high)}`,
  };
}

/** One row each: as wide as its texts, so for a page. */
export const assumptionTable = (): Table =>
  table(
    [message`missing`, message`assumed`, message`ends`, message`note`, message`source`],
    rows().map(({ missing, middle, ends, note, source }) =>
      [missing, middle, ends, note, source].map(worded),
    ),
    { isNamed: true },
  );

/** One part each, in lines that a terminal holds. */
const assumptionParts = (): readonly Block[] =>
  rows().flatMap(({ missing, middle, ends, note, source }) =>
    section(2, worded(missing), [
      ...wrapped(ends === '' ? message`Value: ${middle}` : message`Value: ${middle} (${ends})`),
      ...wrapped(note),
      ...wrapped(message`Source: ${source}`),
    ]),
  );

const wrapped = (text: string): readonly Block[] =>
  wrap(text, WIDTH - 2)
    .split('\n')
    .map((line) => paragraph(worded(line)));

export const assumptionsText = (colour: boolean): string =>
  terminalText(
    [
      paragraph(
        message`Assumed of values that a plan leaves out. The ends hold nearly all real things.`,
      ),
      ...assumptionParts(),
    ],
    colour,
  );
