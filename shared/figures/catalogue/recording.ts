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
  frameBytes: figure('frameBytes', {
    label: later`data per frame`,
    is: number('bytes'),
  }),
  timeLapseFrames: figure('timeLapseFrames', {
    label: later`time-lapse, frames`,
    is: number('number'),
    only: 'timeLapse',
  }),
  timeLapseS: figure('timeLapseS', {
    label: later`time-lapse, real time`,
    is: number('seconds'),
    only: 'timeLapse',
    review: { place: 171, label: later`time-lapse` },
  }),
  playingS: figure('playingS', {
    label: later`playing time`,
    is: number('seconds'),
    only: 'ownSpeed',
    review: { place: 172 },
  }),
  intervalLeftS: figure('intervalLeftS', {
    label: later`left of the interval`,
    is: number('seconds'),
    only: 'timeLapse',
    rules: ['interval-does-not-fit'],
  }),
  growthPx: figure('growthPx', {
    label: later`growth per frame`,
    is: number('pixels'),
    only: 'timeLapse',
    review: { place: 95 },
  }),
  growthCrossingS: figure('growthCrossingS', {
    label: later`crosses the frame in`,
    is: number('seconds'),
    only: 'timeLapse',
    rules: ['growth-jumps'],
  }),
  batteryShare: figure('batteryShare', {
    label: later`of one battery`,
    is: number('ratio'),
    only: 'timeLapse',
    rules: ['battery-in-time-lapse'],
  }),
};
