/** What moves in a shot: subject, camera, focus. */
import { later } from '../../words/message.ts';
import { figure, figureIn } from './declaration.ts';
import { list, number, size } from './shape.ts';

export const MOVEMENT = {
  subjectSpeedMmPerS: figure('subjectSpeedMmPerS', {
    label: later`subject speed`,
    is: number('speed'),
    about: 'fastest movement across the axis, subject and camera together',
  }),
  smearPx: figure('smearPx', {
    label: later`motion blur`,
    is: number('pixels'),
    about: 'motion blur in one exposure, in pixels of the coarser kind',
    rules: ['motion-blur'],
    review: { place: 90, label: later`motion blur` },
  }),
  travelMm: figure('travelMm', {
    label: later`travel`,
    is: number('length'),
    about: 'how far a move travels along the axis',
    rules: ['focus-drifts'],
  }),
  pullFieldsMm: figureIn('pullEnds', (ends) => ends.map(({ fieldMm }) => fieldMm))({
    label: later`focus pull, fields`,
    is: list<readonly [number, number]>(size('length'), 'to'),
    about: '[width, height] of the field at both ends of a focus pull: [from, to]',
    only: 'pull',
  }),
  pullTravelMm: figure('pullTravelMm', {
    label: later`focus pull, travel`,
    is: number('length'),
    about: 'how far a focus pull moves the plane of focus along the axis',
    only: 'pull',
  }),
};
