/** Figures as a terminal shows them: one a line, with its unit, or why it is not known. */

import { type Block, list, type Pairs, paragraph, section, toned } from '../api/document.ts';
import type { EditJson } from '../figures/edit-json.ts';
import type { JsonFigure, ShotFiguresJson } from '../figures/json.ts';
import { doesNotApply } from '../figures/not-applicable.ts';
import type { BodyRecordingJson } from '../figures/recording-json.ts';
import type { Say } from '../say/say.ts';
import { inLanguage, message } from '../words/message.ts';
import { editTable, totalWords } from './edit-words.ts';
import { CALLED } from './figure-names.ts';
import { wrap } from './wrap.ts';

/** Columns of a terminal, or of paper. */
const WIDTH = 88;

type Print = (value: number, say: Say) => string;

/** By the end of a figure's name, where its unit stands; the first that fits. */
const UNITS: readonly (readonly [end: RegExp, print: Print])[] = [
  [/exposureErrorStops$/, (value, say) => say.stopsSigned(value)],
  [/stops$/i, (value, say) => say.stops(value)],
  [/MmPerS$/, (value, say) => `${say.number(value)} mm/s`],
  [/Mm$/, (value, say) => say.length(value)],
  [/Um$/, (value, say) => say.micrometres(value)],
  [/NewtonMetres$/, (value, say) => `${say.number(value)} N·m`],
  [/nm$/i, (value, say) => `${say.number(value)} nm`],
  [/Deg$/, (value, say) => `${say.number(value)}°`],
  [/Px$/, (value, say) => say.pixels(value)],
  [/Bytes$/, (value, say) => say.bytes(value)],
  [/Kg$/, (value, say) => `${say.number(value)} kg`],
  [/^shutterSeconds$/, (value, say) => say.shutter(value)],
  [/Seconds$|S$/, (value, say) => say.seconds(value)],
  [/FNumber$/i, (value, say) => say.fNumber(value)],
  [/magnification$|^reach$/i, (value, say) => say.magnification(value)],
  [/^iso/, (value, say) => say.iso(value)],
  [/residual$|share$|^shareOf|strayRatio$/i, (value, say) => say.percent(value)],
];

const plain: Print = (value, say) => say.number(value);

const printOf = (name: string): Print => UNITS.find(([end]) => end.test(name))?.[1] ?? plain;

export function figuresDocument(
  file: string,
  shots: ReadonlyMap<string, ShotFiguresJson>,
  recording: readonly BodyRecordingJson[],
  edit: EditJson | null,
  say: Say,
): readonly Block[] {
  return [
    ...section(1, file, [], true),
    ...[...shots].flatMap(([shot, figures]) => shotSection(shot, figures, say)),
    ...recording.flatMap(({ body, shots: _, ...sums }) =>
      shotSection(message`all takes on ${body}`, sums as unknown as ShotFiguresJson, say),
    ),
    ...(edit ? section(2, message`edit: ${totalWords(edit)}`, [editTable(edit)]) : []),
    paragraph(shots.size === 0 ? message`No shots.` : ''),
  ];
}

function shotSection(
  heading: string,
  { notKnown, measured, ...figures }: ShotFiguresJson,
  say: Say,
): readonly Block[] {
  const shared = sharedReasons(figures, notKnown);
  const rows = Object.entries(figures).flatMap(([name, value]): Pairs['rows'][number][] => {
    if (doesNotApply(notKnown[name]) || shared.has(reasonOf(name, value, notKnown) ?? ''))
      return [];
    const said = valueText(name, value as JsonFigure, notKnown, say);
    const found = measured?.includes(name) ? message`${said} (measured)` : said;
    const text = name === 'usableDepthMm' ? `${found}${depthNote(figures)}` : found;
    return [[figureLabel(name), value === null ? toned('aside', text) : text]];
  });
  const least = Math.max(0, ...Object.keys(figures).map((name) => figureLabel(name).length));
  const waiting = [...shared].map(([reason, names]) =>
    list(
      wrap(`${names.map(figureLabel).join(', ')}.`, WIDTH, '    ')
        .split('\n')
        .map((line) => toned('aside', line.trim())),
      { lead: toned('aside', message`unknown: ${reason}`) },
    ),
  );
  return section(2, heading, [{ kind: 'pairs', rows, least }, ...waiting], true);
}

type Figures = Readonly<Record<string, unknown>>;

/** Why the depth that findings judge by is more than focus alone gives: beside it, or nothing. */
function depthNote({ usableDepthMm: usable, depthMm: depth }: Figures): string {
  const total = typeof depth === 'object' && depth && 'total' in depth ? depth.total : null;
  const isMore =
    typeof usable === 'number' && typeof total === 'number' && usable > total * (1 + 1e-9);
  return isMore ? message` (used by findings; the Airy disk exceeds the circle of confusion)` : '';
}

/** So many figures that wait for the same are named together, under it. */
const SHARED_BY = 3;

/** Why a figure, or every part of it, is not known; undefined where something is. */
function reasonOf(
  name: string,
  value: unknown,
  notKnown: Readonly<Record<string, string>>,
): string | undefined {
  if (value === null) return notKnown[name];
  if (typeof value !== 'object' || Array.isArray(value)) return undefined;
  const reasons = Object.entries(value ?? {}).map(([part, inner]) =>
    reasonOf(`${name}.${part}`, inner, notKnown),
  );
  return new Set(reasons).size === 1 ? reasons[0] : undefined;
}

/** Reasons that many figures have, with these figures in their order. */
function sharedReasons(
  figures: object,
  notKnown: Readonly<Record<string, string>>,
): ReadonlyMap<string, readonly string[]> {
  const byReason = new Map<string, string[]>();
  for (const [name, value] of Object.entries(figures)) {
    const reason = reasonOf(name, value, notKnown);
    if (reason === undefined || doesNotApply(notKnown[name])) continue;
    byReason.set(reason, [...(byReason.get(reason) ?? []), name]);
  }
  return new Map([...byReason].filter(([, names]) => names.length >= SHARED_BY));
}

/** One figure alone, by its name in the contract ("depthMm.needed"); `why` it is null, where it is. */
export const figureWords = (
  name: string,
  value: JsonFigure,
  why: string | undefined,
  say: Say,
): string => valueText(name, value, why === undefined ? {} : { [name]: why }, say);

function valueText(
  name: string,
  value: JsonFigure,
  notKnown: Readonly<Record<string, string>>,
  say: Say,
): string {
  const print = printOf(name.split('.')[0] ?? name);
  if (value === null) return message`unknown: ${notKnown[name] ?? message`no reason given`}`;
  if (typeof value === 'number') return print(value, say);
  if (value === 'endless') return message`endless`;
  if (typeof value !== 'object') return String(value);
  if (Array.isArray(value)) return listText(name, value, print, say);
  return Object.entries(value as Record<string, JsonFigure>)
    .map(
      ([part, inner]) =>
        `${figureLabel(part)} ${partText(name, part, inner, print, notKnown, say)}`,
    )
    .join(', ');
}

const partText = (
  name: string,
  part: string,
  value: JsonFigure,
  print: Print,
  notKnown: Readonly<Record<string, string>>,
  say: Say,
): string =>
  typeof value === 'number'
    ? (print === plain ? printOf(part) : print)(value, say)
    : valueText(`${name}.${part}`, value, notKnown, say);

/** Numbers of a record that are told apart without their names. */
const MOST_UNNAMED = 2;

/** Pairs of sizes as "24 mm × 13.5 mm", of bounds as "0.3x to 1.2x", records by their parts. */
function listText(name: string, values: readonly unknown[], print: Print, say: Say): string {
  const texts = values.map((value) => {
    if (typeof value === 'number') return print(value, say);
    if (typeof value !== 'object' || value === null) return String(value);
    // Co-ordinates of a colour are for programs; a reader has its code beside them.
    const entries = Object.entries(value).filter(([, inner]) => !Array.isArray(inner));
    const isNamed = entries.filter(([, inner]) => typeof inner === 'number').length > MOST_UNNAMED;
    return entries
      .map(([key, inner]) => {
        if (typeof inner !== 'number') return String(inner);
        const text = printOf(key)(inner, say);
        return isNamed ? `${figureLabel(key)} ${text}` : text;
      })
      .join(' ');
  });
  if (texts.length === 0) return message`none`;
  if (name === 'tiltWindowDeg' && Number(values[0]) > Number(values[1]))
    return message`none: the lens needs at least ${texts[0]!}, the depth of field allows at most ${texts[1]!}`;
  const between = /^(reach|tiltWindow)/.test(name)
    ? message` to `
    : name.startsWith('field')
      ? ' × '
      : ', ';
  return texts.join(between);
}

/** `workingDistanceMm` as "working distance", `depthMm.needed` as "depth needed". */
export const figureLabel = (name: string): string => inLanguage(englishLabel(name));

/** The same in English, by which a translation has it. */
export const englishLabel = (name: string): string => name.split('.').map(labelOf).join(' ');

/** Without its unit, which stands behind the number. */
const labelOf = (name: string): string =>
  CALLED[name] ??
  name
    .replace(/ecordedS$/, 'ecordedTime')
    .replace(/ecordedBytes$/, 'ecordedData')
    .replace(/^usableDepthMm$/, 'usableDepth of field')
    .replace(/(NewtonMetres|MmPerS|Mm|Um|Nm|Deg|Px|Kg|Bytes|Seconds|S|Stops)$/, '')
    .replace(/FNumber$/, ' f-number')
    .replace(/^airy$/, 'Airy disk')
    .replace(/AtNyquist$/, ' at Nyquist')
    .replace(/ISO|Iso/g, ' ISO ')
    .replace(/^iso(?=[A-Z])/, 'ISO')
    .replace(
      /([a-z])([A-Z])(?![A-Z])/g,
      (_, before: string, after: string) => `${before} ${after.toLowerCase()}`,
    )
    .replace(
      /([A-Z]{2,})([A-Z][a-z])/g,
      (_, before: string, after: string) => `${before} ${after.toLowerCase()}`,
    )
    .replace(/\s+/g, ' ')
    .trim();
