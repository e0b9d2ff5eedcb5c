/** Clips for tests, made by ffmpeg each time; none is kept in the repository. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';

const NEEDED =
  'This test makes its clips with ffmpeg and reads them with ffprobe, and they were not found: install ffmpeg (on Debian `apt-get install ffmpeg`).';

/** Runs one of them as it is told, for what the functions below don't make; what it prints. */
export function run(program: 'ffmpeg' | 'ffprobe', args: readonly string[]): string {
  try {
    return execFileSync(program, [...args], {
      encoding: 'utf8',
      stdio: ['ignore', 'pipe', 'pipe'],
    });
  } catch (cause) {
    if ((cause as NodeJS.ErrnoException).code === 'ENOENT') throw new Error(NEEDED);
    throw cause;
  }
}

export interface ClipRecipe {
  readonly size?: string;
  readonly rate?: string;
  readonly seconds?: number;
  /** One colour throughout, as ffmpeg names it; left out: moving bars. */
  readonly colour?: string;
  /** What stands before the file's name. */
  readonly coding?: readonly string[];
}

/** Moving bars or one colour, as ffmpeg draws them. */
export function makeClip(
  file: string,
  { size = '320x180', rate = '25', seconds = 1, colour, coding = [] }: ClipRecipe = {},
): void {
  const drawn = colour === undefined ? 'testsrc2=' : `color=c=${colour}:`;
  const source = `${drawn}size=${size}:rate=${rate}:duration=${seconds}`;
  run('ffmpeg', ['-v', 'error', '-y', '-f', 'lavfi', '-i', source, ...coding, file]);
}

/** The same pictures in another file: what only changes what stands around them. */
export function copyClip(from: string, to: string, ...coding: readonly string[]): void {
  run('ffmpeg', ['-v', 'error', '-y', '-i', from, '-c', 'copy', ...coding, to]);
}

/** The same pictures over and over, up to so many seconds. */
export function repeatClip(from: string, to: string, seconds: number): void {
  const times = String(Math.ceil(seconds));
  run('ffmpeg', [
    ...['-v', 'error', '-y', '-stream_loop', times, '-i', from],
    ...['-c', 'copy', '-t', String(seconds), to],
  ]);
}

export interface Probed {
  readonly width: number;
  readonly height: number;
  readonly codec: string;
  /** "30000/1001" */
  readonly rate: string;
  readonly averageRate: string;
  readonly durationS: number;
  /** Clockwise, for display: the matrix of the file turns the other way round. */
  readonly rotation: number;
  readonly bytes: number;
}

export function probe(file: string): Probed {
  const { streams, format } = JSON.parse(
    run('ffprobe', [
      ...['-v', 'error', '-print_format', 'json', '-show_format', '-show_streams'],
      ...['-select_streams', 'v:0', file],
    ]),
  );
  const [stream] = streams;
  const turned = Number(
    stream.side_data_list?.find((one: object) => 'rotation' in one)?.rotation ?? 0,
  );
  return {
    width: stream.width,
    height: stream.height,
    codec: stream.codec_name,
    rate: stream.r_frame_rate,
    averageRate: stream.avg_frame_rate,
    durationS: Number(stream.duration ?? format.duration),
    rotation: (360 - turned) % 360,
    bytes: Number(format.size),
  };
}

/** A folder of its own, and how to be rid of it. */
export function clipFolder(): { readonly folder: string; readonly remove: () => void } {
  const folder = mkdtempSync(path.join(os.tmpdir(), 'lamella-clips-'));
  return { folder, remove: () => rmSync(folder, { recursive: true, force: true }) };
}
