/** What the takes of a shot record. */
import { later } from '../../words/message.ts';
import { figure } from './declaration.ts';
import { number } from './shape.ts';

export const RECORDING = {
  recordedS: figure('recordedS', {
    label: later`recorded time`,
    is: number('seconds'),
    review: { place: 170, label: later`recorded` },
  }),
  recordedBytes: figure('recordedBytes', {
    label: later`recorded data`,
    is: number('bytes'),
    review: { place: 180 },
  }),
};
