/**
 * The edit laid out for other programs: whole frames of the edit against whole frames of the clips,
 * with dissolves that exist. Every format is printed from this, so that they can't differ.
 */
import type { Rational } from '../quantity/rational.ts';
import type { Music } from './beats.ts';
import { type Course, coveredBy } from './course.ts';
import { type Dissolve, dissolvesOf } from './dissolves.ts';
import { type Exact, exact, fromRational, nearestWhole, over, times } from './exact.ts';
import type { JoinFrames } from './join.ts';
import type { Ramp } from './speed.ts';
import type { Count } from './timecode.ts';

/** What a cut is taken from: a file, or a take that has none yet. */
export interface Material {
  /** The same for all cuts of one clip, and for no others. */
  readonly key: string;
  /** The file's name, or the take: "skin, take 1". */
  readonly name: string;
  /** URL, relative to the written file where it can be; null: there is no file yet. */
  readonly url: string | null;
  /** Frames a second. */
  readonly rate: Rational;
  /** Where the rate is from: the file, the plan, or neither, so that the edit's is taken. */
  readonly rateFrom: 'file' | 'plan' | 'edit';
  readonly width: number | null;
  readonly height: number | null;
  /** The timecode of its first frame; null: it has none, and counts from 0. */
  readonly startTimecode: Count | null;
  /** As read from the file; null: it wasn't read. */
  readonly frames: number | null;
  /** As planned; null: not known. */
  readonly plannedFrames: number | null;
  /** A picture that is held for as long as the cut is. */
  readonly isStill: boolean;
}

/** A cut before it is laid out. */
export interface ToLay {
  readonly name: string;
  readonly shot: string | null;
  readonly material: Material;
  /** Frames of the edit: the first, and the first after it. */
  readonly startFrame: number;
  readonly endFrame: number;
  /** Where in the clip it begins, s. */
  readonly startS: Exact;
  /** Shares of real time. */
  readonly speed: Ramp;
  readonly join: JoinFrames;
  readonly reframe: number | null;
  readonly grade: string | null;
  readonly about: string | null;
}

export interface LaidCut extends ToLay {
  readonly course: Course;
  /** The dissolve that it begins with. */
  readonly dissolve: Dissolve;
  /** Frames of it that its clip has; beyond them there is nothing to show. */
  readonly covered: number;
}

export interface Programme {
  readonly title: string;
  readonly rate: Rational;
  /** Frame that the timecode of the edit starts with, and whether it drops numbers. */
  readonly start: { readonly frame: number; readonly isDrop: boolean };
  readonly frames: number;
  /** Without those that show no frame. */
  readonly cuts: readonly LaidCut[];
  /** Names of cuts that show no frame. */
  readonly empty: readonly string[];
  /** null: there is none. */
  readonly music: Music | null;
}

export function layOut(
  cuts: readonly ToLay[],
  about: Omit<Programme, 'cuts' | 'empty' | 'frames'>,
): Programme {
  const fps = fromRational(about.rate);
  const shown = cuts.filter(({ startFrame, endFrame }) => endFrame > startFrame);
  const courses = shown.map((cut) => courseOf(cut, fps));
  const dissolves = dissolvesOf(
    shown.map(({ material, join }, index) => ({
      course: courses[index]!,
      available: material.frames ?? material.plannedFrames ?? undefined,
      wanted: join,
    })),
  );
  return {
    ...about,
    frames: cuts.at(-1)?.endFrame ?? 0,
    empty: cuts.filter((cut) => !shown.includes(cut)).map(({ name }) => name),
    cuts: shown.map((cut, index) => ({
      ...cut,
      course: courses[index]!,
      dissolve: dissolves[index]!,
      covered: coveredBy(courses[index]!, cut.material.frames ?? undefined),
    })),
  };
}

function courseOf({ startFrame, endFrame, startS, speed, material }: ToLay, fps: Exact): Course {
  const frames = endFrame - startFrame;
  if (material.isStill) return { start: 0, frames, from: exact(0), to: exact(0) };
  const rate = fromRational(material.rate);
  const perFrame = over(rate, fps);
  return {
    start: Math.max(0, nearestWhole(times(startS, rate))),
    frames,
    from: times(speed.from, perFrame),
    to: times(speed.to, perFrame),
  };
}

/** Frames that the timecode of a clip counts before its first, in the clip's own frames. */
export const firstFrameOf = ({ startTimecode, rate }: Material): number =>
  startTimecode === null
    ? 0
    : nearestWhole(
        times(
          over(exact(startTimecode.frame), fromRational(startTimecode.rate)),
          fromRational(rate),
        ),
      );
