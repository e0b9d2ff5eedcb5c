/** How the picture is made: size, light lost on the way, distances. */
import { later } from '../../words/message.ts';
import type { NamedLoss } from '../shot-figures.ts';
import { figure } from './declaration.ts';
import { list, number, part, range, record, size, WORD } from './shape.ts';

export const PICTURE = {
  magnification: figure('magnification', {
    label: later`magnification`,
    is: number('magnification'),
    about: 'm, subject to sensor',
    review: { place: 20, label: later`magnification` },
  }),
  lensMagnification: figure('lensMagnification', {
    label: later`lens magnification`,
    is: number('magnification'),
    about: 'm1, of the lens with everything behind it, as it sees the subject',
  }),
  ringMagnification: figure('ringMagnification', {
    label: later`ring magnification`,
    is: number('magnification'),
    about: "m0, the lens's own by its ring; 0 at infinity",
  }),
  reach: figure('reach', {
    label: later`magnification range`,
    is: range('magnification'),
    about: '[smallest, largest] magnification: ring at infinity, ring at its closest',
    rules: ['field-out-of-reach'],
  }),
  fieldMm: figure('fieldMm', {
    label: later`field`,
    is: size('length'),
    about: '[width, height] of the recorded frame in the plane of focus',
    review: { place: 10, label: later`field` },
  }),
  effectiveFNumber: figure('effectiveFNumber', {
    label: later`effective f-number`,
    is: number('fNumber'),
    about: 'N_eff = N·(1 + m1/p)·M_c, effective at the sensor',
    rules: ['effective-aperture'],
    review: { place: 30, label: later`effective f-number` },
  }),
  lightLossStops: figure('lightLossStops', {
    label: later`light loss`,
    is: number('stops'),
    about: '2·log2(N_eff/N), without the loss of filters and glass',
    rules: ['rig-order'],
  }),
  lossByPart: figure('lossByPart', {
    label: later`loss by part`,
    is: list<NamedLoss>(
      record<NamedLoss>({ part: part(null, WORD), stops: part(null, number('stops')) }),
    ),
    about: 'the same by part: `part`, `stops`',
    isLong: true,
  }),
  workingDistanceMm: figure('workingDistanceMm', {
    label: later`working distance`,
    is: number('length'),
    about: 'subject to front edge of the rig; the `length` of filters and close-up lenses counts',
    rules: ['no-room'],
    review: { place: 120, label: later`working distance` },
  }),
  subjectToSensorMm: figure('subjectToSensorMm', {
    label: later`subject to sensor`,
    is: number('length'),
    about: '',
  }),
  pupilDiameterMm: figure('pupilDiameterMm', {
    label: later`pupil diameter`,
    is: number('length'),
    about: 'entrance pupil',
  }),
};
