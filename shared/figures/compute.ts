/** All figures of a shot. They are a function of its bench alone. */
import type { Bench } from './bench.ts';
import { clearanceFigures } from './clearance.ts';
import { evennessFigures } from './evenness.ts';
import { apertureFilled } from './flat-mirror.ts';
import { focusPullFigures } from './focus-pull.ts';
import { stackFigures } from './focus-stack.ts';
import { highlightFigures } from './highlight.ts';
import { demanding, demandingAll, once } from './lazily.ts';
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
  MotionFigures,
  RecordingFigures,
  SharpnessFigures,
  ShotFigures,
  StackFigures,
  ThroughFigures,
  TimeLapseFigures,
} from './shot-figures.ts';
import { throughFigures } from './through.ts';
import { timeFigures } from './time.ts';
import { timeLapseFigures } from './time-lapse.ts';

/**
 * Figures that not everybody asks for: some take long, many only a reader looks at, and a finding that
 * is looked at again under other conditions needs one or two.
 */
const onDemand = {};

const sharpBy = demandingAll<SharpnessFigures>(onDemand, {
  circleOfConfusionMm: true,
  depthMm: true,
  usableDepthMm: true,
  airyUm: true,
  pixelUm: true,
  contrast: true,
  contrastAtNyquist: true,
  bestEffectiveFNumber: true,
  leastBlurUm: true,
  wholeDepthMm: true,
  travelMm: true,
});

const movedBy = demandingAll<MotionFigures>(onDemand, {
  subjectSpeedMmPerS: true,
  smearPx: true,
  crossingS: true,
  jitterPx: true,
});

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

const litBy = demanding<LightFigures>(onDemand, {
  exposureErrorStops: true,
  isoNeeded: true,
  glassLossStops: true,
  shownLight: true,
});

export function figuresOf(bench: Bench): ShotFigures {
  const optical = opticalFigures(bench);
  const time = timeFigures(bench);
  const sharpness = once(() => sharpnessFigures(bench, optical));
  const shown = once(() => lightFigures(bench, optical, time));
  const mirror = once(() => mirrorFigures(bench, optical, sharpness()));
  const pull = once(() => focusPullFigures(bench, optical, sharpness()));
  const stack = once(() => stackFigures(bench, optical, sharpness(), time));
  const motion = once(() => motionFigures(bench, optical, sharpness(), time, pull));
  // Of a flat mirror the exposure waits for what the mirror shows.
  const exposure = once(() =>
    isFlatMirror(bench)
      ? reachedLight(
          bench,
          shown(),
          mirror().lostByLight(),
          (light) => apertureFilled(light, bench, optical),
          (lit) => lightFigures(lit, optical, time),
        )
      : shown(),
  );
  const figures = {
    __proto__: onDemand,
    ...optical,
    ...time,
    ...sharpBy(sharpness),
    ...movedBy(motion),
    ...litBy(() => ({
      exposureErrorStops: () => exposure().exposureErrorStops,
      isoNeeded: () => exposure().isoNeeded,
      glassLossStops: () => shown().glassLossStops,
      shownLight: shown,
    })),
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
      const made = highlightFigures(bench, optical, time, shown());
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
    ...lapsedBy(() => timeLapseFigures(bench, optical, sharpness(), time, motion())),
    ...mirroredBy(mirror),
  };
  return figures;
}
