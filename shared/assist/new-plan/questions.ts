/** What a new plan asks of data sheets, in their own words. */
import type { DefName } from '../../plan/generated/names.ts';
import type { QuantityId } from '../../quantity/index.ts';
import { later } from '../../words/message.ts';

/** One value that a sheet may have. */
export interface Question {
  readonly key: string;
  /** As sheets call it. */
  readonly ask: string;
  /** For the help of the command line. */
  readonly about: string;
  readonly example: string;
  readonly kind: QuantityId | 'modes';
  /** The key of the plan that it goes to, where sheets print it in other forms as well. */
  readonly plan?: { readonly def: DefName; readonly key: string };
}

export type Sheet = 'body' | 'lens' | 'light';

export const QUESTIONS: Readonly<Record<Sheet, readonly Question[]>> = {
  body: [
    {
      key: 'sensor',
      ask: later`sensor format or size`,
      about: later`Sensor format or size by the body's data sheet, such as full-frame.`,
      example: '36 x 24 mm',
      kind: 'sensor-size',
    },
    {
      key: 'pixels',
      ask: later`pixels`,
      about: later`Pixels by the body's data sheet, such as 6000x4000.`,
      example: '6000 x 4000',
      kind: 'pixels',
    },
    {
      key: 'modes',
      ask: later`recording modes`,
      about: later`Recording modes by the body's data sheet, such as \`1920 x 1080 50 fps\`.`,
      example: '1920 x 1080 50 fps, 3840 x 2160 25 fps',
      kind: 'modes',
    },
    {
      key: 'body-mass',
      ask: later`mass of the body`,
      about: later`Mass by the body's data sheet, such as 0.66kg.`,
      example: '0.66 kg',
      kind: 'mass',
    },
  ],
  lens: [
    {
      key: 'focal-length',
      ask: later`focal length`,
      about: later`Focal length by the lens's data sheet, such as 90mm.`,
      example: '90 mm',
      kind: 'length',
    },
    {
      key: 'f-range',
      ask: later`f-range`,
      about: later`Range of f-numbers by the lens's data sheet, such as f/2.8-22.`,
      example: 'f/2.8 to 22',
      kind: 'f-number-range',
    },
    {
      key: 'closest',
      ask: later`closest focusing distance`,
      about: later`Closest focusing distance by the lens's data sheet, such as 0.28m.`,
      example: '0.28 m',
      kind: 'length',
    },
    {
      key: 'magnification',
      ask: later`largest magnification`,
      about: later`Largest magnification by the lens's data sheet, such as 1:2.`,
      example: '1x',
      kind: 'magnification',
    },
    {
      key: 'filter-thread',
      ask: later`filter thread`,
      about: later`Filter thread by the lens's data sheet, such as M62.`,
      example: '62 mm',
      kind: 'length',
      plan: { def: 'lens', key: 'filter-thread' },
    },
    {
      key: 'lens-length',
      ask: later`length of the lens`,
      about: later`Length by the lens's data sheet, such as 120mm.`,
      example: '120 mm',
      kind: 'length',
    },
    {
      key: 'lens-mass',
      ask: later`mass of the lens`,
      about: later`Mass by the lens's data sheet, such as 600g.`,
      example: '0.6 kg',
      kind: 'mass',
    },
  ],
  light: [
    {
      key: 'lux',
      ask: later`lux at a distance`,
      about: later`Lux at a distance by the light's data sheet, such as "2200 lx @ 1 m".`,
      example: '2200 lx @ 1 m',
      kind: 'illuminance',
      plan: { def: 'light', key: 'illuminance' },
    },
    {
      key: 'face',
      ask: later`size of the light's face`,
      about: later`Size of the light's face by its data sheet, such as \`300 x 200 mm\`.`,
      example: '300 x 200 mm',
      kind: 'size',
    },
  ],
};

/** What a sheet says, by the keys of its questions; the text as a person copied it. */
export type Answers = Readonly<Record<string, string>>;
