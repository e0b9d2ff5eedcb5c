/** Reasons why a figure does not apply to a subject or a rig at all, told apart from what is merely missing. */
import { later } from '../words/message.ts';
import { notKnown, type UnknownFigure } from './figure.ts';

const REASONS = {
  mirror: later`the subject is not a mirror`,
  flatMirror: later`the subject is not a flat mirror`,
  gloss: later`a glossy subject has no mirror image of the whole frame`,
  glossy: later`the subject is not glossy`,
  clear: later`no light shines through the subject from behind`,
  bubble: later`the subject is not a bubble`,
  film: later`the subject is not a film`,
  levelFilm: later`the film is not level`,
  support: later`the rig has no support`,
  stand: later`the rig has no stand`,
  boom: later`the stand is not a boom`,
  sweep: later`the shot has no slide, pan or tilt`,
  pull: later`the shot has no focus pull`,
  timeLapse: later`the shot has no time-lapse`,
  ownSpeed: later`the clip plays in real time`,
  stack: later`the shot has no focus stack`,
} as const;

/** What some figures are of alone: a glossy subject stands for no mirror. */
export type Owner = Exclude<keyof typeof REASONS, 'gloss'>;

type What = keyof typeof REASONS;

/** Each is made once: most figures of most shots don't apply. */
const NONE = Object.fromEntries(
  Object.entries(REASONS).map(([what, reason]) => [
    what,
    { ...notKnown(reason), applies: false } satisfies UnknownFigure,
  ]),
) as unknown as Readonly<Record<What, UnknownFigure>>;

/** Not known, since the shot has no such thing. */
export const isNo = (what: What): UnknownFigure => NONE[what];
