/** The rig as a weight, and what carries it. */
import { later } from '../../words/message.ts';
import { figure } from './declaration.ts';
import { number } from './shape.ts';

export const LOAD = {
  massKg: figure('massKg', {
    label: later`mass`,
    is: number('mass'),
    rules: ['head-overloaded', 'stand-overloaded'],
    review: { place: 210 },
  }),
  centreOfGravityMm: figure('centreOfGravityMm', {
    label: later`centre of gravity`,
    is: number('length'),
    review: { place: 220 },
  }),
  footMm: figure('footMm', {
    label: later`foot`,
    is: number('length'),
    only: 'support',
  }),
  momentAtFootNewtonMetres: figure('momentAtFootNewtonMetres', {
    label: later`moment at foot`,
    is: number('moment'),
    only: 'support',
    review: { place: 230 },
  }),
  momentAtMountNewtonMetres: figure('momentAtMountNewtonMetres', {
    label: later`moment at mount`,
    is: number('moment'),
  }),
  stabilityFactor: figure('stabilityFactor', {
    label: later`stability factor`,
    is: number('number'),
    only: 'boom',
    rules: ['boom-may-tip'],
    review: { place: 240 },
  }),
};
