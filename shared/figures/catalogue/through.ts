/** Light from behind, and what of it passes a clear subject. */
import { later } from '../../words/message.ts';
import type { RetardationColours } from '../shot-figures.ts';
import { figure, figureIn } from './declaration.ts';
import { list, number, part, range, record, WORD } from './shape.ts';

type Swatch = RetardationColours['swatches'][number];

export const THROUGH = {
  backlitShare: figureIn(
    'backlight',
    ({ share }) => share,
  )({
    label: later`frame lit from behind`,
    is: number('share'),
    only: 'clear',
    rules: ['backlight-too-small'],
    review: { place: 155 },
  }),
  passedShare: figure('passedShare', {
    label: later`light that passes`,
    is: number('share'),
    only: 'clear',
  }),
  retardationNm: figure('retardationNm', {
    label: later`retardation`,
    is: range('nanometres'),
    only: 'clear',
  }),
  retardationColours: figure('retardationColours', {
    label: later`colours between crossed polarisers`,
    is: record<RetardationColours>({
      swatches: part(
        later`swatches`,
        list<Swatch>(
          record<Swatch>({
            retardationNm: part(null, number('nanometres')),
            hex: part(null, WORD),
            // A reader has the code beside it.
            xyz: null,
          }),
        ),
      ),
      orders: part(later`orders`, range('number')),
    }),
    only: 'clear',
    isLong: true,
  }),
};
