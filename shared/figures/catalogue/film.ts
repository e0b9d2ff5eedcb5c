/** The liquid film: its colours, and how long it lasts. */
import type { FilmBandShare } from '../../film/returned.ts';
import { later } from '../../words/message.ts';
import type { FilmColours } from '../shot-figures.ts';
import { figure, figureIn } from './declaration.ts';
import { list, number, part, record, WORD } from './shape.ts';

type Swatch = FilmColours['swatches'][number];
type Band = FilmColours['bands'][number];

const BAND = record<FilmBandShare>({
  thicknessNm: part(later`thickness`, number('nanometres')),
  reflectance: part(later`reflectance`, number('fraction')),
});

export const FILM = {
  filmColours: figure('filmColours', {
    label: later`film colours`,
    is: record<FilmColours>({
      swatches: part(
        later`swatches`,
        list<Swatch>(
          record<Swatch>({
            thicknessNm: part(null, number('nanometres')),
            hex: part(null, WORD),
            // A reader has the code beside it.
            xyz: null,
          }),
        ),
      ),
      bands: part(
        later`bands`,
        list<Band>(
          record<Band>({
            band: part(null, WORD),
            fromNm: part(null, number('nanometres')),
            toNm: part(null, number('nanometres')),
          }),
        ),
      ),
    }),
    only: 'film',
    isLong: true,
  }),
  darkestBand: figureIn(
    'filmBands',
    ({ darkest }) => darkest,
  )({
    label: later`darkest band`,
    is: BAND,
    only: 'film',
  }),
  brightestBand: figureIn(
    'filmBands',
    ({ brightest }) => brightest,
  )({
    label: later`brightest band`,
    is: BAND,
    only: 'film',
  }),
  lifeS: figure('lifeS', {
    label: later`film lifetime`,
    is: number('seconds'),
    only: 'film',
    review: { place: 190 },
  }),
  shareOfLife: figure('shareOfLife', {
    label: later`share of film lifetime`,
    is: number('ratio'),
    only: 'film',
    rules: ['take-exceeds-lifetime'],
    review: { place: 200, label: later`take and wait, share of film lifetime` },
  }),
  domeDepthMm: figure('domeDepthMm', {
    label: later`depth of a dome`,
    is: number('length'),
    only: 'levelFilm',
  }),
  flatSavesStops: figure('flatSavesStops', {
    label: later`saved by lying flat`,
    is: number('stops'),
    only: 'levelFilm',
  }),
};
