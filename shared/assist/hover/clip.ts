/** A clip of the plan: what its shot asks of it, before anybody has looked at the file. */
import type { ClipAsk } from '../../clips/facts.ts';
import type { FileId } from '../../plan/place.ts';
import { KINDS } from '../../quantity/index.ts';
import { message } from '../../words/message.ts';
import { askOf } from '../../workspace/clips.ts';
import type { Context } from '../../workspace/context.ts';
import { line, paragraphs, plain, table } from './markdown.ts';
import { takenWords } from './taken.ts';

/** @returns null where there is no such shot, or it asks for nothing */
export function clipHover(
  context: Context,
  file: FileId,
  shot: string,
  path: string,
  index: number,
): string | null {
  const { analysis, say } = context;
  const ask = askOf(analysis, file, shot);
  const taken = takenWords(context, file, shot, index);
  if (!ask || asksNothing(ask)) return taken;
  const { size, rate, codec, bitsPerS, takeS, shutterS, iso, whiteBalance }: ClipAsk = ask;
  const { bitDepth, chroma, transfer, primaries } = ask.picture ?? {};
  const stored = [
    ...(bitDepth === undefined ? [] : [message`${bitDepth} bit`]),
    ...[chroma, transfer, primaries].filter((one) => one !== undefined),
  ].join(', ');
  return paragraphs(
    table([
      line(`**${plain(path)}**`, message`planned for ${plain(shot)}`),
      size && line(message`resolution`, say.resolution(size)),
      ask.isPicture && line(message`kind`, message`a picture, JPEG, PNG or TIFF`),
      rate && line(message`frame rate`, KINDS.rate.print(rate)),
      codec !== null && line(message`codec`, plain(codec)),
      stored !== '' && line(message`picture`, stored),
      bitsPerS !== null && line(message`bit rate`, `${say.number(bitsPerS / 1e6)} Mb/s`),
      takeS !== null && line(message`length`, message`at least ${say.seconds(takeS)}`),
      shutterS !== null && line(message`shutter`, say.shutter(shutterS)),
      iso !== null && line(message`ISO`, String(iso)),
      whiteBalance !== null && line(message`white balance`, `${whiteBalance} K`),
    ]),
    taken,
    message`\`lamella clips\`, or *Check the Clips of the Plan*, reads the file and compares it.`,
  );
}

const asksNothing = ({ isPicture, isLeast: _, ...ask }: ClipAsk): boolean =>
  !isPicture && Object.values(ask).every((one) => one === null);
