/**
 * OpenTimelineIO's own library (https://opentimelineio.readthedocs.io, 0.15 and later) reads what is
 * written for it: its places in time give the planned frame of the planned clip at each frame of the
 * edit, and a frame of the clip at most beside it on ramps.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import fc from 'fast-check';
import { afterAll, expect, inject, it } from 'vitest';
import type { Core } from '../../shared/api/facade.ts';
import { coreWith, PLAN } from '../support/plans.ts';
import { manyRuns } from '../support/runs.ts';
import {
  FILES,
  RATES,
  type RandomEdit,
  randomEdit,
  readingsOf,
  startOf,
  textOf,
} from '../support/timelines/edits.ts';
import { expectPlanned } from '../support/timelines/held-against.ts';
import type { ReadDissolve, ShownAt, ShownFrame } from '../support/timelines/shown.ts';

declare module 'vitest' {
  interface ProvidedContext {
    /** The command that starts `otio.cpp`, and its arguments. */
    readonly otioReader: readonly string[];
  }
}

/** 408 edits in the long run. */
const RUNS = manyRuns(12);

const folder = mkdtempSync(path.join(os.tmpdir(), 'lamella-readers-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Where it begins and ends, in frames of the clip. */
interface Visible {
  readonly clip: string;
  readonly needed: readonly [from: number, to: number];
  readonly available: readonly [from: number, to: number];
}

interface ReadByLibrary {
  readonly length: number;
  readonly rate: number;
  readonly startFrame: number;
  readonly frames: readonly ShownAt[];
  readonly dissolves: readonly ReadDissolve[];
  readonly visible: readonly Visible[];
  readonly markers: readonly (readonly [name: string, frame: number])[];
  readonly errors: readonly string[];
}

const rateOf = (name: string): number => RATES[name]![0] / RATES[name]![1];

/** The lines of `otio.cpp` for one file. */
function readByLibrary(text: string): ReadByLibrary {
  const file = path.join(folder, 'edit.otio');
  writeFileSync(file, text);
  const [command, ...args] = inject('otioReader');
  const { error, status, stdout, stderr } = spawnSync(command!, args, {
    input: `${file}\n`,
    encoding: 'utf8',
    maxBuffer: 2 ** 28,
  });
  if (error || status !== 0) throw new Error(`The reader ended with ${status}: ${error ?? stderr}`);
  const lines = stdout.split('\n').map((line) => line.split('\t'));
  const of = (kind: string) =>
    lines.filter(([first]) => first === kind).map((line) => line.slice(1));
  const [length, rate, startFrame] = (of('timeline')[0] ?? []).map(Number);
  return {
    ...{ length: length!, rate: rate!, startFrame: startFrame! },
    frames: of('frame').map(shownAt),
    dissolves: of('dissolve').map(([from, to, name]) => ({
      ...{ from: Number(from), to: Number(to) },
      into: name!.replace('dissolve into ', ''),
    })),
    visible: of('visible').map(([clip, ...frames]) => {
      const [from, to, first, end] = frames.map(Number);
      return { clip: clip!, needed: [from!, to!], available: [first!, end!] };
    }),
    markers: of('marker').map(([name, frame]) => [name!, Number(frame)] as const),
    errors: of('error').map(([message]) => message!),
  };
}

function shownAt(fields: readonly string[]): ShownAt {
  const shown: (ShownFrame | null)[] = [];
  for (let at = 0; at < fields.length; at++)
    shown.push(fields[at] === '-' ? null : { clip: fields[at]!, frame: Number(fields[++at]) });
  const [own, out] = shown;
  return out === undefined ? { own: own! } : { own: own!, out };
}

function written(core: Core, edit: RandomEdit): string {
  const startTimecode = edit.rate === '119.88 fps' ? {} : { startTimecode: startOf(edit) };
  const made = core.timeline(PLAN, 'otio', { readings: readingsOf(edit), ...startTimecode });
  if (!made.ok) throw new Error(made.why);
  return made.text;
}

it('finds the planned frame at each frame of the edit', () => {
  fc.assert(
    fc.property(randomEdit, (edit) => {
      const core = coreWith(textOf(edit));
      const figures = core.editFigures(PLAN)!;
      const read = readByLibrary(written(core, edit));
      expect(read.errors).toEqual([]);
      expect(read.length).toBe(figures.totalFrames);
      expect(read.rate).toBeCloseTo(rateOf(edit.rate), 12);
      expectPlanned(edit, figures, read, "OpenTimelineIO's library");
      for (const { clip, needed, available } of read.visible) {
        expect(needed[0], clip).toBeGreaterThanOrEqual(available[0] - 1e-6);
        // The last frame of the edit begins within the clip, and may go on beyond its end.
        const perFrame = rateOf(edit.clips[FILES.indexOf(clip)]!.rate) / rateOf(edit.rate);
        expect(needed[1] - perFrame, clip).toBeLessThan(available[1] - 1e-6);
      }
      // The beat of 117.55 a minute, on the nearest frame: arithmetic of a constant tempo.
      const beatFrames = (60 / 117.55) * rateOf(edit.rate);
      expect(read.markers.length).toBeGreaterThan(0);
      read.markers.forEach(([, frame], beat) => {
        expect(Math.abs(frame - beat * beatFrames)).toBeLessThanOrEqual(0.5 + 1e-6);
      });
    }),
    { numRuns: RUNS },
  );
});

it('is a reader that finds what is wrong', () => {
  const edit: RandomEdit = {
    ...{ rate: '25 fps', isDrop: false },
    clips: Array.from({ length: 3 }, () => ({ rate: '25 fps', durationS: 20, hasTimecode: true })),
    cuts: [
      { shot: 'frost', from: 100, duration: '50 frames', speed: '50 %', transition: 'cut' },
      { shot: 'skin', from: 200, duration: '40 frames', speed: '100 %', transition: 'cut' },
    ],
  };
  const core = coreWith(textOf(edit));
  const figures = core.editFigures(PLAN)!;
  const text = written(core, edit);
  const wrong: readonly (readonly [from: RegExp, to: string])[] = [
    [/"time_scalar": 0.5/, '"time_scalar": 0.6'],
    [/"value": 90025/, '"value": 90026'],
    [/"Clip\.2"/, '"Clip.99"'],
    [/"TimeRange\.1"/, '"Ranges.1"'],
  ];
  for (const [from, to] of wrong) {
    expect(text).toMatch(from);
    const read = readByLibrary(text.replace(from, to));
    const judge = (): void => {
      expect(read.errors).toEqual([]);
      expectPlanned(edit, figures, read, "OpenTimelineIO's library");
    };
    expect(judge, to).toThrow();
  }
});
