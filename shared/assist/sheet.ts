/** The sheet of a plan, and where what it shows stands in the text. */

import type { LocatedFinding, LocatedPlace, Position } from '../api/located.ts';
import type { Sheet, SheetFinding, ShotSheet, ShownAt } from '../api/sheet.ts';
import type { Steps } from '../engine/steps.ts';
import { dayJson } from '../figures/day-contract.ts';
import { editJson } from '../figures/edit-contract.ts';
import type { ShotFigures } from '../figures/shot-figures.ts';
import { idOf, isOf, nameOf, plainId } from '../plan/entry-id.ts';
import { type Field, ifKnown } from '../plan/field.ts';
import { type EntryId, type FileId, fileName } from '../plan/place.ts';
import type { QuantityId } from '../quantity/index.ts';
import { commentsOf } from '../report/review.ts';
import { daySheet } from '../report/sheet/day.ts';
import { editSheet } from '../report/sheet/edit.ts';
import { type Beside, onceChecks, orderOf, type States, shotSheet } from '../report/sheet/make.ts';
import { recordingLines } from '../report/sheet/recording.ts';
import type { SaidShot } from '../report/sheet/said.ts';
import { shown } from '../say/shown.ts';
import { message } from '../words/message.ts';
import type { Context } from '../workspace/context.ts';
import { takesListed, takeWords } from '../workspace/takes.ts';
import { takenWords } from './hover/taken.ts';
import { sheetMeasurements } from './measure.ts';

/**
 * @param findings those of every file that the plan reaches, the plan's own first
 * @param isWrittenOn it has what is filled in by hand
 */
export function* sheetSteps(
  context: Context,
  file: FileId,
  findings: readonly LocatedFinding[],
  isWrittenOn: boolean,
): Steps<Sheet> {
  const { analysis, say } = context;
  const reader = analysis.reader(file);
  const once = ifKnown(reader.plan('preflight'))?.once;
  const readiness = analysis.readiness(file);
  const shots: { name: string; said: SaidShot | null; clips: readonly string[] }[] = [];
  for (const id of analysis.shots(file)) {
    const bench = analysis.bench(file, id);
    const figures = analysis.figures(file, id);
    const uncertain = analysis.uncertain(file, id);
    const said: SaidShot | null =
      bench && figures && uncertain ? { bench, figures, say, uncertain } : null;
    const name = nameOf('shots', id);
    shots.push({ name, said, clips: clipLines(context, file, name) });
    yield;
  }
  const names = new Set(shots.map(({ name }) => name));
  const ofShot = new Map<string, SheetFinding[]>();
  const others: SheetFinding[] = [];
  for (const finding of findings) {
    const { rule, severity, what, why, range } = finding;
    const inText = finding.file === file ? shotAt(context, file, range.start) : null;
    const shot = finding.shot ?? inText;
    if (shot === null || !names.has(shot)) others.push({ rule, severity, what, why });
    else ofShot.set(shot, [...(ofShot.get(shot) ?? []), { rule, severity, what, why }]);
  }
  const deliver = ifKnown(reader.plan('deliver'));
  const given = (id: QuantityId, field: Field<unknown>): string | null =>
    field.state === 'known' ? shown(id, field.value, say) : null;
  const delivered = deliver && [
    given('pixels', deliver.resolution),
    given('rate', deliver.rate),
    given('time', deliver.duration),
  ];
  const sheets: ShotSheet[] = [];
  for (const { name, said, clips } of shots) {
    const beside = { findings: ofShot.get(name) ?? [], readiness: readiness.get(name)!, clips };
    sheets.push(remembered(name, said, once, beside));
    yield;
  }
  return {
    title: ifKnown(reader.plan('title')) ?? fileName(file),
    file: fileName(file),
    about: ifKnown(reader.plan('about')) ?? null,
    deliver: delivered?.filter((one) => one !== null).join(', ') || null,
    once: onceChecks(once),
    order: orderOf(
      shots.flatMap(({ said }) => said ?? []),
      dayJson(analysis.day(file)),
    ),
    day: daySheet(analysis.day(file), say),
    edit: editSheet(analysis.edit(file)),
    recording: recordingLines(analysis.recording(file), say),
    shots: sheets,
    findings: others.filter(({ severity }) => severity !== 'hint'),
    measurements: isWrittenOn ? sheetMeasurements(context, file) : [],
  };
}

/** How many takes are to go, then what was recorded, a line each. */
function clipLines(context: Context, file: FileId, shot: string): readonly string[] {
  const { analysis, say } = context;
  const lines = takesListed(analysis, file, shot).map((clip, index) => {
    const take = ifKnown(clip.take);
    const used = ifKnown(clip.used);
    const name =
      ifKnown(clip.file) ?? (take === undefined ? message`no file` : message`take ${take}`);
    const parts = [
      ifKnown(clip.verdict) ?? 'not judged',
      used && shown('time-range', used, say),
      takenWords(context, file, shot, index),
      ifKnown(clip.note),
    ];
    return `${name}: ${parts.filter((one) => typeof one === 'string').join(', ')}`;
  });
  const words = takeWords(analysis, file, shot);
  return words === null ? lines : [words, ...lines];
}

/** What was last made of a shot, kept with its figures: an edit elsewhere leaves both alone. */
const made = new WeakMap<ShotFigures, { readonly key: string; readonly sheet: ShotSheet }>();

function remembered(
  name: string,
  said: SaidShot | null,
  once: States | undefined,
  beside: Beside,
): ShotSheet {
  if (!said) return shotSheet(name, said, beside);
  const { bench, figures, say } = said;
  // What the figures don't follow from: words of the shot, its checks, and the reader's unit.
  const { about, preflight, review } = bench.fields;
  const key = JSON.stringify([
    beside,
    say.lengths,
    ifKnown(about),
    commentsOf(review),
    [...bench.checks],
    [once, preflight].map((states) => states && [...(ifKnown(states) ?? [])]),
  ]);
  const known = made.get(figures);
  if (known?.key === key) return known.sheet;
  const sheet = shotSheet(name, said, beside);
  made.set(figures, { key, sheet });
  return sheet;
}

/** Where a key of a shot stands; the shot's name where the key isn't written. */
export function placeInShot(
  { analysis, locator }: Context,
  file: FileId,
  shot: string,
  key: string,
): LocatedPlace | null {
  const entry: EntryId = idOf('shots', shot);
  if (!analysis.shots(file).includes(entry)) return null;
  const path = key === '' ? [] : [key];
  return { file, range: locator.rangeOf({ file, entry, path }) };
}

export function placeOfCut(
  { analysis, locator }: Context,
  file: FileId,
  cut: string,
): LocatedPlace | null {
  const entry: EntryId = idOf('cuts', cut);
  if (!analysis.entries.source(file, entry)) return null;
  return { file, range: locator.rangeOf({ file, entry, path: [], part: 'key' }) };
}

/** The shot whose lines hold a position. */
export function shotAt(
  { analysis, store }: Context,
  file: FileId,
  position: Position,
): string | null {
  const text = store.text(file);
  if (!text) return null;
  const chunk = store.chunkIds(file)[text.locate(position).index];
  return chunk !== undefined && analysis.isShot(chunk) ? nameOf('shots', chunk) : null;
}

/** What of the live sheet shows the line of a position: the shot and its key, or the cut and its shot. */
export function shownAt(context: Context, file: FileId, position: Position): ShownAt {
  const { analysis, store } = context;
  const text = store.text(file);
  const chunk = text && store.chunkIds(file)[text.locate(position).index];
  if (!text || chunk === undefined) return NOTHING_SHOWN;
  if (analysis.isShot(chunk)) {
    const pairs = analysis.entries.parsed(file, chunk).tree?.pairs[0]?.value;
    const index = text.locate(position).index;
    // The last key that begins on the line or above it; the line of the shot's name has none.
    const key =
      pairs?.kind === 'map'
        ? pairs.pairs.findLast(
            ({ key: { span } }) => text.positionOf(index, span.start).line <= position.line,
          )
        : undefined;
    return { shot: nameOf('shots', chunk), key: key?.key.text ?? null, cut: null };
  }
  if (!isOf('cuts', chunk)) return NOTHING_SHOWN;
  const cut = nameOf('cuts', plainId(chunk));
  const shot = editJson(analysis.edit(file))?.cuts.find((one) => one.cut === cut)?.shot ?? null;
  return { shot, key: null, cut };
}

const NOTHING_SHOWN: ShownAt = { shot: null, key: null, cut: null };
