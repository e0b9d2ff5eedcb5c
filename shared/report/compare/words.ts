/** A comparison in words, the same for a terminal and for a review: what changed, what follows. */
import type { JsonFigure } from '../../figures/json.ts';
import { doesNotApply } from '../../figures/not-applicable.ts';
import type { Say } from '../../rules/say.ts';
import { figureLabel, figureWords } from '../figures-text.ts';
import type { EntryChange, FieldChange, FigureChange, ShotChange } from './plan.ts';

/** "aperture" · "f/16" → "f/22" */
export interface ChangeWords {
  readonly label: string;
  readonly before: string;
  readonly after: string;
}

/** The figures that a reviewer decides by, in the order of their weight, and what they are called. */
const DECIDING: Readonly<Record<string, string>> = {
  fieldMm: 'field',
  magnification: 'magnification',
  effectiveFNumber: 'effective f-number',
  judgedDepthMm: 'depth of field',
  'depthMm.needed': 'depth needed',
  exposureErrorStops: 'exposure',
  isoNeeded: 'ISO needed',
  contrast: 'contrast left by diffraction',
  smearPx: 'smear',
  shutterAngleDeg: 'shutter angle',
  flickerResidual: 'flicker',
  workingDistanceMm: 'working distance',
  leastTiltDeg: 'least tilt',
  tiltWindowDeg: 'tilt window',
  blackShare: 'black share of the frame',
  strayRatio: 'background over film',
  recordedS: 'recorded',
  recordedBytes: 'recorded data',
  lifeS: 'life of the film',
  shareOfLife: 'take and settling, of its life',
  massKg: 'mass',
  centreOfGravityMm: 'centre of gravity',
  momentAtFootNm: 'moment at foot',
  tippingFactor: 'tipping factor',
};

/** What heads findings that no single shot has. */
export const IN_NO_SHOT = 'found in no single shot';

const NOT_WRITTEN = 'not written';

export const fieldWords = ({ path, before, after }: FieldChange): ChangeWords => ({
  label: path,
  before: before ?? NOT_WRITTEN,
  after: after ?? NOT_WRITTEN,
});

/** What follows, without what reads the same. */
export function followsWords(figures: readonly FigureChange[], say: Say): readonly ChangeWords[] {
  const order = Object.keys(DECIDING);
  return figures
    .filter(({ figure }) => figure in DECIDING)
    .sort((a, b) => order.indexOf(a.figure) - order.indexOf(b.figure))
    .flatMap(({ figure, before, after, notKnown }): ChangeWords[] => {
      const said = (value: unknown, why: string | undefined): string =>
        doesNotApply(why)
          ? 'not for this subject'
          : figureWords(figure, value as JsonFigure, why, say);
      const [was, is] = [said(before, notKnown.before), said(after, notKnown.after)];
      const label = DECIDING[figure] ?? figureLabel(figure);
      return was === is ? [] : [{ label, before: was, after: is }];
    });
}

/** "drift", "drift, called glide before", "drift, new" */
export function changedName(change: EntryChange | ShotChange): string {
  const name = 'shot' in change ? change.shot : change.entry;
  if (change.before !== undefined) return `${name}, called ${change.before} before`;
  return change.state === 'changed' ? name : `${name}, ${change.state}`;
}

/** Whether nothing of it is left to be said: a difference too small to read. */
export const saysNothing = (change: ShotChange, say: Say): boolean =>
  change.state === 'changed' &&
  change.before === undefined &&
  change.fields.length === 0 &&
  followsWords(change.figures, say).length === 0 &&
  change.findings.gone.length + change.findings.new.length + change.findings.changed.length === 0;

export const sameShotsWords = (count: number): string =>
  `${count} ${count === 1 ? 'shot stays' : 'shots stay'} as ${count === 1 ? 'it was' : 'they were'}.`;
