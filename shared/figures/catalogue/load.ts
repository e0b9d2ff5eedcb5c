/** The rig as a weight, and what carries it. */
import { later } from '../../words/message.ts';
import { figure } from './declaration.ts';
import { number } from './shape.ts';

export const LOAD = {
  massKg: figure('massKg', {
    label: later`mass`,
    is: number('mass'),
    about: 'of the whole rig, without head and stand',
    rules: ['head-overloaded', 'stand-overloaded'],
    review: { place: 210, label: later`mass` },
  }),
  centreOfGravityMm: figure('centreOfGravityMm', {
    label: later`centre of gravity`,
    is: number('length'),
    about: 'from the sensor plane forward',
    review: { place: 220, label: later`centre of gravity` },
  }),
  footMm: figure('footMm', {
    label: later`foot`,
    is: number('length'),
    about: 'where the rig is supported, from the sensor plane forward',
  }),
  momentAtFootNewtonMetres: figure('momentAtFootNewtonMetres', {
    label: later`moment at foot`,
    is: number('moment'),
    about: 'moment of the rig about its foot; positive tips the lens down',
    review: { place: 230, label: later`moment at foot` },
  }),
  momentAtMountNewtonMetres: figure('momentAtMountNewtonMetres', {
    label: later`moment at mount`,
    is: number('moment'),
    about: 'moment of everything in front of the body about the lens mount',
  }),
  stabilityFactor: figure('stabilityFactor', {
    label: later`stability factor`,
    is: number('number'),
    about: 'of a boom: righting moment over tipping moment; over 1 is stable',
    only: 'boom',
    rules: ['boom-may-tip'],
    review: { place: 240, label: later`stability factor` },
  }),
};
