/**
 * What a frame is traced from: a shot's set in numbers. The origin is the subject's middle, the camera
 * looks along −z; mm, and linear light in which the screen's white is 1.
 */
import type { LinearColour } from '../film/screen.ts';
import type { FilmSurface } from '../mirror/film-surface.ts';
import type { Plane, Source } from '../mirror/source.ts';
import type { Returns } from './film-table.ts';

/** The camera: its pupil, its plane of focus and what of it is recorded. */
export interface Camera {
  /** Recorded frame in the plane of focus, mm. */
  readonly widthMm: number;
  readonly heightMm: number;
  /** z of the plane of focus. */
  readonly focusAtMm: number;
  /** z of the entrance pupil, and its diameter. */
  readonly pupilAtMm: number;
  readonly pupilMm: number;
  /** Diameter of the Airy disk in the plane of focus, mm. */
  readonly airyMm: number;
}

/** The lens's front as the subject shows it; its diameter lies between two ends. */
export interface Front {
  readonly atMm: number;
  readonly leastMm: number;
  readonly mostMm: number;
}

/** A light as it is seen in a mirror-like subject. */
export interface ShownLight {
  readonly name: string;
  readonly source: Source;
  readonly plane: Plane;
  /** What the subject returns of it. */
  readonly returned: /** `share` is R. */
    | { readonly kind: 'even'; readonly colour: LinearColour; readonly share: number }
    /** Linear light of the face itself; the surface returns Fresnel's share at index n. */
    | { readonly kind: 'clear'; readonly colour: LinearColour; readonly index: number }
    | { readonly kind: 'film'; readonly table: Returns };
}

/** A light behind a clear subject, as it shows through it and past it. */
export interface LightBehind {
  readonly name: string;
  readonly source: Source;
  readonly plane: Plane;
  /** Linear light past the subject. */
  readonly past: LinearColour;
  readonly through: Passes;
}

/** What comes through a clear subject. */
export interface Passes {
  /** Writes linear light into `out`, by the place in the range of thickness, 0 to 1. */
  read(thicknessShare: number, out: Float64Array): void;
}

/** What a light gives a subject that scatters. */
export interface LitBy {
  readonly name: string;
  /** In the subject's middle. */
  readonly colour: LinearColour;
  /** Its outline, for how the light falls off; undefined: it is the same everywhere. */
  readonly outline: readonly (readonly [number, number, number])[] | undefined;
}

/** A flat subject's edge on its own surface, from the middle; undefined: it is wider than the frame. */
export type Edge =
  | { readonly shape: 'rectangle'; readonly widthMm: number; readonly heightMm: number }
  | { readonly shape: 'round'; readonly diameterMm: number };

export type Body =
  | {
      readonly shape: 'flat';
      readonly surface: FilmSurface;
      readonly edge: Edge | undefined;
      /** Height over which a film's thickness runs, mm. */
      readonly runsOverMm: number;
    }
  | { readonly shape: 'ball'; readonly radiusMm: number };

export interface Scene {
  readonly camera: Camera;
  readonly body: Body;
  /** Shown by a film, a bubble or a polished surface, and by gloss over its own colour. */
  readonly shown: readonly ShownLight[];
  readonly lit: readonly LitBy[];
  /** Seen through a clear subject and past it. */
  readonly behind: readonly LightBehind[];
  /** The lens's front, where the subject shows it. */
  readonly front: Front | undefined;
  /** Lights that stand in the camera's way. */
  readonly inTheWay: readonly Source[];
  /** Light of the background, which shows beside the subject and through a clear one. */
  readonly background: LinearColour;
  /** Share of what the subject doesn't return that comes through from the background, 0 to 1. */
  readonly clearShare: number;
  /** Distance of the lines that lie on a matt subject, mm; undefined: it has none. */
  readonly linesMm: number | undefined;
}
