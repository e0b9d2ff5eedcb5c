/** Everything worked out of one shot, each figure with its inputs' places or why it is not known. */

import type { FilmBandShare } from '../film/returned.ts';
import type { ImageInBubble } from '../mirror/bubble-image.ts';
import type { FrameSide } from '../mirror/coverage.ts';
import type { MirrorView } from '../mirror/least-tilt.ts';
import type { NeededLight } from '../mirror/patch.ts';
import type { Shade } from '../mirror/seen-lit.ts';
import type { Chain } from '../optics/arrangement.ts';
import type { ChainTrace } from '../optics/chain.ts';
import type { Figure } from './figure.ts';

/** Light that one part of the rig takes, stops. */
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
   * What the subject, its tilt and the move need sharp at one time, along the axis, mm; along a focus
   * pull what the pull doesn't pass.
   */
  readonly needed: Figure<number>;
}

/** How the picture is made: from the sensor to the subject. */
export interface OpticalFigures {
  readonly chain: Figure<Chain>;
  readonly trace: Figure<ChainTrace>;
  /** m, subject to sensor. */
  readonly magnification: Figure<number>;
  /** m1, the lens's magnification of what it sees. */
  readonly lensMagnification: Figure<number>;
  /** m0, the lens's own magnification by its ring. */
  readonly ringMagnification: Figure<number>;
  /** Least and largest magnification of the rig: ring at infinity, ring at its closest. */
  readonly reach: Figure<readonly [least: number, most: number]>;
  /** What the recorded frame takes in at the plane of focus, mm. */
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
  /** Depth by c* = max(c, Airy disk): what findings judge by, mm. */
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
  /** What subject, tilt and move stretch over along the axis, mm, whether sharp at one time or in turn. */
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
  /** As if all were shown: for a search that asks the mirror last, since that costs most. */
  readonly shownLight: ShownLight;
}

/** How evenly the lights of the shot light it. */
export interface EvennessFigures {
  /** From the brightest place of the frame to the darkest, stops; Infinity: part of it gets none. */
  readonly unevennessStops: Figure<number>;
}

/** The light of the shot whose pulsing is left most visible. */
export interface LampFlicker {
  readonly light: string;
  /** Where the course of the light isn't known, the most that any leaves. */
  readonly residual: number;
  /** How the light goes over its cycle. */
  readonly course: 'sine' | 'pulsed' | 'unknown';
  /** How often the lamp pulses. */
  readonly lampHz: number;
  /** How fast bands roll through the picture; 0: they stand; null: the frame rate isn't known. */
  readonly rollHz: number | null;
  /** Bands over the height of the picture, by how long the sensor reads out; null: not known. */
  readonly bandsInFrame: number | null;
  /** The depth of modulation isn't stated and was taken as full. */
  readonly depthAssumed: boolean;
}

export interface TimeFigures {
  readonly shutterSeconds: Figure<number>;
  readonly shutterAngleDeg: Figure<number>;
  /** Share of the light that still swings from frame to frame, 0 to 1; the worst light of the shot. */
  readonly flickerResidual: Figure<number>;
  readonly worstFlicker: Figure<LampFlicker>;
}

/** Where a flat mirror-like subject may be tilted, rad. */
export interface MirrorWindow {
  readonly leastRad: number;
  readonly greatestRad: number;
  /** How wide it is; negative: how far from open. */
  readonly openRad: number;
  /** The light limits it too; where its place isn't known, mirror and depth alone do. */
  readonly byLight: boolean;
}

/** What a light leaves dark of the frame. */
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
  /** The largest tilt that the depth there holds. */
  readonly greatestTiltByDepthRad: Figure<number>;
  /** The tilts at which the shot's best light fills the frame; both 0 where none does. */
  readonly litTiltsRad: Figure<{ readonly leastRad: number; readonly greatestRad: number }>;
  readonly tiltWindow: Figure<MirrorWindow>;
  /** Where the light has to stand for this tilt and how large it has to be, at its distance. */
  readonly neededLight: Figure<NeededLight>;
  /**
   * The share of the frame's light that the mirror lacks, and where: a place that half the pupil
   * sees lit counts half.
   */
  readonly darkFrame: Figure<LostLight>;
  /** The same by each light of the shot, in their order. */
  readonly lostByLight: Figure<readonly Figure<LostLight>[]>;
  /** What of the frame is black, and what only dims: seen lit by part of the pupil. */
  readonly shade: Figure<Shade>;
}

/** Rim or light as a bubble shows it, in pixels of the recording from the frame's middle. */
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
  /** Where in its thickness the film returns least and most of the first light. */
  readonly filmBands: Figure<{
    readonly darkest: FilmBandShare;
    readonly brightest: FilmBandShare;
  }>;
  readonly lifeS: Figure<number>;
  /** The depth that a dome as wide as a level film would need in this frame, mm. */
  readonly domeDepthMm: Figure<number>;
  /** Stops that a level film saves by needing no such depth; 0: the depth there would hold it. */
  readonly flatSavesStops: Figure<number>;
  /** Take and settling over the film's life: 1 just fits. */
  readonly shareOfLife: Figure<number>;
}

export interface MirrorFigures extends FlatMirrorFigures, BubbleFigures, FilmFigures {
  /** R, the share of the first light that comes back, on average over the film's thickness. */
  readonly reflectance: Figure<number>;
  /** Background over film: 1/20 is seen. */
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
  /** Of the whole rig, without what carries it. */
  readonly massKg: Figure<number>;
  /** From the sensor plane forward, mm. */
  readonly centreOfGravityMm: Figure<number>;
  /** Where the rig is held, from the sensor plane forward, mm. */
  readonly footMm: Figure<number>;
  /** What the rig turns its foot by, N·m: positive dips the lens. */
  readonly momentAtFootNewtonMetres: Figure<number>;
  /** What all before the body turns its mount by, N·m, with the body held. */
  readonly momentAtMountNewtonMetres: Figure<number>;
  /** Of a boom: over 1 it stands, 1.5 is the usual margin; Infinity: nothing tips it. */
  readonly stabilityFactor: Figure<number>;
}

export interface MotionFigures {
  /** Fastest movement across the axis, of the subject and of the camera together, mm/s at the subject. */
  readonly subjectSpeedMmPerS: Figure<number>;
  /** In pixels of the coarser kind, during one exposure. */
  readonly smearPx: Figure<number>;
}

/** A pull of focus at one of its ends. */
export interface PullEnd {
  readonly fieldMm: readonly [width: number, height: number];
  /** Where the plane of focus lies then. */
  readonly subjectToSensorMm: number;
}

export interface FocusPullFigures {
  readonly pullEnds: Figure<readonly [from: PullEnd, to: PullEnd]>;
  /** How far the plane of focus goes along the axis. */
  readonly pullTravelMm: Figure<number>;
  /**
   * What is sharp beyond both ends of the pull, mm: depth in front of its nearer end and behind its
   * farther one, each as the rig is there, by the larger of circle of confusion and Airy disk.
   */
  readonly pullDepthMm: Figure<number>;
}

export interface RecordingFigures {
  /** All takes of the shot, without what settles before them, s. */
  readonly recordedS: Figure<number>;
  readonly recordedBytes: Figure<number>;
}

/** The light of the shot that is most in the way of lens or view. */
export interface LightInTheWay {
  readonly light: string;
  /** Between its face and the lens, mm, at least; 0 or less: they meet. */
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
    TimeFigures,
    MotionFigures,
    FocusPullFigures,
    LoadFigures,
    MirrorFigures,
    ClearanceFigures,
    RecordingFigures {}
