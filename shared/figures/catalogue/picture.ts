/** How the picture is made: size, light lost on the way, distances. */
import { later } from '../../words/message.ts';
import type { NamedLoss } from '../shot-figures.ts';
import { figure } from './declaration.ts';
import { list, number, part, range, record, size, WORD } from './shape.ts';

export const PICTURE = {
  magnification: figure('magnification', {
    label: later`magnification`,
    is: number('magnification'),
    review: { place: 20 },
  }),
  lensMagnification: figure('lensMagnification', {
    label: later`lens magnification`,
    is: number('magnification'),
  }),
  ringMagnification: figure('ringMagnification', {
    label: later`ring magnification`,
    is: number('magnification'),
  }),
  reach: figure('reach', {
    label: later`magnification range`,
    is: range('magnification'),
    rules: ['field-out-of-reach'],
  }),
  fieldMm: figure('fieldMm', {
    label: later`field`,
    is: size('length'),
    review: { place: 10 },
  }),
  effectiveFNumber: figure('effectiveFNumber', {
    label: later`effective f-number`,
    is: number('fNumber'),
    rules: ['effective-aperture'],
    review: { place: 30 },
  }),
  lightLossStops: figure('lightLossStops', {
    label: later`light loss`,
    is: number('stops'),
    rules: ['rig-order'],
  }),
  lossByPart: figure('lossByPart', {
    label: later`loss by part`,
    is: list<NamedLoss>(
      record<NamedLoss>({ part: part(null, WORD), stops: part(null, number('stops')) }),
    ),
    isLong: true,
  }),
  workingDistanceMm: figure('workingDistanceMm', {
    label: later`working distance`,
    is: number('length'),
    rules: ['no-room'],
    review: { place: 120 },
  }),
  subjectToSensorMm: figure('subjectToSensorMm', {
    label: later`subject to sensor`,
    is: number('length'),
  }),
  pupilDiameterMm: figure('pupilDiameterMm', {
    label: later`pupil diameter`,
    is: number('length'),
  }),
};
