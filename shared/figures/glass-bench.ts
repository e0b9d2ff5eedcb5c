/**
 * A converter and a close-up lens as their benches show them to be. With the focus ring left alone,
 * the field with a converter is that without it over the factor. A close-up lens on a lens at infinity
 * is in focus at its own focal length.
 */

import type { Prior } from '../assumptions/assumption.ts';
import { GLASS_AS_PRINTED } from '../assumptions/bench-beliefs.ts';
import { RULER } from '../assumptions/lens-beliefs.ts';
import { CLOSE_UP_LOSS, CONVERTER_LOSS } from '../assumptions/table.ts';
import type { Vector } from '../lens-fit/cholesky.ts';
import { believed } from '../lens-fit/lens-beliefs.ts';
import type { Belief } from '../lens-fit/most-likely.ts';
import { type Field, ifKnown, type Known } from '../plan/field.ts';
import type {
  CloseUp,
  CloseUpBenchRow,
  Converter,
  ConverterBenchRow,
} from '../plan/generated/types.ts';
import { later } from '../words/message.ts';
import {
  type EntryBench,
  type EntryRows,
  type EntryValue,
  freeBelief,
  gapOf,
  givenBelief,
  NOTHING,
  rowsOf,
  sigmaIn,
} from './entry-bench.ts';
import { remembered } from './remembered.ts';

/** Unknowns: the factor, and where a row has the light, what the glass takes of it, stops. */
export const converterBench = remembered((converter: Converter): EntryBench | undefined => {
  const { bench, factor, loss } = converter;
  const rows = ifKnown(bench) ?? [];
  if (rows.length === 0) return undefined;
  const read = rowsOf(rows, readConverterRow);
  const first = read.values.find(({ key }) => key === 'field')?.datum.value;
  return glass(read, factor, first, GLASS_AS_PRINTED.factor, loss, CONVERTER_LOSS);
});

/** Unknowns: the power, dioptres, and where a row has the light, what the glass takes of it, stops. */
export const closeUpBench = remembered((closeUp: CloseUp): EntryBench | undefined => {
  const { bench, power, loss, length } = closeUp;
  const rows = ifKnown(bench) ?? [];
  if (rows.length === 0 || length.state === 'invalid') return undefined;
  const lengthMm = ifKnown(length) ?? 0;
  const read = rowsOf(rows, (row, number) => readCloseUpRow(row, number, lengthMm));
  const first = read.values.find(({ key }) => key === 'working-distance')?.datum.value;
  return glass(
    read,
    power,
    first === undefined ? undefined : 1000 / (first + lengthMm),
    GLASS_AS_PRINTED.power,
    loss,
    CLOSE_UP_LOSS,
  );
});

/** Of what is printed nowhere, beyond what anybody believes, as a share. */
const ANY_SHARE = 1;
/** As a loss is said. */
const LOSS_STOPS = 0.05;

/**
 * @param main the factor or the power, as given
 * @param byRows what the first row that has it makes it
 * @param share by which a printed value may be off
 */
function glass(
  rows: EntryRows,
  main: Field<number>,
  byRows: number | undefined,
  share: number,
  loss: Field<number>,
  usual: Prior,
): EntryBench | undefined {
  if (main.state === 'invalid' || loss.state === 'invalid') return undefined;
  const belief: Belief | undefined =
    main.state === 'known'
      ? givenBelief(main, share * main.value)
      : byRows === undefined
        ? undefined
        : freeBelief(byRows, ANY_SHARE * byRows);
  if (!belief) return { ...rows, beliefs: [], values: [] };
  const hasLight = rows.values.some(({ key }) => key === 'light-lost');
  const lost =
    loss.state === 'known' ? givenBelief(loss, LOSS_STOPS) : believed(usual.low, usual.high);
  return { ...rows, beliefs: hasLight ? [belief, lost] : [belief] };
}

/** How much light is lost in stops, and what the converter would lose with given unknowns. */
function lightLost(
  field: Known<number>,
  row: number,
  predict: (unknowns: Vector) => number,
): EntryValue {
  return {
    row,
    key: 'light-lost',
    at: field.at,
    datum: { value: field.value, sigma: sigmaIn(field, RULER.lightStops), predict },
    written: (value) => value,
  };
}

const rulerSigma = (field: Known<number>): number =>
  sigmaIn(field, Math.max(RULER.fieldShare * field.value, RULER.fieldMm));

function readConverterRow({ value: row, at }: Known<ConverterBenchRow>, number: number): EntryRows {
  const { field, 'field-without': without, 'light-lost': lost } = row;
  if ([field, without, lost].some(({ state }) => state === 'invalid')) return NOTHING;
  if ([field, without, lost].every(({ state }) => state === 'missing'))
    return gapOf(number, at, later`nothing was measured in it`);
  const values: EntryValue[] = [];
  if (lost.state === 'known')
    values.push(lightLost(lost, number, ([factor, loss]) => 2 * Math.log2(factor!) + loss!));
  if (field.state !== 'known' || without.state !== 'known') {
    const alone = field.state === 'known' ? field : without;
    return alone.state !== 'known'
      ? { values, gaps: [] }
      : {
          values,
          gaps: gapOf(number, alone.at, later`a field needs \`field\` and \`field-without\``).gaps,
        };
  }
  const ratio = without.value / field.value;
  values.push({
    row: number,
    key: 'field',
    at: field.at,
    datum: {
      value: ratio,
      sigma:
        ratio * Math.hypot(rulerSigma(field) / field.value, rulerSigma(without) / without.value),
      predict: ([factor]) => factor!,
    },
    written: (factor) => without.value / factor,
  });
  return { values, gaps: [] };
}

function readCloseUpRow(
  { value: row, at }: Known<CloseUpBenchRow>,
  number: number,
  lengthMm: number,
): EntryRows {
  const { 'working-distance': distance, 'light-lost': lost } = row;
  if (distance.state === 'missing' && lost.state === 'missing')
    return gapOf(number, at, later`nothing was measured in it`);
  const values: EntryValue[] = [];
  if (lost.state === 'known') values.push(lightLost(lost, number, ([, loss]) => loss!));
  if (distance.state === 'known')
    values.push({
      row: number,
      key: 'working-distance',
      at: distance.at,
      datum: {
        value: distance.value,
        sigma: sigmaIn(distance, RULER.distanceMm),
        predict: ([power]) => 1000 / power! - lengthMm,
      },
      written: (value) => value,
    });
  return { values, gaps: [] };
}
