/** How ffmpeg is asked for the pictures of a clip: all of it is fixed here but a path and a size. */

/** Of the small pictures: as many as show a hundredth of the frame, and bands of flicker. */
export const SMALL = { width: 160, height: 90 };
/** Every so many frames one is looked at in full, for its edges. */
const FULL_EVERY = 100;
/** Channels of what it writes: standard output and two of their own. */
export const SMALL_AT = 1;
export const FULL_AT = 3;
export const SOUND_AT = 4;
/** Samples a second; a peak between two of them is missed. */
const SOUND_RATE = '48000';

/** Containers that were read before: nothing that leads to other files or to a network. */
const FORMATS = 'mov,mp4,matroska,webm,avi,mpegts,mxf';

interface Asked {
  /** Absolute path. */
  readonly file: string;
  /** As it is stored. */
  readonly size: { readonly width: number; readonly height: number };
  readonly hasSound: boolean;
  /** ffmpeg before 5.1 has another name for "each frame once". */
  readonly isOld: boolean;
}

export function ffmpegArguments({ file, size, hasSound, isOld }: Asked): readonly string[] {
  const each = isOld ? ['-vsync', '0'] : ['-fps_mode', 'passthrough'];
  const small = `scale=${SMALL.width}:${SMALL.height}:flags=neighbor:out_range=tv,format=yuv444p`;
  const full = `select=not(mod(n\\,${FULL_EVERY})),scale=${size.width}:${size.height},format=gray`;
  return [
    ...['-hide_banner', '-nostdin', '-v', 'error', '-noautorotate'],
    ...['-protocol_whitelist', 'file,pipe', '-format_whitelist', FORMATS],
    // With the protocol before it, no path is taken for an option or an address.
    ...['-i', `file:${file}`],
    ...['-filter_complex', `[0:v:0]split=2[a][b];[a]${small}[small];[b]${full}[full]`],
    ...['-map', '[small]', ...each, '-f', 'rawvideo', `pipe:${SMALL_AT}`],
    ...['-map', '[full]', ...each, '-f', 'rawvideo', `pipe:${FULL_AT}`],
    ...(hasSound
      ? ['-map', '0:a:0', '-ac', '1', '-ar', SOUND_RATE, '-f', 's16le', `pipe:${SOUND_AT}`]
      : []),
  ];
}
