/**
 * Takes as a body would leave them on its card, made in moments: a second of moving bars said over
 * and over, and an empty box behind it that brings the file to the setting's bit rate. On the disk
 * the box takes no room: nothing is written there.
 */
import { closeSync, openSync, rmSync, statSync, truncateSync, writeSync } from 'node:fs';
import { makeClip, repeatClip } from './ffmpeg.ts';

export interface TakeRecipe {
  readonly size: string;
  readonly rate: string;
  readonly seconds: number;
  readonly megabitsPerS: number;
  readonly colour?: string;
}

const H264 = ['-c:v', 'libx264', '-preset', 'ultrafast', '-pix_fmt', 'yuv420p'];

/** @param file ends in .mp4 or .mov */
export function makeTake(
  file: string,
  { size, rate, seconds, megabitsPerS, colour }: TakeRecipe,
): void {
  const second = file.replace(/(\.\w+)$/, '-second$1');
  makeClip(second, {
    ...{ size, ...exactly(rate), seconds: 1 },
    ...(colour !== undefined && { colour }),
  });
  repeatClip(second, file, seconds);
  rmSync(second);
  pad(file, (megabitsPerS * 1e6 * seconds) / 8);
}

/** ffmpeg's test picture rounds 119.88 to 120: such rates are written by the frame. */
function exactly(rate: string): { readonly rate: string; readonly coding: readonly string[] } {
  const [n, d] = rate.split('/');
  if (d === undefined) return { rate, coding: H264 };
  const timing = ['-vf', `setpts=N*${d}/${n}/TB`, '-r', rate, '-video_track_timescale', n!];
  return { rate: String(Math.round(Number(n) / Number(d))), coding: [...H264, ...timing] };
}

/** Adds a free-space box (ISO/IEC 14496-12, 8.1.2) of 64-bit size. */
function pad(file: string, wantedBytes: number): void {
  const { size } = statSync(file);
  const box = Math.round(wantedBytes) - size;
  if (box < 16) return;
  const header = Buffer.alloc(16);
  header.writeUInt32BE(1, 0);
  header.write('free', 4, 'latin1');
  header.writeBigUInt64BE(BigInt(box), 8);
  const handle = openSync(file, 'r+');
  writeSync(handle, header, 0, header.length, size);
  closeSync(handle);
  truncateSync(file, size + box);
}
