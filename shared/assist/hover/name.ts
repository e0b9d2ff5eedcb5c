/** What a name stands for: the data of its entry. */

import { assumedOf, assumedOfRecording } from '../../figures/assumed-of.ts';
import { type AssumedOf, assumedWords } from '../../figures/assumed-words.ts';
import { CONSTANTS } from '../../figures/constants.ts';
import { derive, notKnown, type UnknownFigure } from '../../figures/figure.ts';
import { fittedEntry } from '../../figures/fitted-entry.ts';
import { fittedLens } from '../../figures/fitted-lens.ts';
import type { Named } from '../../figures/named.ts';
import type { NamedPart } from '../../figures/parts.ts';
import { layOutParts } from '../../figures/parts.ts';
import { arrangeChain } from '../../optics/arrangement.ts';
import type { ChainFault } from '../../optics/parts.ts';
import { reach } from '../../optics/reach.ts';
import { entryAt, isInside, isOf } from '../../plan/entry-id.ts';
import { type Field, ifKnown } from '../../plan/field.ts';
import { ENTRIES } from '../../plan/generated/entries.ts';
import type { Group } from '../../plan/generated/names.ts';
import { SHAPES } from '../../plan/generated/shapes.ts';
import type { Body, Lens, Rig } from '../../plan/generated/types.ts';
import { type EntryId, type FileId, fileName, type Place } from '../../plan/place.ts';
import { reachWords } from '../../say/figures.ts';
import type { Say } from '../../say/say.ts';
import { allOf } from '../../words/listed.ts';
import { inLanguage, message } from '../../words/message.ts';
import type { Context } from '../../workspace/context.ts';
import { knownLabel, knownOf, knownWords, measureAdvice } from '../measure.ts';
import { benchWords } from './bench-words.ts';
import { entryLines, keysLeftOut, leftOutWords, shortText } from './entry-data.ts';
import { code, figureLine, type Line, line, paragraphs, plain, table } from './markdown.ts';
import { shotSummary } from './shot/summary.ts';
import { Sure, withFoot } from './sure.ts';
import { verdictOn } from './verdict.ts';

/** The entry of that name in the first of the groups that has one, as seen from `file`. */
export function nameHover(
  context: Context,
  file: FileId,
  groups: readonly Group[],
  name: string,
): string | null {
  for (const group of groups) {
    if (group === 'recordings') continue;
    const entry = context.analysis.names.find(file, group, name);
    if (entry)
      return group === 'shots' ? shotHover(context, entry) : entryHover(context, file, entry);
  }
  return null;
}

export function shotHover(context: Context, shot: { file: FileId; entry: EntryId }) {
  const { analysis, say } = context;
  const bench = analysis.bench(shot.file, shot.entry);
  const figures = analysis.figures(shot.file, shot.entry);
  if (!bench || !figures) return null;
  const uncertain = analysis.uncertain(shot.file, shot.entry);
  if (!uncertain) return null;
  const sure = new Sure(uncertain, say);
  return paragraphs(
    aboutOf(bench.fields),
    withFoot(shotSummary({ bench, figures, say, sure }), sure),
    verdictOn(context, shot.file, { bench, figures }),
  );
}

function entryHover(context: Context, file: FileId, entry: Named<object>): string {
  const { name, group, fields } = entry;
  const { def, home } = ENTRIES[group];
  const inKit = home !== null && isInside(entryAt('kit'), entryAt(home));
  return paragraphs(
    aboutOf(fields),
    table([
      line(`**${plain(name)}**`, inLanguage(SHAPES[def].title)),
      ...entryLines(def, fields, context.say),
      ...(group === 'rigs' ? rigLines(context, file, entry as Named<Rig>) : []),
    ]),
    ...assumedLines(
      assumedOf(def, name, fittedEntry(entry, CONSTANTS).fields, firstBody(context, file)),
      context.say,
    ),
    ...(group === 'lenses' ? lensParagraphs(context, file, entry as Named<Lens>) : []),
    benchWords(entry, context.say),
    inKit && leftOutWords(keysLeftOut(def, fields)),
    entry.file !== file && message`Defined in ${plain(fileName(entry.file))}.`,
  );
}

/** What is known of a lens by its bench, and what to measure of it next for the shots of the plan. */
function lensParagraphs(context: Context, file: FileId, lens: Named<Lens>): readonly string[] {
  const { analysis, say } = context;
  const [advice] = measureAdvice(context, file, lens.name);
  const rows = ifKnown(lens.fields.bench)?.length ?? 0;
  const fit = fittedLens(analysis.reader(file), lens, firstBody(context, file));
  const known =
    fit &&
    knownOf(fit)
      .map((one) => `${knownLabel(one)} ${knownWords(one, say)}`)
      .join('; ');
  const next = advice?.next;
  return [
    ...(known
      ? [
          rows === 1
            ? message`By its data and 1 row of its bench: ${known}.`
            : message`By its data and ${rows} rows of its bench: ${known}.`,
        ]
      : []),
    ...(next ? [message`Measure next: ${plain(next.how)} ${next.gives}`] : []),
  ];
}

/** The first body that a plan has: how long a lens is for its sensor decides what is assumed of it. */
function firstBody({ analysis }: Context, file: FileId): Body | undefined {
  for (const reached of analysis.names.reaches(file))
    for (const { id } of analysis.entries.list(reached)) {
      if (!isOf('bodies', id)) continue;
      const lowered = analysis.entries.lowered(reached, id);
      if (lowered?.def === 'body') return lowered.value as Body | undefined;
    }
  return undefined;
}

/** Modes of a body that are assumed alike have one line. */
function assumedLines(assumed: readonly AssumedOf[], say: Say): readonly string[] {
  const names = new Map<AssumedOf['id'], readonly string[]>();
  for (const { id, of } of assumed)
    names.set(id, [...(names.get(id) ?? []), ...(of === null ? [] : [code(of)])]);
  return [...names].map(([id, of]) => {
    const prior = assumed.find((one) => one.id === id)?.prior;
    return assumedWords({ id, of: of.length > 0 ? allOf(of) : null, prior }, say);
  });
}

/** What a rig can do before any shot asks something of it. */
function rigLines({ analysis, say }: Context, file: FileId, rig: Named<Rig>): Line[] {
  const reader = analysis.reader(file);
  const { chainParts, parts } = layOutParts(reader, rig);
  const ends = derive([chainParts, parts], (chain, named) => {
    const arranged = arrangeChain(chain);
    if (!arranged.ok) return faultFigure(arranged.fault, named);
    return reach(arranged.chain) ?? notKnown(message`nothing comes into focus`);
  });
  return [figureLine(message`magnification range`, ends, (both) => reachWords(both, say))];
}

function faultFigure(fault: ChainFault, parts: readonly NamedPart[]): UnknownFigure {
  if (fault.kind !== 'needs')
    return notKnown(message`the parts are in an order that does not work`);
  const { name, defined } = parts[fault.part]!;
  const key = fault.input === 'flangeMm' ? 'flange-distance' : 'length';
  return { known: false, needs: [{ key, of: name, at: { ...defined, path: [key] } }] };
}

function aboutOf(fields: object): string | null {
  const { about } = fields as { readonly about?: Field<string> };
  return about?.state === 'known' ? shortText(about.value) : null;
}

/** A recording setting where its body defines it. */
export function recordingHover(
  { analysis, say }: Context,
  place: Place,
  name: string,
): string | null {
  const lowered = analysis.entries.lowered(place.file, place.entry);
  if (lowered?.def !== 'body') return null;
  const record = (lowered.value as Body)['recording-modes'];
  const setting = record.state === 'known' ? record.value.get(name) : undefined;
  if (setting?.state !== 'known') return null;
  return paragraphs(
    table([
      line(`**${plain(name)}**`, inLanguage(SHAPES.recording.title)),
      ...entryLines('recording', setting.value, say),
    ]),
    ...assumedLines(assumedOfRecording(name, setting.value), say),
  );
}
