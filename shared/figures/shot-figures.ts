/** All figures of one shot, each with the places of its inputs or the reason why it is unknown. */

import type { FilmBandShare } from '../film/returned.ts';
import type { ImageInBubble } from '../mirror/bubble-image.ts';
import type { FrameSide } from '../mirror/coverage.ts';
import type { ImagePlace } from '../mirror/image-place.ts';
import type { MirrorView } from '../mirror/least-tilt.ts';
import type { NeededLight } from '../mirror/patch.ts';
import type { Shade } from '../mirror/seen-lit.ts';
import type { Chain } from '../optics/arrangement.ts';
import type { ChainTrace } from '../optics/chain.ts';
import type { Figure } from './figure.ts';

/** Light lost in one part of the rig, stops. */
export interface NamedLoss {
  readonly part: string;
  readonly stops: number;
}

interface DepthFigures {
  /** In front of the plane of focus, mm. */
  readonly front: Figure<number>;
  /** Behind it, mm; Infinity: endless. */
  readonly behind: Figure<number>;
  readonly total: Figure<number>;
  /**
   * The depth along the axis that has to be sharp at the same time, mm. In a focus pull, only the
   * depth that the pull doesn't pass through; nothing of what a stack takes in turn.
   */
  readonly needed: Figure<number>;
}

/** How the picture is made: from the sensor to the subject. */
export interface OpticalFigures {
  readonly chain: Figure<Chain>;
  readonly trace: Figure<ChainTrace>;
  /** m, subject to sensor. */
  readonly magnification: Figure<number>;
  /** m1, magnification of the lens in this rig. */
  readonly lensMagnification: Figure<number>;
  /** m0, magnification at which the ring of the lens is set. */
  readonly ringMagnification: Figure<number>;
  /** Smallest and largest magnification of the rig: ring at infinity, ring at its closest. */
  readonly reach: Figure<readonly [least: number, most: number]>;
  /** Width and height of the recorded frame in the plane of focus, mm. */
  readonly fieldMm: Figure<readonly [width: number, height: number]>;
  readonly effectiveFNumber: Figure<number>;
  /** 2·log2(N_eff/N), filters and glass not counted. */
  readonly lightLossStops: Figure<number>;
  readonly lossByPart: Figure<readonly NamedLoss[]>;
  readonly workingDistanceMm: Figure<number>;
  readonly subjectToSensorMm: Figure<number>;
  readonly pupilDiameterMm: Figure<number>;
}

/** What is sharp, and what diffraction leaves of it. */
export interface SharpnessFigures {
  /** c, on the sensor, mm. */
  readonly circleOfConfusionMm: Figure<number>;
  /** Geometric depth, with c. */
  readonly depthMm: DepthFigures;
  /** Depth by c* = max(c, Airy disk), mm; findings use it. */
  readonly usableDepthMm: Figure<number>;
  readonly airyUm: Figure<number>;
  /** The coarser of recorded and delivered pixel, on the sensor. */
  readonly pixelUm: Figure<number>;
  /** At half the coarser pixel's Nyquist frequency, 0 to 1. */
  readonly contrast: Figure<number>;
  readonly contrastAtNyquist: Figure<number>;
  /** For the depth needed. */
  readonly bestEffectiveFNumber: Figure<number>;
  /** The blur that remains there, defocus and Airy disk in quadrature, µm on the sensor. */
  readonly leastBlurUm: Figure<number>;
  /**
   * The depth along the axis that subject, tilt and move need, mm, whether at the same time or in
   * turn.
   */
  readonly wholeDepthMm: Figure<number>;
  /** What a move adds to the depth needed, mm along the axis; 0 without one. */
  readonly travelMm: Figure<number>;
}

/** The exposure by the shot's lights, as if a mirror-like subject showed each of them. */
export interface ShownLight {
  /** Positive: too much light. With `iso: auto` 0, as far as the body can follow. */
  readonly exposureErrorStops: Figure<number>;
  /** At which the exposure would be right, not rounded. */
  readonly isoNeeded: Figure<number>;
  /** Glass and filters, stops. */
  readonly glassLossStops: Figure<number>;
}

/** The exposure; of a flat mirror only by lights that the frame shows. */
export interface LightFigures extends ShownLight {
  /**
   * The exposure as if all lights were shown: for a search that checks the mirror last, since that
   * takes longest.
   */
  readonly shownLight: ShownLight;
}

/** How evenly the lights of the shot cover the frame. */
export interface EvennessFigures {
  /** From the brightest place of the frame to the darkest, stops; Infinity: part of it gets none. */
  readonly unevennessStops: Figure<number>;
}

/** The brightest image of a light in a glossy subject. */
export interface Highlight {
  readonly light: string;
  /** Over mid-grey at the shot's exposure; negative: under it. */
  readonly stops: number;
}

/** Where the flat face of a glossy subject shows a light. */
export interface HighlightPlace extends ImagePlace {
  /** Nothing of the subject faces elsewhere, so that the light shows there and nowhere else. */
  readonly isFlat: boolean;
}

export interface HighlightFigures {
  readonly highlight: Figure<Highlight>;
  readonly highlightPlace: Figure<HighlightPlace>;
  /** What the body records over mid-grey. */
  readonly highlightLatitudeStops: Figure<number>;
}

/** The light that fills most of the frame from behind. */
export interface Backlight {
  readonly light: string;
  /** Share of the frame before which its face stands: 1 a bright field, 0 a dark one. */
  readonly share: number;
}

/** Colours of a birefringent subject between crossed polarisers, at 45°. */
export interface RetardationColours {
  readonly swatches: readonly {
    readonly retardationNm: number;
    readonly hex: string;
    /** Absolute; the light through the pair set in line is Y 100. */
    readonly xyz: readonly [x: number, y: number, z: number];
  }[];
  /** The first and the last order of colour that they run through. */
  readonly orders: readonly [from: number, to: number];
}

export interface ThroughFigures {
  readonly backlight: Figure<Backlight>;
  /** Share of the first light behind that comes through subject and polarisers, at 45°. */
  readonly passedShare: Figure<number>;
  /** Γ = Δn·d over the thickness. */
  readonly retardationNm: Figure<readonly [from: number, to: number]>;
  readonly retardationColours: Figure<RetardationColours>;
}

/** The light of the shot that leaves the most flicker. */
export interface LampFlicker {
  readonly light: string;
  /** If the waveform is unknown, the most that any waveform leaves. */
  readonly residual: number;
  /** The waveform of the light. */
  readonly course: 'sine' | 'pulsed' | 'unknown';
  /** How often the lamp pulses. */
  readonly lampHz: number;
  /**
   * How fast bands roll through the picture; 0: they are stationary; null: the frame rate is
   * unknown.
   */
  readonly rollHz: number | null;
  /** Bands over the height of the picture, by how long the sensor reads out; null: not known. */
  readonly bandsInFrame: number | null;
  /** The body's readout fits into a frame of the recording mode, or isn't known. */
  readonly readoutIsOfMode: boolean;
  /** The depth of modulation isn't stated and was taken as full. */
  readonly depthAssumed: boolean;
}

export interface TimeFigures {
  readonly shutterSeconds: Figure<number>;
  readonly shutterAngleDeg: Figure<number>;
  /**
   * Share by which the light still varies from frame to frame, 0 to 1; the worst light of the
   * shot.
   */
  readonly flickerResidual: Figure<number>;
  readonly worstFlicker: Figure<LampFlicker>;
}

/** Where a flat mirror-like subject may be tilted, rad. */
export interface MirrorWindow {
  readonly leastRad: number;
  readonly greatestRad: number;
  /** Width of the window; negative: how much it lacks. */
  readonly openRad: number;
  /** The light limits it too. If the position of the light is unknown, only mirror and depth do. */
  readonly byLight: boolean;
}

/** The part of the frame that a light leaves dark. */
export interface LostLight {
  readonly light: string;
  /** Of the frame's light, 0 to 1. */
  readonly share: number;
  readonly side: FrameSide;
}

export interface FlatMirrorFigures {
  readonly mirrorView: Figure<MirrorView>;
  /** The smallest tilt at which the subject no longer shows the lens. */
  readonly leastTiltRad: Figure<number>;
  /** The largest tilt that the available depth allows. */
  readonly greatestTiltByDepthRad: Figure<number>;
  /** The tilts at which the shot's best light fills the frame; both 0 where none does. */
  readonly litTiltsRad: Figure<{ readonly leastRad: number; readonly greatestRad: number }>;
  readonly tiltWindow: Figure<MirrorWindow>;
  /** Position and size that the light needs at this tilt, at its present distance. */
  readonly neededLight: Figure<NeededLight>;
  /**
   * The missing share of the frame's light, and its side. A point that half the pupil sees lit
   * counts half.
   */
  readonly darkFrame: Figure<LostLight>;
  /** The same by each light of the shot, in their order. */
  readonly lostByLight: Figure<readonly Figure<LostLight>[]>;
  /** The black part of the frame, and the dimmed part, which part of the pupil sees lit. */
  readonly shade: Figure<Shade>;
}

/**
 * Front of the rig or light as a bubble shows it, in pixels of the recording from the frame's
 * middle.
 */
export interface BubbleImage extends ImageInBubble {
  readonly of: string;
  readonly wall: 'front' | 'rear';
}

export interface BubbleFigures {
  /** How far behind the bubble's nearest point the focus belongs, mm. */
  readonly focusBehindNearestMm: Figure<number>;
  readonly bubbleImages: Figure<readonly BubbleImage[]>;
}

export interface FilmColours {
  readonly swatches: readonly {
    readonly thicknessNm: number;
    /** As the screen shows it: first maximum near white, balanced as the shot. */
    readonly hex: string;
    /** Absolute, a perfect white's Y is 100. */
    readonly xyz: readonly [x: number, y: number, z: number];
  }[];
  /** Black, grey and the orders that the range runs through. */
  readonly bands: readonly {
    readonly band: string;
    readonly fromNm: number;
    readonly toNm: number;
  }[];
}

export interface FilmFigures {
  readonly filmColours: Figure<FilmColours>;
  /** Thicknesses at which the film is darkest and brightest under the first light of the shot. */
  readonly filmBands: Figure<{
    readonly darkest: FilmBandShare;
    readonly brightest: FilmBandShare;
  }>;
  readonly lifeS: Figure<number>;
  /** The depth that a dome as wide as a level film would need in this frame, mm. */
  readonly domeDepthMm: Figure<number>;
  /**
   * Stops that a level film saves because it doesn't need that depth; 0: the available depth would
   * be enough.
   */
  readonly flatSavesStops: Figure<number>;
  /** Take and settling time over the lifetime of the film: 1 just fits. */
  readonly shareOfLife: Figure<number>;
}

export interface MirrorFigures extends FlatMirrorFigures, BubbleFigures, FilmFigures {
  /** R, the reflected share of the first light, on average over the film's thickness. */
  readonly reflectance: Figure<number>;
  /** Luminance of the background over that of the film; 1/20 is visible. */
  readonly strayRatio: Figure<number>;
}

/** A part of the rig as a weight: where its centre of gravity lies, from the sensor plane forward. */
export interface WeighedPart {
  readonly name: string;
  readonly kind: 'body' | 'tube' | 'converter' | 'lens' | 'close-up';
  readonly massKg: number;
  readonly atMm: number;
}

export interface LoadFigures {
  /** Of the whole rig, without head and stand. */
  readonly massKg: Figure<number>;
  /** From the sensor plane forward, mm. */
  readonly centreOfGravityMm: Figure<number>;
  /** Position of the foot, from the sensor plane forward, mm. */
  readonly footMm: Figure<number>;
  /** Moment of the rig about its foot, N·m; positive tips the lens down. */
  readonly momentAtFootNewtonMetres: Figure<number>;
  /** Moment of everything in front of the body about the lens mount, N·m, with the body held. */
  readonly momentAtMountNewtonMetres: Figure<number>;
  /**
   * Stability factor of a boom: over 1 is stable, 1.5 is the usual margin; Infinity: nothing tips
   * it.
   */
  readonly stabilityFactor: Figure<number>;
}

export interface MotionFigures {
  /** Fastest movement across the axis, of the subject and of the camera together, mm/s at the subject. */
  readonly subjectSpeedMmPerS: Figure<number>;
  /** In pixels of the coarser kind, during one exposure. */
  readonly smearPx: Figure<number>;
  /** How long a slide, pan or tilt carries a detail across the frame, s. */
  readonly crossingS: Figure<number>;
  /** Vibration of the support, in pixels of the coarser kind. */
  readonly jitterPx: Figure<number>;
}

/** A pull of focus at one of its ends. */
export interface PullEnd {
  readonly fieldMm: readonly [width: number, height: number];
  /** Position of the plane of focus at this end. */
  readonly subjectToSensorMm: number;
}

export interface FocusPullFigures {
  readonly pullEnds: Figure<readonly [from: PullEnd, to: PullEnd]>;
  /** How far the plane of focus goes along the axis. */
  readonly pullTravelMm: Figure<number>;
  /**
   * Depth that is sharp beyond both ends of the pull, mm: in front of its nearer end and behind
   * its farther one, each with the rig at that end, by the larger of circle of confusion and Airy
   * disk.
   */
  readonly pullDepthMm: Figure<number>;
  /**
   * How much larger the picture is at the nearer end than at the farther one: 0.05 is 5 %.
   */
  readonly pullBreathing: Figure<number>;
  /** Marks for the ring from the start of the pull to its end, a usable depth of field apart. */
  readonly pullMarks: Figure<readonly FocusMark[]>;
}

/** A place of the ring, and what is in focus there. */
export interface FocusMark {
  /** Plane of focus to sensor, mm. */
  readonly fromSensorMm: number;
  /** m0. */
  readonly ringMagnification: number;
  /** Total. */
  readonly magnification: number;
  /** Usable depth of field there, mm. */
  readonly depthMm: number;
}

export interface StackFigures {
  /** From one plane of focus to the next, mm; with a ring, the first and shortest step. */
  readonly stackStepMm: Figure<number>;
  readonly stackFrames: Figure<number>;
  /** What all frames together have sharp, from the nearest point on, mm. */
  readonly stackDepthMm: Figure<number>;
  /** From the first plane of focus to the last, mm; a rail goes as far. */
  readonly stackTravelMm: Figure<number>;
  /** Settling and exposing, all frames, s. */
  readonly stackTimeS: Figure<number>;
  /** The ring's marks, frame by frame; of a rail no such thing. */
  readonly stackMarks: Figure<readonly FocusMark[]>;
}

export interface RecordingFigures {
  /** All takes of the shot, without settling time, s. */
  readonly recordedS: Figure<number>;
  readonly recordedBytes: Figure<number>;
  readonly frameBytes: Figure<number>;
}

/** Of frames taken at intervals. */
export interface TimeLapseFigures {
  readonly timeLapseFrames: Figure<number>;
  /** Real time of one time-lapse, s. */
  readonly timeLapseS: Figure<number>;
  /** What exposure and writing leave of the interval, s; negative: the next frame is missed. */
  readonly intervalLeftS: Figure<number>;
  /** How far the subject grows or moves from one frame to the next, in pixels of the coarser kind. */
  readonly growthPx: Figure<number>;
  /** How long that takes to cross the width of the frame in the finished clip, s. */
  readonly growthCrossingS: Figure<number>;
  /** Real time over what one battery lasts at intervals; 0 on mains power. */
  readonly batteryShare: Figure<number>;
  /** Length of the finished clip at 100%, s. */
  readonly playingS: Figure<number>;
}

/** The light of the shot that is most in the way of lens or view. */
export interface LightInTheWay {
  readonly light: string;
  /** Smallest distance between its face and the lens, mm; 0 or less: they touch. */
  readonly clearanceMm: number;
  /** Share of the frame that it hides from the lens. */
  readonly hiddenShare: number;
}

export interface ClearanceFigures {
  readonly lightInTheWay: Figure<LightInTheWay>;
}

export interface ShotFigures
  extends OpticalFigures,
    SharpnessFigures,
    LightFigures,
    EvennessFigures,
    HighlightFigures,
    ThroughFigures,
    TimeFigures,
    MotionFigures,
    FocusPullFigures,
    StackFigures,
    LoadFigures,
    MirrorFigures,
    ClearanceFigures,
    RecordingFigures,
    TimeLapseFigures {}
