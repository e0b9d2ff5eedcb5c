/** How pictures are stored by ffprobe, in our words. */
import type { ClipPicture } from '../../shared/clips/facts.ts';
import { rational } from '../../shared/quantity/rational.ts';
import { run } from './ffmpeg.ts';

const ENTRIES = 'pix_fmt,field_order,sample_aspect_ratio,color_transfer,color_primaries';
const TRANSFERS: Readonly<Record<string, string>> = { 'arib-std-b67': 'hlg', smpte2084: 'pq' };

export function probedPicture(file: string): ClipPicture {
  const told = JSON.parse(
    run('ffprobe', [
      ...['-v', 'error', '-select_streams', 'v:0', '-show_entries', `stream=${ENTRIES}`],
      ...['-of', 'json', file],
    ]),
  ).streams[0];
  const [, across = '', depth = '8'] = /yuva?j?(4\d\d)p(\d\d)?/.exec(told.pix_fmt) ?? [];
  const [n = 1, d = 1] = (told.sample_aspect_ratio ?? '1:1').split(':').map(Number);
  const { color_transfer: transfer, color_primaries: primaries, field_order: order } = told;
  return {
    bitDepth: Number(depth),
    chroma: across.split('').join(':') as NonNullable<ClipPicture['chroma']>,
    isInterlaced: order !== undefined && !['progressive', 'unknown'].includes(order),
    pixelAspect: rational(n, d),
    ...(transfer && transfer !== 'unknown' && { transfer: TRANSFERS[transfer] ?? transfer }),
    ...(primaries && primaries !== 'unknown' && { primaries }),
  };
}
