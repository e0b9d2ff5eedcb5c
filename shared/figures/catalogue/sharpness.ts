/** What is sharp, and what diffraction leaves of it. */
import { later } from '../../words/message.ts';
import { figure, group } from './declaration.ts';
import { number } from './shape.ts';

export const SHARPNESS = {
  depthMm: group('depthMm', later`depth`, {
    front: {
      label: later`depth front`,
      short: later`front`,
      is: number('length'),
      about: 'geometric depth of field in front of the plane of focus',
    },
    behind: {
      label: later`depth behind`,
      short: later`behind`,
      is: number('length'),
      about: 'behind it, or `"endless"`',
    },
    total: { label: later`depth total`, short: later`total`, is: number('length'), about: '' },
    needed: {
      label: later`depth needed`,
      short: later`needed`,
      is: number('length'),
      about:
        'what subject, tilt and move need sharp at once along the lens axis; in a focus pull, what the pull does not pass through',
      rules: ['depth-short'],
      review: { place: 50, label: later`depth of field needed` },
    },
  }),
  usableDepthMm: figure('usableDepthMm', {
    label: later`usable depth of field`,
    is: number('length'),
    about: 'depth by the larger of circle of confusion and Airy disk; findings use this one',
    rules: ['depth-short', 'focus-drifts'],
    review: { place: 40, label: later`depth of field` },
  }),
  circleOfConfusionMm: figure('circleOfConfusionMm', {
    label: later`circle of confusion`,
    is: number('length'),
    about: 'on the sensor',
  }),
  airyUm: figure('airyUm', {
    label: later`Airy disk`,
    is: number('micrometres'),
    about: 'diameter of the Airy disk, 2.44·λ·N_eff at 0.55 µm',
  }),
  pixelUm: figure('pixelUm', {
    label: later`pixel`,
    is: number('micrometres'),
    about: 'the coarser of recorded and delivered pixel, on the sensor',
  }),
  contrast: figure('contrast', {
    label: later`contrast`,
    is: number('fraction'),
    about: 'left by diffraction at half the Nyquist frequency of that pixel',
    rules: ['diffraction-eats-detail'],
    review: { place: 80, label: later`contrast after diffraction` },
  }),
  contrastAtNyquist: figure('contrastAtNyquist', {
    label: later`contrast at Nyquist`,
    is: number('fraction'),
    about: 'the same at the Nyquist frequency',
  }),
  bestEffectiveFNumber: figure('bestEffectiveFNumber', {
    label: later`best effective f-number`,
    is: number('fNumber'),
    about: 'at which the needed depth is sharpest',
  }),
  leastBlurUm: figure('leastBlurUm', {
    label: later`smallest blur`,
    is: number('micrometres'),
    about:
      'blur at both ends of the depth at that f-number, on the sensor; defocus and Airy disk in quadrature',
  }),
};
