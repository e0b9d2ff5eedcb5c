/** Reasons why a figure does not apply to a subject or a rig at all, told apart from what is merely missing. */
import { inLanguage, later } from '../words/message.ts';
import { notKnown, type UnknownFigure } from './figure.ts';

const REASONS = {
  mirror: later`the subject is not a mirror`,
  flatMirror: later`the subject is not a flat mirror`,
  gloss: later`reflections in a glossy subject are not judged`,
  bubble: later`the subject is not a bubble`,
  film: later`the subject is not a film`,
  levelFilm: later`the film is not level`,
  stand: later`the rig has no stand`,
  boom: later`the stand is not a boom`,
  pull: later`the shot has no focus pull`,
} as const;

/** Not known, since the shot has no such thing. */
export const isNo = (what: keyof typeof REASONS): UnknownFigure => notKnown(REASONS[what]);

/** Whether a reason, as a figure keeps it or as it is said, means that nobody misses the figure. */
export const doesNotApply = (reason: string | undefined): boolean =>
  reason !== undefined &&
  Object.values(REASONS).some((no) => reason === no || reason === inLanguage(no));
