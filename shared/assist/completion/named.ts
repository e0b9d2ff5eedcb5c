/** Names in scope, with their data, and in a shot with what it comes to with them. */

import { type Field, ifKnown } from '../../plan/field.ts';
import type { Group, GroupName } from '../../plan/generated/names.ts';
import { SHAPES } from '../../plan/generated/shapes.ts';
import type { Recording } from '../../plan/generated/types.ts';
import type { Ref } from '../../plan/ref.ts';
import { toNumber } from '../../quantity/rational.ts';
import { chosenSetting } from '../../rules/recording-settings.ts';
import type { Say } from '../../say/say.ts';
import { shownField } from '../../say/shown.ts';
import { message } from '../../words/message.ts';
import { detailOf } from '../symbol-detail.ts';
import type { Proposal } from './item.ts';
import {
  angle,
  depth,
  effective,
  exposure,
  IMPOSSIBLE,
  magnification,
  outcomeOf,
  reached,
  room,
  unobstructed,
} from './outcome.ts';
import type { TrialShot } from './trial-shot.ts';
import type { Where } from './where.ts';

/** What stands at a caret, and what did before it was taken out. */
interface Written {
  readonly word: string;
  readonly former?: string | undefined;
}

/** Where a name stands that works, none is offered that doesn't; what stood there always is. */
export function named(
  where: Where,
  groups: readonly Group[],
  { word, former }: Written = { word: '' },
): readonly Proposal[] {
  const found = groups.flatMap((group, index) =>
    group === 'recordings' ? recordings(where) : entriesOf(where, group, groups, index, word),
  );
  const isNamed = found.some(({ text }) => text === word);
  return found
    .filter(({ text, rank }) => !isNamed || text === word || text === former || rank < IMPOSSIBLE)
    .sort((a, b) => a.rank - b.rank);
}

function entriesOf(
  where: Where,
  group: GroupName,
  groups: readonly Group[],
  index: number,
  word: string,
): Proposal[] {
  const { context, file, shot, meaning } = where;
  const { names } = context.analysis;
  const isOfShot = shot !== null && meaning?.of === 'shot';
  return names.namesIn(file, group).map((name, place): Proposal => {
    const data = dataOf(where, group, name);
    const tried = isOfShot ? outcomeWith(shot, group, name, word) : null;
    return {
      text: name,
      detail: tried?.insteadOfData
        ? tried.words || data
        : [data, tried?.words].filter(Boolean).join(' · '),
      rank: (tried?.rank ?? 0) + index + place / 1000,
      kind: 'name',
      about: { kind: 'name', groups, name },
    };
  });
}

/** What the shot comes to with a rig or a light of that name; null for all else. */
function outcomeWith(shot: TrialShot, group: GroupName, name: string, word: string) {
  if (group === 'rigs') return { ...rigOutcome(shot, name), insteadOfData: true };
  if (group !== 'lights') return null;
  const tried = shot.with('light', lightsWith(shot, name, word));
  return { ...outcomeOf(tried, [unobstructed, exposure]), insteadOfData: false };
}

/** The lights of the shot with one more, or one in the place of `word`. */
function lightsWith({ fields: { light } }: TrialShot, name: string, word: string) {
  const now = light.state === 'known' ? light.value : [];
  const others = now.filter((item) => item.state !== 'known' || item.value !== word);
  return [...others, { state: 'known' as const, value: name as Ref, at: light.at }];
}

const rigOutcome = (shot: TrialShot, name: string) => {
  const tried = shot.with('rig', name as Ref);
  return outcomeOf(tried, [reached, effective, magnification, depth, room, unobstructed]);
};

/** The few values that tell an entry from its neighbours, as an outline shows them. */
function dataOf({ context, file }: Where, group: GroupName, name: string): string {
  const { names, entries } = context.analysis;
  const found = names.define(file, group, name);
  const source = found && entries.source(found.file, found.entry);
  const listed = found && entries.list(found.file).find(({ id }) => id === found.entry);
  if (!found || !source || !listed) return '';
  const data = detailOf(listed.kind, entries.node(found.file, source));
  const about = (names.find(file, group, name)?.fields as { about?: Field<string> } | undefined)
    ?.about;
  return data || ((about && ifKnown(about)) ?? '');
}

/** The setting of the shot's body that leaves most open, if it has any. */
export const bestRecording = (shot: TrialShot): string | undefined =>
  recordingsOf(shot).sort((a, b) => a.rank - b.rank)[0]?.text;

/** Recording settings of the body in the shot's own rig. */
function recordings({ shot, meaning }: Where): Proposal[] {
  return shot && meaning?.of === 'shot' ? recordingsOf(shot) : [];
}

function recordingsOf(shot: TrialShot): Proposal[] {
  const { body, deliver } = shot.now.bench;
  const settings = body && ifKnown(body.fields['recording-modes']);
  if (!settings) return [];
  const wanted = deliver && ifKnown(deliver.resolution);
  return [...settings].map(([name, field]): Proposal => {
    const tried = shot.with('record', name as Ref);
    const { words, rank } = outcomeOf(tried, [angle]);
    const chosen = chosenSetting(tried.now.bench);
    const small = wanted && chosen && chosen.width < wanted.width ? IMPOSSIBLE : 0;
    const gain = chosen
      ? Math.log2(chosen.width * chosen.height * chosen.rate * (chosen.bitrate ?? 1))
      : 0;
    const slow =
      chosen && deliver?.rate.state === 'known' ? toNumber(deliver.rate.value) / chosen.rate : 1;
    const said = [
      field.state === 'known' ? recordingWords(field.value, shot.say) : '',
      slow < 1 ? message`slows to ${Math.round(slow * 100)}%` : '',
      words && shot.now.bench.shutter.known ? words : '',
      small ? message`below the delivery resolution` : '',
    ];
    return {
      text: name,
      detail: said.filter(Boolean).join(' · '),
      rank: (rank >= IMPOSSIBLE ? rank : 0) + small + 5 - gain / 20,
      kind: 'name',
      about: { kind: 'value', entry: shot.entry, path: ['record'], text: name },
    };
  });
}

const recordingWords = (fields: Recording, say: Say): string =>
  (['resolution', 'rate', 'bitrate'] as const)
    .flatMap((key) => {
      const field: Field<unknown> = fields[key];
      const { shape } = SHAPES.recording.keys[key]!;
      return field.state === 'known' && shape.kind === 'quantity'
        ? [shownField(shape.of, field, say)]
        : [];
    })
    .join(' · ');
