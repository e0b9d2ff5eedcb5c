/** What a timeline has otherwise than the plan, in sentences: nothing is left out in silence. */
import { KINDS } from '../../quantity/index.ts';
import type { Rational } from '../../quantity/rational.ts';
import { framesWords } from '../../say/timeline.ts';
import type { DissolveLack } from '../../timeline/dissolves.ts';
import type { listed } from '../../timeline/listed.ts';
import type { LaidCut, Programme } from '../../timeline/programme.ts';
import { message } from '../../words/message.ts';

/** Event numbers of the form have three digits. */
const MOST_EVENTS = 999;

/** What OpenTimelineIO and every other format has otherwise. */
export const programmeNotes = ({ cuts, empty }: Programme): readonly string[] => [
  ...empty.map((name) => message`${name} shows no frame and is left out.`),
  ...cuts.flatMap((cut) => [...dissolveNote(cut), ...coverNote(cut)]),
  ...assumedRates(cuts),
];

function dissolveNote({ name, join, dissolve }: LaidCut): readonly string[] {
  if (dissolve.lack === null) return [];
  const [wanted, frames] = [join.before + join.after, dissolve.before + dissolve.after];
  const lack = lackWords(dissolve.lack);
  return [
    frames === 0
      ? message`The dissolve into ${name} is left out; ${lack}.`
      : message`The dissolve into ${name} is ${framesWords(frames)} long instead of ${framesWords(wanted)}; ${lack}.`,
  ];
}

function lackWords(lack: DissolveLack): string {
  switch (lack) {
    case 'nothing-before':
      return message`nothing comes before it`;
    case 'before':
      return message`its clip has no more before the in point`;
    case 'after':
      return message`the previous clip has no more after its cut`;
    case 'own':
      return message`the cut is too short`;
    case 'previous':
      return message`the previous cut is too short`;
  }
}

function coverNote({ name, startFrame, endFrame, covered, material }: LaidCut): readonly string[] {
  const missing = endFrame - startFrame - covered;
  if (missing === 0) return [];
  return [
    message`The last ${framesWords(missing)} of ${name} are left empty; ${material.name} ends before.`,
  ];
}

function assumedRates(cuts: readonly LaidCut[]): readonly string[] {
  const names = cuts
    .filter(({ material }) => material.rateFrom === 'edit' && !material.isStill)
    .map(({ material }) => material.name);
  return [...new Set(names)].map(
    (name) => message`The frame rate of ${name} is unknown; the delivery frame rate is assumed.`,
  );
}

/** Besides those of every format. */
export function fcpxmlNotes({ cuts, music }: Programme): readonly string[] {
  const missing = new Set(
    cuts.filter(({ material }) => material.url === null).map(({ material }) => material.name),
  );
  return [
    ...[...missing].map((name) => message`${name} has no file yet. A gap keeps its place.`),
    ...(music
      ? [message`Link the music to its file in the editing program; its beats are markers.`]
      : []),
  ];
}

export function edlNotes(
  { cuts, music, rate }: Programme,
  { events, dissolves }: ReturnType<typeof listed>,
): readonly string[] {
  const other = new Map(
    cuts
      .filter(({ material }) => !isSame(material.rate, rate) && !material.isStill)
      .map(({ material }) => [material.name, material.rate]),
  );
  const held = new Set(
    cuts.filter(({ material }) => material.isStill).map(({ material }) => material.name),
  );
  const pieces = new Map<string, number>();
  for (const { cut, piece } of events)
    if (piece) pieces.set(cut.name, (pieces.get(cut.name) ?? 0) + 1);
  const hasMore = cuts.some(
    ({ reframe, grade, about }) => reframe !== null || grade !== null || about !== null,
  );
  return [
    ...[...other].map(
      ([name, own]) =>
        message`${name} has ${KINDS.rate.print(own)}; set it to play at ${KINDS.rate.print(rate)} before this list is read.`,
    ),
    ...[...held].map(
      (name) => message`${name} is one frame of its source in this list, held at a speed of 0.`,
    ),
    ...[...pieces]
      .filter(([, count]) => count > 1)
      .map(
        ([name, count]) => message`The speed ramp of ${name} is ${count} events of constant speed.`,
      ),
    ...dissolves.map(({ cut, frames }) =>
      frames === 0
        ? message`The dissolve into ${cut.name} is a cut in this list.`
        : message`The dissolve into ${cut.name} is ${framesWords(frames)} long in this list.`,
    ),
    ...(music ? [message`The music and its beats are left out.`] : []),
    ...(hasMore ? [message`Punch-ins, grades and notes are comments.`] : []),
    ...(events.length > MOST_EVENTS
      ? [message`The list has ${events.length} events; some programs read ${MOST_EVENTS} at most.`]
      : []),
  ];
}

const isSame = (a: Rational, b: Rational): boolean => a.n === b.n && a.d === b.d;
