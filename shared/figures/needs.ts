/** What a shot's figures wait for. */
import type { Figure, Need } from './figure.ts';
import type { ShotFigures } from './shot-figures.ts';

/** The figures that findings rest on: what they lack is worth asking for. */
const asked = (figures: ShotFigures): readonly Figure<unknown>[] => [
  figures.workingDistanceMm,
  figures.fieldMm,
  figures.depthMm.total,
  figures.depthMm.needed,
  figures.contrast,
  figures.exposureErrorStops,
  figures.shutterAngleDeg,
  figures.flickerResidual,
  figures.pullTravelMm,
];

/** How long a film lasts is only missed where a take has to fit in. */
const lifeNeeds = ({ shareOfLife: share }: ShotFigures): readonly Need[] =>
  !share.known && !share.silent && share.needs.every(({ key }) => key === 'lasts')
    ? share.needs
    : [];

export function needsOf(figures: ShotFigures): readonly Need[] {
  const all = [...asked(figures).flatMap(needsIn), ...lifeNeeds(figures)];
  return [
    ...new Map(
      all.map((need) => [`${need.at.file} ${need.at.entry} ${need.at.path.join('.')}`, need]),
    ).values(),
  ];
}

const needsIn = (figure: Figure<unknown>): readonly Need[] =>
  figure.known || figure.silent ? [] : figure.needs;
