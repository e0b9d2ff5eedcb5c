/** The rig as a weight, and what carries it. */
import { later } from '../../words/message.ts';
import { figure } from './declaration.ts';
import { number } from './shape.ts';

export const LOAD = {
  massKg: figure('massKg', {
    label: later`mass`,
    is: number('mass'),
    rules: ['head-overloaded', 'stand-overloaded'],
    review: { place: 210, label: later`mass` },
  }),
  centreOfGravityMm: figure('centreOfGravityMm', {
    label: later`centre of gravity`,
    is: number('length'),
    review: { place: 220, label: later`centre of gravity` },
  }),
  footMm: figure('footMm', {
    label: later`foot`,
    is: number('length'),
  }),
  momentAtFootNewtonMetres: figure('momentAtFootNewtonMetres', {
    label: later`moment at foot`,
    is: number('moment'),
    review: { place: 230, label: later`moment at foot` },
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
    review: { place: 240, label: later`stability factor` },
  }),
};
