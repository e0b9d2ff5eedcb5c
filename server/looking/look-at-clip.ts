/** Looks at the pictures of one clip with the user's own ffmpeg: one pass, nothing kept. */
import { type ChildProcess, spawn } from 'node:child_process';
import type { Readable } from 'node:stream';
import { Look } from '../../shared/looked-at/look.ts';
import type { LookAsk, LookedAt } from '../../shared/looked-at/looked.ts';
import { FULL_AT, ffmpegArguments, SMALL, SMALL_AT, SOUND_AT } from './ffmpeg-arguments.ts';
import { inPieces } from './in-pieces.ts';

interface LookRequest {
  /** Absolute path of ffmpeg. */
  readonly program: string;
  /** Absolute path of a clip that was read. */
  readonly file: string;
  readonly size: { readonly width: number; readonly height: number };
  readonly ask: LookAsk;
  readonly signal: AbortSignal;
  /** Told after some frames. */
  progress(frames: number): void;
}

/** `why`: what ffmpeg says of it, its last line. */
export type LookAnswer =
  | { readonly state: 'seen'; readonly looked: LookedAt; readonly thumbnail: Uint8Array }
  | { readonly state: 'failed'; readonly why: string }
  | { readonly state: 'stopped' };

const SMALL_BYTES = 3 * SMALL.width * SMALL.height;
const PROGRESS_FRAMES = 50;
const MOST_SAID = 4096;

export async function lookAtClip(request: LookRequest): Promise<LookAnswer> {
  let [hasSound, isOld] = [true, false];
  // It says what it can't do before it decodes anything: each try but the last costs moments.
  for (;;) {
    const answer = await oneTry(request, hasSound, isOld);
    if (answer.state !== 'failed') return answer;
    const { why } = answer;
    if (!isOld && /fps_mode/.test(why)) isOld = true;
    else if (hasSound && /matches no streams|does not contain any stream/.test(why))
      hasSound = false;
    else return { state: 'failed', why: why.trim().split('\n').at(-1) ?? '' };
  }
}

async function oneTry(
  { program, file, size, ask, signal, progress }: LookRequest,
  hasSound: boolean,
  isOld: boolean,
): Promise<LookAnswer> {
  if (signal.aborted) return { state: 'stopped' };
  const child = spawn(program, [...ffmpegArguments({ file, size, hasSound, isOld })], {
    stdio: ['ignore', 'pipe', 'pipe', 'pipe', 'pipe'],
    windowsHide: true,
    env: withoutReports(process.env),
  });
  const stop = (): void => void child.kill('SIGKILL');
  signal.addEventListener('abort', stop);
  try {
    const look = new Look(ask, SMALL.height);
    const said = textOf(child.stderr as Readable);
    const ended = endOf(child);
    const thumbnail = { planes: new Uint8Array(0), nextAt: 1 };
    await Promise.all([
      smallFrames(child.stdio[SMALL_AT] as Readable, look, thumbnail, progress),
      inPieces(child.stdio[FULL_AT] as Readable, size.width * size.height, (grey) =>
        look.edges.add(grey, size.width, size.height),
      ),
      inPieces(child.stdio[SOUND_AT] as Readable, 1 << 15, (bytes) =>
        look.sound.add(new Int16Array(bytes.buffer, bytes.byteOffset, bytes.length >> 1)),
      ),
    ]);
    const { code, why } = await ended;
    if (signal.aborted) return { state: 'stopped' };
    const looked = look.seen;
    if (code !== 0 || looked === null) return { state: 'failed', why: why || (await said) };
    return { state: 'seen', looked, thumbnail: thumbnail.planes };
  } finally {
    signal.removeEventListener('abort', stop);
    stop();
  }
}

/** The thumbnail is that of the middle: the last frame whose number is a power of two. */
async function smallFrames(
  stream: Readable,
  look: Look,
  thumbnail: { planes: Uint8Array; nextAt: number },
  progress: (frames: number) => void,
): Promise<void> {
  await inPieces(stream, SMALL_BYTES, (planes) => {
    if (planes.length < SMALL_BYTES) return;
    look.add({ ...SMALL, planes });
    if (look.frames === thumbnail.nextAt) {
      thumbnail.planes = planes;
      thumbnail.nextAt *= 2;
    }
    if (look.frames % PROGRESS_FRAMES === 0) progress(look.frames);
  });
}

/** It would write a report beside the plan, wherever that variable is set. */
function withoutReports(environment: NodeJS.ProcessEnv): NodeJS.ProcessEnv {
  const { FFREPORT: _, ...rest } = environment;
  return rest;
}

interface End {
  readonly code: number | null;
  /** Why it never began; '': it did. */
  readonly why: string;
}

/** Never rejects: nobody waits for it before its streams have ended. */
const endOf = (child: ChildProcess): Promise<End> =>
  new Promise((resolve) => {
    child.once('error', ({ message }) => resolve({ code: null, why: message }));
    child.once('close', (code) => resolve({ code, why: '' }));
  });

async function textOf(stream: Readable): Promise<string> {
  let text = '';
  for await (const piece of stream) text = (text + String(piece)).slice(-MOST_SAID);
  return text;
}
