import { message } from '../../shared/words/message.ts';
import { ffmpegLooker, type Looker } from './looker.ts';

/** Without it the headers are still read: it is never required. */
export async function lookerOrSay(terminal: { err(text: string): void }): Promise<Looker | null> {
  const looker = await ffmpegLooker(process.env);
  if (looker === null)
    terminal.err(`lamella: ${message`ffmpeg is not on the path, so no pictures are looked at.`}\n`);
  return looker;
}
