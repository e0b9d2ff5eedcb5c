/** Codecs by the names that people, containers and libraries have for one and the same. */

/** The usual name, and how else it is written, in small letters and digits alone. */
const FAMILIES: readonly (readonly [family: string, also: RegExp])[] = [
  ['h264', /^(?:h264|x264|avc|avc[1-4]|avchd|mpeg4avc|mpeg4part10|vmpeg4isoavc|xavc[ls]?)$/],
  ['hevc', /^(?:hevc|h265|x265|hvc1|hev1|vmpeghisohevc)$/],
  ['prores', /^(?:prores.*|apc[nhso]|ap4[hx]|vprores)$/],
  ['mjpeg', /^(?:mjpe?g|mjp[ga]|mjpb|jpeg|motionjpeg|vmjpeg)$/],
  ['dnxhd', /^(?:dnx(?:hd|hr).*|vc3|avdn|avdh)$/],
  ['vp8', /^(?:v?vp8|vp80)$/],
  ['vp9', /^(?:v?vp9|vp90|vp09)$/],
  ['av1', /^(?:v?av1|av01)$/],
  ['mpeg2', /^(?:mpeg2|mpeg2video|h262|mpg2|m2v1|vmpeg2)$/],
  ['mpeg4', /^(?:mpeg4|mp4v|mpeg4visual|mpeg4part2|fmp4|xvid|divx|dx50|vmpeg4isoasp)$/],
  ['ffv1', /^(?:ffv1|vffv1)$/],
];

/** @returns null where nobody here knows the name: it is compared with nothing */
export function codecFamily(name: string): string | null {
  const plain = name.toLowerCase().replace(/[^a-z0-9]/g, '');
  return FAMILIES.find(([, also]) => also.test(plain))?.[0] ?? null;
}
