/** What the takes of a shot record. */
import { later } from '../../words/message.ts';
import { figure } from './declaration.ts';
import { number } from './shape.ts';

export const RECORDING = {
  recordedS: figure('recordedS', {
    label: later`recorded time`,
    is: number('seconds'),
    about: 'running time of all takes of the shot, without settling',
    review: { place: 170, label: later`recorded` },
  }),
  recordedBytes: figure('recordedBytes', {
    label: later`recorded data`,
    is: number('bytes'),
    about: 'size of these takes: bit rate times length',
    review: { place: 180, label: later`recorded data` },
  }),
};
