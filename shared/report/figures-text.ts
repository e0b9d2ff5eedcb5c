/** Figures as a terminal shows them: one a line, with its unit, or why it is not known. */

import {
  type Block,
  list,
  type Pairs,
  paragraph,
  section,
  toned,
  worded,
} from '../api/document.ts';
import { CATALOGUE, DECLARATIONS, type FigureKey } from '../figures/catalogue/catalogue.ts';
import type { Declaration, Told } from '../figures/catalogue/declaration.ts';
import { boundsWords, sayFigure } from '../figures/catalogue/say-figure.ts';
import type { Shape } from '../figures/catalogue/shape.ts';
import { SUMS } from '../figures/catalogue/sums.ts';
import type { DayJson } from '../figures/day-json.ts';
import type { EditJson } from '../figures/edit-json.ts';
import type { BoundsJson, ShotFiguresJson } from '../figures/json.ts';
import { doesNotApply, type Reasons } from '../figures/reasons.ts';
import type { BodyRecordingJson } from '../figures/recording-json.ts';
import type { Say } from '../say/say.ts';
import { inLanguage, message } from '../words/message.ts';
import { dayRemarks, dayTable, neededWords } from './day-words.ts';
import { editTable, totalWords } from './edit-words.ts';
import { wrap } from './wrap.ts';

/** Columns of a terminal, or of paper. */
const WIDTH = 88;

export function figuresDocument(
  file: string,
  shots: ReadonlyMap<string, ShotFiguresJson>,
  recording: readonly BodyRecordingJson[],
  edit: EditJson | null,
  day: DayJson | null,
  say: Say,
): readonly Block[] {
  return [
    ...section(1, file, [], true),
    ...[...shots].flatMap(([shot, { notKnown, measured, bounds, widenedBy: _, ...figures }]) =>
      figuresSection(shot, CATALOGUE, { figures, notKnown, measured, bounds }, say),
    ),
    ...recording.flatMap(({ body, shots: _, notKnown, ...figures }) =>
      figuresSection(
        message`all takes on ${body}`,
        Object.entries(SUMS),
        { figures: { ...figures }, notKnown },
        say,
      ),
    ),
    ...(edit ? section(2, message`edit: ${totalWords(edit)}`, [editTable(edit)]) : []),
    ...(day
      ? section(2, message`day: ${neededWords(day, say)}`, [
          dayTable(day, say),
          ...dayRemarks(day, say).map((one) => paragraph(worded(one))),
        ])
      : []),
    paragraph(shots.size === 0 ? message`No shots.` : ''),
  ];
}

type Rows = readonly (readonly [key: string, told: Told])[];

interface Values {
  readonly figures: Readonly<Record<string, unknown>>;
  readonly notKnown: Reasons;
  readonly measured?: readonly string[] | undefined;
  readonly bounds?: BoundsJson['bounds'] | undefined;
}

function figuresSection(heading: string, rows: Rows, values: Values, say: Say): readonly Block[] {
  const { figures, notKnown, measured } = values;
  const shared = sharedReasons(rows, values);
  const pairs = rows.flatMap(([key, told]): Pairs['rows'][number][] => {
    if (figures[key] === undefined || doesNotApply(notKnown, key)) return [];
    if (shared.has(reasonFor(key, told, values) ?? '')) return [];
    const said = valueText(key, told, values, say);
    const found = measured?.includes(key) ? message`${said} (measured)` : said;
    const text = `${found}${NOTES[key as FigureKey]?.(values) ?? ''}`;
    const label = inLanguage(told.label);
    const rowsOfList = text.length > WIDTH ? itemTexts(told, figures[key], say) : [];
    if (rowsOfList.length > 0)
      return rowsOfList.map((item, index) => [index === 0 ? label : '', item]);
    return [[label, figures[key] === null ? toned('aside', text) : text]];
  });
  const least = Math.max(0, ...rows.map(([, { label }]) => inLanguage(label).length));
  const waiting = [...shared].map(([reason, labels]) =>
    list(
      wrap(`${labels.map(inLanguage).join(', ')}.`, WIDTH, '    ')
        .split('\n')
        .map((line) => toned('aside', line.trim())),
      { lead: toned('aside', message`unknown: ${reason}`) },
    ),
  );
  return section(2, heading, [{ kind: 'pairs', rows: pairs, least }, ...waiting], true);
}

/** Each of the records of a list, whose many numbers would make one long line; empty: it is no such list. */
function itemTexts(told: Told, value: unknown, say: Say): readonly string[] {
  if (told.kind !== 'figure' || told.is.kind !== 'list' || told.is.item.kind !== 'record')
    return [];
  return Array.isArray(value) ? value.map((item) => sayFigure(told, [item], say)) : [];
}

/** What stands behind a value for the sake of another. */
const NOTES: { readonly [K in FigureKey]?: (values: Values) => string } = {
  usableDepthMm: depthNote,
  depthMm: stackNote,
};

/** What one frame of a stack needs is nothing to go by: its frames share the subject's depth. */
function stackNote({ figures, notKnown }: Values): string {
  const isStack =
    typeof figures.stackFrames === 'number' ||
    (notKnown.stackFrames !== undefined && !doesNotApply(notKnown, 'stackFrames'));
  return isStack ? message` by one frame; the stack covers the subject` : '';
}

/** Why the depth that findings judge by is more than focus alone gives: beside it, or nothing. */
function depthNote({ figures }: Values): string {
  const { usableDepthMm: usable, depthMm: depth } = figures;
  const total = typeof depth === 'object' && depth && 'total' in depth ? depth.total : null;
  const isMore =
    typeof usable === 'number' && typeof total === 'number' && usable > total * (1 + 1e-9);
  return isMore ? message` (used by findings; the Airy disk exceeds the circle of confusion)` : '';
}

/** So many figures that wait for the same are named together, under it. */
const SHARED_BY = 3;

/** Why a figure, or every one of a group, is not known; undefined where something is. */
function reasonFor(key: string, told: Told, { figures, notKnown }: Values): string | undefined {
  if (told.kind === 'figure') return figures[key] === null ? notKnown[key] : undefined;
  const reasons = new Set(Object.keys(told.parts).map((part) => notKnown[`${key}.${part}`]));
  return reasons.size === 1 ? [...reasons][0] : undefined;
}

/** Reasons that many figures have, with the labels of these figures in their order. */
function sharedReasons(rows: Rows, values: Values): ReadonlyMap<string, readonly string[]> {
  const byReason = new Map<string, string[]>();
  for (const [key, told] of rows) {
    const reason = reasonFor(key, told, values);
    if (reason === undefined || doesNotApply(values.notKnown, key)) continue;
    byReason.set(reason, [...(byReason.get(reason) ?? []), told.label]);
  }
  return new Map([...byReason].filter(([, labels]) => labels.length >= SHARED_BY));
}

function valueText(key: string, told: Told, values: Values, say: Say): string {
  const { figures, notKnown, bounds } = values;
  const value = figures[key];
  if (told.kind === 'figure')
    return `${wordsOf(told, value, notKnown[key], say)}${boundsText(told.is, value, bounds?.[key], say)}`;
  const of = value as Readonly<Record<string, unknown>>;
  return Object.entries(told.parts)
    .filter(([name]) => of[name] !== undefined)
    .map(
      ([name, part]) =>
        `${inLanguage(part.short)} ${wordsOf(part, of[name], notKnown[`${key}.${name}`], say)}${boundsText(part.is, of[name], bounds?.[`${key}.${name}`], say)}`,
    )
    .join(', ');
}

/** " (24 to 27)" behind a value; nothing where it has no width that its digits show. */
function boundsText(
  is: Shape,
  value: unknown,
  bounds: NonNullable<BoundsJson['bounds']>[string] | undefined,
  say: Say,
): string {
  const words = bounds && value !== null && boundsWords(is, value, bounds, say);
  return words ? ` (${words})` : '';
}

const wordsOf = (
  told: Pick<Declaration, 'is'>,
  value: unknown,
  why: string | undefined,
  say: Say,
): string =>
  value === null || value === undefined
    ? message`unknown: ${why ?? message`no reason given`}`
    : sayFigure(told, value, say);

/** One figure alone, by its name in the contract ("depthMm.needed"); `why` it is null, where it is. */
export function figureWords(
  name: string,
  value: unknown,
  why: string | undefined,
  say: Say,
): string {
  const declaration = DECLARATIONS.get(name);
  if (!declaration) throw new Error(`there is no figure ${name}`);
  return wordsOf(declaration, value, why, say);
}

/** What lies round one figure alone, in brackets; empty where it has no width that its digits show. */
export const boundsBehind = (
  name: string,
  value: unknown,
  bounds: NonNullable<BoundsJson['bounds']>[string] | null | undefined,
  say: Say,
): string => {
  const declaration = DECLARATIONS.get(name);
  return declaration ? boundsText(declaration.is, value, bounds ?? undefined, say) : '';
};

/** `workingDistanceMm` as "working distance", `depthMm.needed` as "depth needed". */
export const figureLabel = (name: string): string =>
  inLanguage(DECLARATIONS.get(name)?.label ?? name);
