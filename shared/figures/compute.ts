/** All figures of a shot. They are a function of its bench alone. */
import type { Bench } from './bench.ts';
import { clearanceFigures } from './clearance.ts';
import { evennessFigures } from './evenness.ts';
import { apertureFilled } from './flat-mirror.ts';
import { focusPullFigures } from './focus-pull.ts';
import { stackFigures } from './focus-stack.ts';
import { highlightFigures } from './highlight.ts';
import { demanding, once } from './lazily.ts';
import { lightFigures } from './light.ts';
import { loadFigures } from './load.ts';
import { mirrorFigures } from './mirror.ts';
import { isFlatMirror } from './mirror-kind.ts';
import { motionFigures } from './motion.ts';
import { opticalFigures } from './optical.ts';
import { reachedLight } from './reached-light.ts';
import { recordingFigures } from './recording.ts';
import { sharpnessFigures } from './sharpness.ts';
import type {
  ClearanceFigures,
  EvennessFigures,
  FocusPullFigures,
  HighlightFigures,
  LightFigures,
  LoadFigures,
  MirrorFigures,
  RecordingFigures,
  ShotFigures,
  StackFigures,
  ThroughFigures,
  TimeLapseFigures,
} from './shot-figures.ts';
import { throughFigures } from './through.ts';
import { timeFigures } from './time.ts';
import { timeLapseFigures } from './time-lapse.ts';

/** Figures that take long to calculate and that few shots need, or that only a reader looks at. */
const onDemand = {};

const weighedBy = demanding<LoadFigures>(onDemand, {
  massKg: true,
  centreOfGravityMm: true,
  footMm: true,
  momentAtFootNewtonMetres: true,
  momentAtMountNewtonMetres: true,
  stabilityFactor: true,
});

const pulledBy = demanding<FocusPullFigures>(onDemand, {
  pullEnds: true,
  pullTravelMm: true,
  pullDepthMm: true,
  pullBreathing: true,
  pullMarks: true,
});

const stackedBy = demanding<StackFigures>(onDemand, {
  stackStepMm: true,
  stackFrames: true,
  stackDepthMm: true,
  stackTravelMm: true,
  stackTimeS: true,
  stackMarks: true,
});

const clearedBy = demanding<ClearanceFigures>(onDemand, { lightInTheWay: true });

const evenedBy = demanding<EvennessFigures>(onDemand, { unevennessStops: true });

const highlitBy = demanding<HighlightFigures>(onDemand, {
  highlight: true,
  highlightPlace: true,
  highlightLatitudeStops: true,
});

const passedBy = demanding<ThroughFigures>(onDemand, {
  backlight: true,
  passedShare: true,
  retardationNm: true,
  retardationColours: true,
});

const recordedBy = demanding<RecordingFigures>(onDemand, {
  recordedS: true,
  recordedBytes: true,
  frameBytes: true,
});

const lapsedBy = demanding<TimeLapseFigures>(onDemand, {
  timeLapseFrames: true,
  timeLapseS: true,
  intervalLeftS: true,
  growthPx: true,
  growthCrossingS: true,
  batteryShare: true,
  playingS: true,
});
const mirroredBy = demanding<MirrorFigures>(onDemand, {
  mirrorView: true,
  leastTiltRad: true,
  greatestTiltByDepthRad: true,
  litTiltsRad: true,
  tiltWindow: true,
  neededLight: true,
  darkFrame: true,
  lostByLight: true,
  shade: true,
  focusBehindNearestMm: true,
  bubbleImages: true,
  filmColours: true,
  filmBands: true,
  lifeS: true,
  shareOfLife: true,
  domeDepthMm: true,
  flatSavesStops: true,
  reflectance: true,
  strayRatio: true,
});

type Exposure = Pick<LightFigures, 'exposureErrorStops' | 'isoNeeded'>;

/** Of a flat mirror the exposure waits for what the mirror shows; of all else it is there already. */
const reachedBy = demanding<Exposure>(onDemand, { exposureErrorStops: true, isoNeeded: true });

export function figuresOf(bench: Bench): ShotFigures {
  const optical = opticalFigures(bench);
  const sharpness = sharpnessFigures(bench, optical);
  const time = timeFigures(bench);
  const shown = lightFigures(bench, optical, time);
  const mirror = once(() => mirrorFigures(bench, optical, sharpness));
  const pull = once(() => focusPullFigures(bench, optical, sharpness));
  const stack = once(() => stackFigures(bench, optical, sharpness, time));
  const motion = motionFigures(bench, optical, sharpness, time, pull);
  const reached = (): Exposure =>
    reachedLight(
      bench,
      shown,
      mirror().lostByLight(),
      (light) => apertureFilled(light, bench, optical),
      (lit) => lightFigures(lit, optical, time),
    );
  const figures = {
    __proto__: onDemand,
    ...optical,
    ...sharpness,
    ...(isFlatMirror(bench)
      ? {
          glassLossStops: shown.glassLossStops,
          ...reachedBy(() => {
            const light = once(reached);
            return {
              exposureErrorStops: () => light().exposureErrorStops,
              isoNeeded: () => light().isoNeeded,
            };
          }),
        }
      : shown),
    shownLight: shown,
    ...time,
    ...motion,
    ...weighedBy(() => loadFigures(bench)),
    ...pulledBy(() => ({
      pullEnds: () => pull().pullEnds,
      pullTravelMm: () => pull().pullTravelMm,
      pullDepthMm: () => pull().pullDepthMm,
      pullBreathing: () => pull().pullBreathing,
      pullMarks: () => pull().pullMarks(),
    })),
    ...stackedBy(stack),
    ...clearedBy(() => ({
      lightInTheWay: once(() => clearanceFigures(bench, optical).lightInTheWay),
    })),
    ...evenedBy(() => ({
      unevennessStops: once(evennessFigures(bench, optical, time).unevennessStops),
    })),
    ...highlitBy(() => {
      const made = highlightFigures(bench, optical, time, shown);
      const { highlight, highlightPlace, highlightLatitudeStops } = made;
      return {
        highlight: once(highlight),
        highlightPlace: once(highlightPlace),
        highlightLatitudeStops: once(highlightLatitudeStops),
      };
    }),
    ...passedBy(() => throughFigures(bench, optical)),
    ...recordedBy(() =>
      recordingFigures(bench, {
        stackFrames: () => stack().stackFrames(),
        stackTimeS: () => stack().stackTimeS(),
      }),
    ),
    ...lapsedBy(() => timeLapseFigures(bench, optical, sharpness, time, motion)),
    ...mirroredBy(mirror),
  };
  return figures;
}
