/** All figures of a shot laid out on the bench. A function of the bench alone. */
import type { Bench } from './bench.ts';
import { clearanceFigures } from './clearance.ts';
import { evennessFigures } from './evenness.ts';
import { focusPullFigures } from './focus-pull.ts';
import { demanding, once } from './lazily.ts';
import { lightFigures } from './light.ts';
import { loadFigures } from './load.ts';
import { mirrorFigures } from './mirror.ts';
import { motionFigures } from './motion.ts';
import { opticalFigures } from './optical.ts';
import { recordingFigures } from './recording.ts';
import { sharpnessFigures } from './sharpness.ts';
import type {
  ClearanceFigures,
  EvennessFigures,
  FocusPullFigures,
  LoadFigures,
  MirrorFigures,
  RecordingFigures,
  ShotFigures,
} from './shot-figures.ts';
import { timeFigures } from './time.ts';

/** What costs much and is read of few shots, or only where somebody looks. */
const onDemand = {};

const weighedBy = demanding<LoadFigures>(onDemand, [
  'massKg',
  'centreOfGravityMm',
  'footMm',
  'momentAtFootNm',
  'momentAtMountNm',
  'tippingFactor',
]);

const pulledBy = demanding<FocusPullFigures>(onDemand, ['pullEnds', 'pullTravelMm']);

const clearedBy = demanding<ClearanceFigures>(onDemand, ['lightInTheWay']);

const evenedBy = demanding<EvennessFigures>(onDemand, ['unevennessStops']);

const recordedBy = demanding<RecordingFigures>(onDemand, ['recordedS', 'recordedBytes']);

const mirroredBy = demanding<MirrorFigures>(onDemand, [
  'mirrorView',
  'leastTiltRad',
  'greatestTiltByDepthRad',
  'litTiltsRad',
  'tiltWindow',
  'neededLight',
  'darkFrame',
  'focusBehindNearestMm',
  'bubbleImages',
  'filmColours',
  'lifeS',
  'shareOfLife',
  'domeDepthMm',
  'flatSavesStops',
  'reflectance',
  'strayRatio',
]);

export function figuresOf(bench: Bench): ShotFigures {
  const optical = opticalFigures(bench);
  const sharpness = sharpnessFigures(bench, optical);
  const time = timeFigures(bench);
  const figures = {
    __proto__: onDemand,
    ...optical,
    ...sharpness,
    ...lightFigures(bench, optical, time),
    ...time,
    ...motionFigures(bench, optical, sharpness, time),
    ...weighedBy(() => loadFigures(bench)),
    ...pulledBy(() => {
      const pull = once(() => focusPullFigures(bench, optical));
      return { pullEnds: () => pull().pullEnds, pullTravelMm: () => pull().pullTravelMm };
    }),
    ...clearedBy(() => ({
      lightInTheWay: once(() => clearanceFigures(bench, optical).lightInTheWay),
    })),
    ...evenedBy(() => ({
      unevennessStops: once(evennessFigures(bench, optical, time).unevennessStops),
    })),
    ...recordedBy(() => recordingFigures(bench)),
    ...mirroredBy(() => mirrorFigures(bench, optical, sharpness)),
  };
  // What the prototype answers is not seen by the compiler.
  return figures as unknown as ShotFigures;
}
