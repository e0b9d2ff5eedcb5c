import { fstatSync } from 'node:fs';
import { inertLine } from '../shared/report/inert.ts';
import { message } from '../shared/words/message.ts';
import { COULD_NOT_RUN } from './exit-status.ts';

/** What a command sees of the world it runs in; tests bring their own. */
export interface Terminal {
  readonly cwd: string;
  /** Whether standard output takes colour. */
  readonly colour: boolean;
  /** A file with a translation of all that is said; left out or empty: English. */
  readonly translation?: string | undefined;
  /** A text, or the bytes of a picture. */
  out(text: string | Uint8Array): void;
  err(text: string): void;
  /** Shows how far something is, in place of what was shown before; null: nothing any more. */
  progress(text: string | null): void;
  /** Calls `stop` when the user asks to stop; answers with how to hear no more of it. */
  onInterrupt(stop: () => void): () => void;
  /** Standard input, at most `most` bytes and one more where there is more. */
  input(most: number): Promise<Uint8Array>;
}

/** One line that says why something can't be done; names in it are data, whatever they hold. */
export const complain = ({ err }: Pick<Terminal, 'err'>, said: string): void =>
  err(`lamella: ${inertLine(said)}\n`);

/**
 * Whether to colour: FORCE_COLOR decides where it is set (`0` and `false` are no), then NO_COLOR
 * (any text is no), then whether a terminal that knows colours is there.
 * Sources: no-color.org, force-color.org; their order where both are set is Node's own.
 */
export function wantsColour(
  environment: Readonly<Record<string, string | undefined>>,
  isTerminal: boolean,
): boolean {
  const { FORCE_COLOR, NO_COLOR, TERM } = environment;
  if (FORCE_COLOR) return FORCE_COLOR !== '0' && FORCE_COLOR !== 'false';
  if (NO_COLOR) return false;
  return isTerminal && TERM !== 'dumb';
}

/** The process's own terminal. A reader that goes away (`lamella … | head`) ends it quietly. */
export function processTerminal(): Terminal {
  process.stdout.on('error', (cause: NodeJS.ErrnoException) => {
    if (cause.code === 'EPIPE') return;
    process.stderr.write(
      `lamella: ${message`standard output can't be written: ${cause.message}`}\n`,
    );
    // At once: an uncaught error would leave with 1, which says that there are findings.
    process.exit(COULD_NOT_RUN);
  });
  return {
    cwd: process.cwd(),
    colour: wantsColour(process.env, process.stdout.isTTY === true),
    // The environment rather than an option: set once, it holds for hooks and pipelines too.
    translation: process.env.LAMELLA_TRANSLATION,
    out: (text) => void process.stdout.write(text),
    err: (text) => void process.stderr.write(text),
    progress: progressOn(process.stderr),
    onInterrupt(stop) {
      // Once: who asks again means it, and Node ends the process.
      process.once('SIGINT', stop);
      return () => process.removeListener('SIGINT', stop);
    },
    input: readInput,
  };
}

/** On a terminal alone: in a file it would be line after line of nothing. */
function progressOn(stream: NodeJS.WriteStream): Terminal['progress'] {
  if (stream.isTTY !== true) return () => undefined;
  return (text) => {
    // To the line's start, and away with what stood there (ECMA-48).
    stream.write(`\r\u001b[K${text?.slice(0, (stream.columns || 80) - 1) ?? ''}`);
  };
}

/** @throws NoInput where it is a folder, of which Node reads nothing at all */
async function readInput(most: number): Promise<Uint8Array> {
  if (isFolder(process.stdin)) throw new NoInput(message`Standard input is a folder, not a file.`);
  const pieces: Uint8Array[] = [];
  let size = 0;
  for await (const piece of process.stdin as AsyncIterable<Uint8Array>) {
    pieces.push(piece);
    size += piece.length;
    if (size > most) break;
  }
  return Buffer.concat(pieces).subarray(0, most + 1);
}

/** Standard input that holds no text; its message says why. */
export class NoInput extends Error {}

function isFolder({ fd }: { readonly fd?: number }): boolean {
  try {
    return fd !== undefined && fstatSync(fd).isDirectory();
  } catch {
    // Closed: it reads as empty.
    return false;
  }
}
