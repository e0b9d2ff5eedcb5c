/** Reasons why a figure does not apply to a subject or a rig at all, told apart from what is merely missing. */
import { notKnown, type UnknownFigure } from './figure.ts';

const REASONS = {
  mirror: 'the subject is no mirror',
  flatMirror: 'the subject is no flat mirror',
  bubble: 'the subject is no bubble',
  film: 'the subject is no film',
  levelFilm: 'the film does not stand level',
  stand: 'no stand carries the rig',
  boom: 'the stand is no boom',
  pull: 'focus is not pulled',
} as const;

const all: ReadonlySet<string> = new Set(Object.values(REASONS));

/** Not known, since the shot has no such thing. */
export const isNo = (what: keyof typeof REASONS): UnknownFigure => notKnown(REASONS[what]);

/** Whether a reason says that the figure has no meaning here, so that nobody misses it. */
export const doesNotApply = (reason: string | undefined): boolean =>
  reason !== undefined && all.has(reason);
