/** Hover on a value: what it comes to in its shot, whom it names, or what it is read as. */

import type { Bench, LightInUse } from '../../figures/bench.ts';
import { entryAt, isOf } from '../../plan/entry-id.ts';
import { type EntryId, type FileId, fileName } from '../../plan/place.ts';
import { kindOf } from '../../quantity/index.ts';
import type { ScalarNode } from '../../text/tree.ts';
import { inLanguage, later, message } from '../../words/message.ts';
import type { Context } from '../../workspace/context.ts';
import type { PlanSpot } from '../spot.ts';
import { clipHover } from './clip.ts';
import { cutHover, musicHover } from './cut.ts';
import { dayHover } from './day.ts';
import { fieldText, valueText } from './entry-data.ts';
import { paragraphs, plain } from './markdown.ts';
import { nameHover } from './name.ts';
import { ruleHover } from './rule.ts';
import { apertureHover } from './shot/aperture.ts';
import { evennessHover } from './shot/evenness.ts';
import { exposureHover } from './shot/exposure.ts';
import { filmColoursHover } from './shot/film.ts';
import { loadHover } from './shot/load.ts';
import { bubbleHover, glossHover, levelFilmHover, mirrorLightHover } from './shot/mirror.ts';
import { flowHover, moveHover } from './shot/move.ts';
import { recordingHover } from './shot/recording.ts';
import { shutterHover } from './shot/shutter.ts';
import { sizeHover } from './shot/size.ts';
import { stackHover } from './shot/stack.ts';
import { takeHover } from './shot/take.ts';
import { throughHover } from './shot/through.ts';
import { tiltHover } from './shot/tilt.ts';
import { timeLapseHover } from './shot/time-lapse.ts';
import type { SaidShot } from './shot/view.ts';
import { whiteBalanceHover } from './shot/white-balance.ts';
import { Sure, withFoot } from './sure.ts';
import { takenWords } from './taken.ts';
import { verdictOn } from './verdict.ts';

/** Settings of a shot that come to something: by the first key below the shot. */
export const SETTING_HOVERS: Partial<Record<keyof Bench['fields'], (shot: SaidShot) => string>> = {
  field: sizeHover,
  magnification: sizeHover,
  ring: sizeHover,
  aperture: apertureHover,
  iso: exposureHover,
  shutter: shutterHover,
  tilt: tiltHover,
  'tilt-axis': tiltHover,
  record: recordingHover,
  'white-balance': whiteBalanceHover,
  move: moveHover,
  'subject-speed': flowHover,
  take: takeHover,
  'time-lapse': timeLapseHover,
  stack: stackHover,
};

export function valueHover(context: Context, spot: PlanSpot, node: ScalarNode): string | null {
  const { place, meaning } = spot;
  const { shape } = meaning;
  if (shape.kind === 'ref' && !shape.groups.includes('recordings'))
    return paragraphs(
      namedInShot(context, spot, nameHover(context, place.file, shape.groups, node.text)),
      cutHover(context, place.file, place.entry),
    );
  const ofSubject = subjectHover(context, spot);
  if (ofSubject !== null) return ofSubject;
  const lit = place.path.includes('at') ? litShot(context, spot) : null;
  if (lit)
    return paragraphs(readHover(context, spot, node), withFoot(evennessHover(lit), lit.sure));
  const setting = settingHover(context, spot);
  if (setting !== null) return setting;
  if (spot.kind.kind === 'clips' && meaning.key === 'file')
    return (
      clipHover(context, place.file, spot.kind.name, node.text, Number(place.path[0])) ??
      readHover(context, spot, node)
    );
  if (spot.kind.kind === 'clips' && place.path.includes('set'))
    return paragraphs(
      takenWords(context, place.file, spot.kind.name, Number(place.path[0])),
      readHover(context, spot, node),
    );
  const ofDay = dayHover(context, place);
  if (ofDay !== null) return paragraphs(ofDay, readHover(context, spot, node));
  const inEdit = editHover(context, spot, node);
  if (inEdit !== null) return inEdit;
  if (place.entry === 'use') return usedFileHover(context, place.file, node);
  return readHover(context, spot, node);
}

/** What a value comes to, for its key: null where nothing is calculated from it alone. */
export function figuresHover(context: Context, spot: PlanSpot): string | null {
  const { shape, key } = spot.meaning;
  const ofReference = shape.kind === 'ref' || key === 'light';
  return ofReference
    ? namedInShot(context, spot, null)
    : (subjectHover(context, spot) ?? settingHover(context, spot));
}

/** What a film or a clear subject looks like in the first shot of it. */
function subjectHover(context: Context, spot: PlanSpot): string | null {
  const { path } = spot.place;
  const isThickness = path.at(-1) === 'thickness';
  if (!isThickness && path[0] !== 'birefringence') return null;
  const shot = shotOfSubject(context, spot);
  if (!shot) return null;
  const words =
    (isThickness && filmColoursHover(shot)) || (path[0] !== 'film' && throughHover(shot));
  return words ? withFoot(words, shot.sure) : null;
}

/** What a value of a cut is read as, and what the cut comes to. */
function editHover(context: Context, spot: PlanSpot, node: ScalarNode): string | null {
  const { file, entry, path } = spot.place;
  const comesTo =
    entry === entryAt('edit', 'music')
      ? musicHover(context, file)
      : path[0] === 'about'
        ? null
        : cutHover(context, file, entry);
  return comesTo === null ? null : paragraphs(comesTo, readHover(context, spot, node));
}

function settingHover(context: Context, { place }: PlanSpot): string | null {
  const hover = SETTING_HOVERS[place.path[0] as keyof Bench['fields']];
  if (!hover || !context.analysis.isShot(place.entry)) return null;
  const shot = saidShot(context, place.file, place.entry);
  const words = shot && withFoot(hover(shot), shot.sure);
  return words
    ? paragraphs(words, verdictOn(context, place.file, shot, String(place.path[0])))
    : null;
}

export function saidShot(
  { analysis, say }: Context,
  file: FileId,
  entry: EntryId,
): SaidShot | null {
  const bench = analysis.bench(file, entry);
  const figures = analysis.figures(file, entry);
  const uncertain = analysis.uncertain(file, entry);
  return bench && figures && uncertain
    ? { bench, figures, say, sure: new Sure(uncertain, say) }
    : null;
}

/** What a name in a shot stands for, and what it comes to in this very shot. */
function namedInShot(context: Context, { place }: PlanSpot, data: string | null): string | null {
  if (!context.analysis.isShot(place.entry)) return data;
  const shot = saidShot(context, place.file, place.entry);
  if (!shot) return data;
  const [key] = place.path;
  const here =
    key === 'light'
      ? mirrorLightHover(shot) || throughHover(shot) || evennessHover(shot)
      : key === 'subject'
        ? bubbleHover(shot) || levelFilmHover(shot) || throughHover(shot) || glossHover(shot)
        : key === 'rig'
          ? loadHover(shot)
          : '';
  return paragraphs(data, withFoot(here, shot.sure)) || null;
}

/** The first shot, of any plan that is open, that films the subject at this place. */
export function shotOfSubject(context: Context, { place }: PlanSpot): SaidShot | null {
  const { analysis, store } = context;
  for (const file of store.files())
    for (const entry of analysis.shots(file)) {
      const subject = analysis.bench(file, entry)?.subject;
      if (subject?.file === place.file && subject.entry === place.entry)
        return saidShot(context, file, entry);
    }
  return null;
}

/** The shot in which a light stands elsewhere, or the first, of any open plan, that a light stands in. */
function litShot(context: Context, { place }: PlanSpot): SaidShot | null {
  const { analysis, store } = context;
  if (analysis.isShot(place.entry))
    return place.path[0] === 'relight' ? saidShot(context, place.file, place.entry) : null;
  if (!isOf('lights', place.entry)) return null;
  for (const file of store.files())
    for (const entry of analysis.shots(file)) {
      const lights = analysis.bench(file, entry)?.lights;
      const isIn = ({ readAt }: LightInUse): boolean =>
        readAt.at.entry === place.entry && readAt.at.file === place.file;
      if (lights?.known && lights.value.some(isIn)) return saidShot(context, file, entry);
    }
  return null;
}

/** What the text is read as, and what the key is for. */
function readHover({ say }: Context, { meaning }: PlanSpot, node: ScalarNode): string | null {
  const { shape, keyShape } = meaning;
  const { title, description } = keyShape;
  if (meaning.key === 'severity' && meaning.name !== undefined)
    return ruleHover(meaning.name, node.text);
  if (shape.kind === 'enum' && shape.values.includes(node.text))
    return paragraphs(`${inLanguage(title)}: **${plain(node.text)}**`, inLanguage(description));
  if (shape.kind !== 'quantity') return null;
  const kind = kindOf(shape.of);
  const exact = kind.parse(node.text);
  const parsed = exact.ok || !shape.rough ? exact : kind.rough?.parse(node.text);
  if (!parsed?.ok) return null;
  const { value } = parsed;
  const isRange = 'range' in parsed;
  return paragraphs(
    `${inLanguage(title)}: **${fieldText(shape, parsed, say, meaning.key)}**`,
    isRange &&
      message`Middle: ${valueText(shape, value, say, meaning.key)}. Figures are calculated there and at both ends.`,
    inLanguage(description),
  );
}

const UNREAD = {
  'not-found': later`was not found`,
  'outside-workspace': later`is outside the workspace`,
  'too-large': later`is too large to be read`,
  'not-text': later`is not text`,
  unreadable: later`can't be read`,
} as const;

function usedFileHover(
  { analysis, store }: Context,
  file: FileId,
  node: ScalarNode,
): string | null {
  const use = analysis.names.uses(file).find(({ written }) => written === node.text);
  if (!use?.target.ok) return null;
  const state = store.state(use.target.file);
  const name = `**${plain(fileName(use.target.file))}**`;
  if (state.state === 'refused') return `${name} ${inLanguage(UNREAD[state.why])}.`;
  return state.state === 'given'
    ? message`${name} brings in its kit, rigs, lights and subjects.`
    : message`${name} is still to be read.`;
}
