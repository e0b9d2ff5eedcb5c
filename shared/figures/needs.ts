/** The missing values that a shot's figures need. */
import type { Figure, Need } from './figure.ts';
import type { ShotFigures } from './shot-figures.ts';

/** The figures that findings depend on, so that their inputs are worth asking for. */
export type Asked =
  | 'working-distance'
  | 'field'
  | 'depth'
  | 'depth-needed'
  | 'contrast'
  | 'exposure'
  | 'shutter-angle'
  | 'flicker'
  | 'focus-pull'
  | 'stack'
  | 'life';

/** A missing value, and the figure that needs it. */
export interface NeedOf extends Need {
  readonly wantedFor: readonly Asked[];
}

const asked = (
  figures: ShotFigures,
): Readonly<Record<Exclude<Asked, 'life'>, Figure<unknown>>> => ({
  'working-distance': figures.workingDistanceMm,
  field: figures.fieldMm,
  depth: figures.depthMm.total,
  'depth-needed': figures.depthMm.needed,
  contrast: figures.contrast,
  exposure: figures.exposureErrorStops,
  'shutter-angle': figures.shutterAngleDeg,
  flicker: figures.flickerResidual,
  'focus-pull': figures.pullTravelMm,
  stack: figures.stackTimeS,
});

/** The lifetime of a film is only needed if a take has to fit in it. */
const lifeNeeds = ({ shareOfLife: share }: ShotFigures): readonly Need[] =>
  !share.known && !share.silent && share.needs.every(({ key }) => key === 'lifetime')
    ? share.needs
    : [];

export function needsOf(figures: ShotFigures): readonly NeedOf[] {
  const found = new Map<string, Need & { wantedFor: Asked[] }>();
  const add = (needs: readonly Need[], wanted: Asked): void => {
    for (const need of needs) {
      const key = `${need.at.file} ${need.at.entry} ${need.at.path.join('.')}`;
      const known = found.get(key);
      if (known) known.wantedFor.push(wanted);
      else found.set(key, { ...need, wantedFor: [wanted] });
    }
  };
  for (const [wanted, figure] of Object.entries(asked(figures)))
    add(needsIn(figure), wanted as Asked);
  add(lifeNeeds(figures), 'life');
  return [...found.values()];
}

const needsIn = (figure: Figure<unknown>): readonly Need[] =>
  figure.known || figure.silent ? [] : figure.needs;
