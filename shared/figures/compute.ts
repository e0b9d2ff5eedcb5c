/** All figures of a shot. They are a function of its bench alone. */
import type { Bench } from './bench.ts';
import { clearanceFigures } from './clearance.ts';
import { evennessFigures } from './evenness.ts';
import { apertureFilled } from './flat-mirror.ts';
import { type EagerPull, focusPullFigures } from './focus-pull.ts';
import { stackFigures } from './focus-stack.ts';
import { highlightFigures } from './highlight.ts';
import { demanding, demandingAll, HELD, type Makers } from './lazily.ts';
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
  OpticalFigures,
  RecordingFigures,
  SharpnessFigures,
  ShotFigures,
  ShownLight,
  StackFigures,
  ThroughFigures,
  TimeFigures,
  TimeLapseFigures,
} from './shot-figures.ts';
import { throughFigures } from './through.ts';
import { timeFigures } from './time.ts';
import { timeLapseFigures } from './time-lapse.ts';

/** The groups of figures of one shot, each made when it is first asked for, and then kept. */
class Groups {
  readonly bench: Bench;
  readonly optical: OpticalFigures;
  readonly time: TimeFigures;
  #sharpness: SharpnessFigures | undefined;
  #shown: ShownLight | undefined;
  #exposure: Pick<LightFigures, 'exposureErrorStops' | 'isoNeeded'> | undefined;
  #mirror: Makers<MirrorFigures> | undefined;
  #pull: EagerPull | undefined;
  #pulled: Makers<FocusPullFigures> | undefined;
  #stack: Makers<StackFigures> | undefined;
  #motion: MotionFigures | undefined;
  #load: Makers<LoadFigures> | undefined;
  #clearance: ClearanceFigures | undefined;
  #evenness: Makers<EvennessFigures> | undefined;
  #light: Makers<LightFigures> | undefined;
  #highlight: Makers<HighlightFigures> | undefined;
  #through: Makers<ThroughFigures> | undefined;
  #recording: Makers<RecordingFigures> | undefined;
  #timeLapse: Makers<TimeLapseFigures> | undefined;

  constructor(bench: Bench) {
    this.bench = bench;
    this.optical = opticalFigures(bench);
    this.time = timeFigures(bench);
  }

  get sharpness(): SharpnessFigures {
    this.#sharpness ??= sharpnessFigures(this.bench, this.optical);
    return this.#sharpness;
  }

  get shown(): ShownLight {
    this.#shown ??= lightFigures(this.bench, this.optical, this.time);
    return this.#shown;
  }

  get mirror(): Makers<MirrorFigures> {
    this.#mirror ??= mirrorFigures(this.bench, this.optical, this.sharpness);
    return this.#mirror;
  }

  get pull(): EagerPull {
    this.#pull ??= focusPullFigures(this.bench, this.optical, this.sharpness);
    return this.#pull;
  }

  get pulled(): Makers<FocusPullFigures> {
    const { pull } = this;
    this.#pulled ??= {
      pullEnds: () => pull.pullEnds,
      pullTravelMm: () => pull.pullTravelMm,
      pullDepthMm: () => pull.pullDepthMm,
      pullBreathing: () => pull.pullBreathing,
      pullMarks: () => pull.pullMarks(),
    };
    return this.#pulled;
  }

  get stack(): Makers<StackFigures> {
    this.#stack ??= stackFigures(this.bench, this.optical, this.sharpness, this.time);
    return this.#stack;
  }

  get motion(): MotionFigures {
    this.#motion ??= motionFigures(
      this.bench,
      this.optical,
      this.sharpness,
      this.time,
      () => this.pull,
    );
    return this.#motion;
  }

  /** Of a flat mirror the exposure waits for what the mirror shows. */
  get exposure(): Pick<LightFigures, 'exposureErrorStops' | 'isoNeeded'> {
    this.#exposure ??= isFlatMirror(this.bench)
      ? reachedLight(
          this.bench,
          this.shown,
          this.mirror.lostByLight(),
          (light) => apertureFilled(light, this.bench, this.optical),
          (lit) => lightFigures(lit, this.optical, this.time),
        )
      : this.shown;
    return this.#exposure;
  }

  get light(): Makers<LightFigures> {
    this.#light ??= {
      exposureErrorStops: () => this.exposure.exposureErrorStops,
      isoNeeded: () => this.exposure.isoNeeded,
      glassLossStops: () => this.shown.glassLossStops,
      shownLight: () => this.shown,
    };
    return this.#light;
  }

  get load(): Makers<LoadFigures> {
    this.#load ??= loadFigures(this.bench);
    return this.#load;
  }

  get clearance(): ClearanceFigures {
    this.#clearance ??= clearanceFigures(this.bench, this.optical);
    return this.#clearance;
  }

  get evenness(): Makers<EvennessFigures> {
    this.#evenness ??= evennessFigures(this.bench, this.optical, this.time);
    return this.#evenness;
  }

  get highlight(): Makers<HighlightFigures> {
    this.#highlight ??= highlightFigures(this.bench, this.optical, this.time, this.shown);
    return this.#highlight;
  }

  get through(): Makers<ThroughFigures> {
    this.#through ??= throughFigures(this.bench, this.optical);
    return this.#through;
  }

  get recording(): Makers<RecordingFigures> {
    this.#recording ??= recordingFigures(this.bench, {
      stackFrames: () => this.stack.stackFrames(),
      stackTimeS: () => this.stack.stackTimeS(),
    });
    return this.#recording;
  }

  get timeLapse(): Makers<TimeLapseFigures> {
    this.#timeLapse ??= timeLapseFigures(
      this.bench,
      this.optical,
      () => this.sharpness,
      this.time,
      () => this.motion,
    );
    return this.#timeLapse;
  }
}

/**
 * Figures that not everybody asks for: some take long, many only a reader looks at, and a finding that
 * is looked at again under other conditions needs one or two.
 */
const onDemand = {};

/** Nothing but the type of what `onDemand` answers with. */
const DEMANDED = {
  ...demandingAll<Groups, SharpnessFigures>(
    onDemand,
    {
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
    },
    (groups) => groups.sharpness,
  ),
  ...demandingAll<Groups, MotionFigures>(
    onDemand,
    {
      subjectSpeedMmPerS: true,
      smearPx: true,
      crossingS: true,
      jitterPx: true,
    },
    (groups) => groups.motion,
  ),
  ...demanding<Groups, LoadFigures>(
    onDemand,
    {
      massKg: true,
      centreOfGravityMm: true,
      footMm: true,
      momentAtFootNewtonMetres: true,
      momentAtMountNewtonMetres: true,
      stabilityFactor: true,
    },
    (groups) => groups.load,
  ),
  ...demanding<Groups, FocusPullFigures>(
    onDemand,
    {
      pullEnds: true,
      pullTravelMm: true,
      pullDepthMm: true,
      pullBreathing: true,
      pullMarks: true,
    },
    (groups) => groups.pulled,
  ),
  ...demanding<Groups, StackFigures>(
    onDemand,
    {
      stackStepMm: true,
      stackFrames: true,
      stackDepthMm: true,
      stackTravelMm: true,
      stackTimeS: true,
      stackMarks: true,
    },
    (groups) => groups.stack,
  ),
  ...demandingAll<Groups, ClearanceFigures>(
    onDemand,
    { lightInTheWay: true },
    (groups) => groups.clearance,
  ),
  ...demanding<Groups, EvennessFigures>(
    onDemand,
    { unevennessStops: true },
    (groups) => groups.evenness,
  ),
  ...demanding<Groups, HighlightFigures>(
    onDemand,
    {
      highlight: true,
      highlightPlace: true,
      highlightLatitudeStops: true,
    },
    (groups) => groups.highlight,
  ),
  ...demanding<Groups, ThroughFigures>(
    onDemand,
    {
      backlight: true,
      passedShare: true,
      retardationNm: true,
      retardationColours: true,
    },
    (groups) => groups.through,
  ),
  ...demanding<Groups, RecordingFigures>(
    onDemand,
    {
      recordedS: true,
      recordedBytes: true,
      frameBytes: true,
    },
    (groups) => groups.recording,
  ),
  ...demanding<Groups, TimeLapseFigures>(
    onDemand,
    {
      timeLapseFrames: true,
      timeLapseS: true,
      intervalLeftS: true,
      growthPx: true,
      growthCrossingS: true,
      batteryShare: true,
      playingS: true,
    },
    (groups) => groups.timeLapse,
  ),
  ...demanding<Groups, MirrorFigures>(
    onDemand,
    {
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
    },
    (groups) => groups.mirror,
  ),
  ...demanding<Groups, LightFigures>(
    onDemand,
    {
      exposureErrorStops: true,
      isoNeeded: true,
      glassLossStops: true,
      shownLight: true,
    },
    (groups) => groups.light,
  ),
};

export function figuresOf(bench: Bench): ShotFigures {
  const groups = new Groups(bench);
  const figures = {
    __proto__: onDemand,
    ...groups.optical,
    ...groups.time,
    [HELD]: groups,
  };
  return figures as unknown as OpticalFigures & TimeFigures & typeof DEMANDED;
}
