/** Exposure, and how the lamps' light falls over the frame and over time. */
import { later, message } from '../../words/message.ts';
import { notKnown } from '../figure.ts';
import { figure, figureIn } from './declaration.ts';
import { number } from './shape.ts';

export const LIGHT = {
  exposureErrorStops: figure('exposureErrorStops', {
    label: later`exposure error`,
    is: number('signedStops'),
    about: 'positive: overexposed',
    rules: ['exposure-off'],
    review: { place: 60, label: later`exposure` },
  }),
  isoNeeded: figure('isoNeeded', {
    label: later`ISO needed`,
    is: number('iso'),
    about: 'ISO for a correct exposure, not rounded',
    rules: ['iso-out-of-range'],
    review: { place: 70, label: later`ISO needed` },
  }),
  unevennessStops: figure('unevennessStops', {
    label: later`unevenness`,
    is: number('stops'),
    about:
      'falloff over the frame, from its brightest place to its darkest, edges included; 0 on a mirror-like subject; `"endless"` if part of the frame gets no light',
  }),
  shutterSeconds: figure('shutterSeconds', {
    label: later`shutter`,
    is: number('shutter'),
    about: '',
    rules: ['shutter-too-slow'],
  }),
  shutterAngleDeg: figure('shutterAngleDeg', {
    label: later`shutter angle`,
    is: number('degrees'),
    about: '360 times shutter time times recording rate',
    review: { place: 100, label: later`shutter angle` },
  }),
  flickerResidual: figure('flickerResidual', {
    label: later`flicker`,
    is: number('share'),
    about:
      "how much a lamp's light varies from frame to frame, as half its peak-to-peak share; of the worst light, and if its `waveform` is unknown, the most that any waveform can leave",
    rules: ['lamp-flicker'],
    review: { place: 110, label: later`flicker` },
  }),
  bandsInFrame: figureIn('worstFlicker', ({ residual, bandsInFrame }) =>
    residual === 0 ? 0 : (bandsInFrame ?? notKnown(message`the body's \`readout\` is not given`)),
  )({
    label: later`flicker bands`,
    is: number('number'),
    about:
      "flicker bands over the height of the picture: the lamp's frequency times the body's readout",
  }),
};
