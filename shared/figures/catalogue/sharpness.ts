/** What is sharp, and what diffraction leaves of it. */
import { later } from '../../words/message.ts';
import { figure, figureBy, group } from './declaration.ts';
import { number } from './shape.ts';

export const SHARPNESS = {
  depthMm: group('depthMm', later`depth`, {
    front: {
      label: later`depth front`,
      short: later`front`,
      is: number('length'),
    },
    behind: {
      label: later`depth behind`,
      short: later`behind`,
      is: number('length'),
    },
    total: { label: later`depth total`, short: later`total`, is: number('length') },
    needed: {
      label: later`depth needed`,
      short: later`needed`,
      is: number('length'),
      rules: ['depth-short'],
      review: { place: 50, label: later`depth of field needed` },
    },
  }),
  usableDepthMm: figure('usableDepthMm', {
    label: later`usable depth of field`,
    is: number('length'),
    rules: ['depth-short', 'focus-drifts', 'stack-steps-too-coarse'],
    review: { place: 40, label: later`depth of field` },
  }),
  circleOfConfusionMm: figure('circleOfConfusionMm', {
    label: later`circle of confusion`,
    is: number('length'),
  }),
  airyUm: figure('airyUm', {
    label: later`Airy disk`,
    is: number('micrometres'),
  }),
  pixelUm: figure('pixelUm', {
    label: later`pixel`,
    is: number('micrometres'),
  }),
  // Size on the sensor over size of the subject is m.
  pixelAtSubjectUm: figureBy(
    ['pixelUm', 'magnification'],
    (pixelUm, m) => pixelUm / m,
  )({
    label: later`pixel at the subject`,
    is: number('micrometres'),
    review: { place: 75 },
  }),
  // c* = max(c, Airy disk), as depth is judged by.
  blurAtSubjectUm: figureBy(
    ['circleOfConfusionMm', 'airyUm', 'magnification'],
    (circleMm, airyUm, m) => Math.max(1000 * circleMm, airyUm) / m,
  )({
    label: later`blur at the subject`,
    is: number('micrometres'),
  }),
  contrast: figure('contrast', {
    label: later`contrast`,
    is: number('fraction'),
    rules: ['diffraction-eats-detail'],
    review: { place: 80, label: later`contrast after diffraction` },
  }),
  contrastAtNyquist: figure('contrastAtNyquist', {
    label: later`contrast at Nyquist`,
    is: number('fraction'),
  }),
  bestEffectiveFNumber: figure('bestEffectiveFNumber', {
    label: later`best effective f-number`,
    is: number('fNumber'),
  }),
  leastBlurUm: figure('leastBlurUm', {
    label: later`smallest blur`,
    is: number('micrometres'),
  }),
};
