/** What moves in a shot: subject, camera, focus. */
import { later } from '../../words/message.ts';
import { figure, figureIn } from './declaration.ts';
import { list, number, size } from './shape.ts';

export const MOVEMENT = {
  subjectSpeedMmPerS: figure('subjectSpeedMmPerS', {
    label: later`subject speed`,
    is: number('speed'),
  }),
  smearPx: figure('smearPx', {
    label: later`motion blur`,
    is: number('pixels'),
    rules: ['motion-blur'],
    review: { place: 90 },
  }),
  crossingS: figure('crossingS', {
    label: later`crossing of the frame`,
    is: number('seconds'),
    only: 'sweep',
    rules: ['crosses-too-fast'],
  }),
  jitterPx: figure('jitterPx', {
    label: later`vibration`,
    is: number('pixels'),
    only: 'stand',
    rules: ['vibration-seen'],
  }),
  travelMm: figure('travelMm', {
    label: later`travel`,
    is: number('length'),
    rules: ['focus-drifts'],
  }),
  pullFieldsMm: figureIn('pullEnds', (ends) => ends.map(({ fieldMm }) => fieldMm))({
    label: later`focus pull, fields`,
    is: list<readonly [number, number]>(size('length'), 'to'),
    only: 'pull',
  }),
  pullTravelMm: figure('pullTravelMm', {
    label: later`focus pull, travel`,
    is: number('length'),
    only: 'pull',
  }),
  pullBreathing: figure('pullBreathing', {
    label: later`focus pull, breathing`,
    is: number('ratio'),
    only: 'pull',
    rules: ['focus-breathes'],
  }),
  stackStepMm: figure('stackStepMm', {
    label: later`stack, step`,
    is: number('length'),
    only: 'stack',
  }),
  stackFrames: figure('stackFrames', {
    label: later`stack, frames`,
    is: number('number'),
    only: 'stack',
    rules: ['stack-short'],
    review: { place: 55 },
  }),
  stackDepthMm: figure('stackDepthMm', {
    label: later`stack, depth`,
    is: number('length'),
    only: 'stack',
    rules: ['stack-short'],
  }),
  stackTravelMm: figure('stackTravelMm', {
    label: later`stack, travel`,
    is: number('length'),
    only: 'stack',
    rules: ['stack-short'],
  }),
  stackTimeS: figure('stackTimeS', {
    label: later`stack, time`,
    is: number('seconds'),
    only: 'stack',
    rules: ['stack-outlasts-subject', 'moves-in-stack'],
    review: { place: 175 },
  }),
};
