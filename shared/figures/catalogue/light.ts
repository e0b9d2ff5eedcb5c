/** Exposure, and how the lamps' light falls over the frame and over time. */
import { later, message } from '../../words/message.ts';
import { notKnown } from '../figure.ts';
import { figure, figureIn } from './declaration.ts';
import { number } from './shape.ts';

export const LIGHT = {
  exposureErrorStops: figure('exposureErrorStops', {
    label: later`exposure error`,
    is: number('signedStops'),
    rules: ['exposure-off'],
    review: { place: 60, label: later`exposure` },
  }),
  isoNeeded: figure('isoNeeded', {
    label: later`ISO needed`,
    is: number('iso'),
    rules: ['iso-out-of-range'],
    review: { place: 70 },
  }),
  unevennessStops: figure('unevennessStops', {
    label: later`unevenness`,
    is: number('stops'),
    rules: ['uneven-light'],
    review: { place: 76 },
  }),
  highlightStops: figureIn(
    'highlight',
    ({ stops }) => stops,
  )({
    label: later`highlight over mid-grey`,
    is: number('signedStops'),
    only: 'glossy',
    rules: ['highlight-clips'],
    review: { place: 78 },
  }),
  highlightShare: figureIn(
    'highlightPlace',
    ({ share }) => share,
  )({
    label: later`highlight in the frame`,
    is: number('share'),
    only: 'glossy',
    rules: ['highlight-clips'],
  }),
  highlightLatitudeStops: figure('highlightLatitudeStops', {
    label: later`highlight latitude`,
    is: number('stops'),
    only: 'glossy',
    rules: ['highlight-clips'],
  }),
  shutterSeconds: figure('shutterSeconds', {
    label: later`shutter`,
    is: number('shutter'),
    rules: ['shutter-too-slow'],
  }),
  shutterAngleDeg: figure('shutterAngleDeg', {
    label: later`shutter angle`,
    is: number('degrees'),
    review: { place: 100 },
  }),
  flickerResidual: figure('flickerResidual', {
    label: later`flicker`,
    is: number('share'),
    rules: ['lamp-flicker'],
    review: { place: 110 },
  }),
  bandsInFrame: figureIn('worstFlicker', ({ residual, bandsInFrame, readoutIsOfMode }) =>
    residual === 0
      ? 0
      : (bandsInFrame ??
        notKnown(
          readoutIsOfMode
            ? message`the body's \`readout\` is not given`
            : message`the body's \`readout\` is longer than a frame of this recording mode`,
        )),
  )({
    label: later`flicker bands`,
    is: number('number'),
  }),
};
