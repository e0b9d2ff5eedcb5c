/** Codes of primaries and transfer as files carry them, by ITU-T H.273 (07/2021), tables 2 and 3. */

const PRIMARIES: Readonly<Record<number, string>> = {
  1: 'bt709',
  4: 'bt470m',
  5: 'bt470bg',
  6: 'smpte170m',
  7: 'smpte240m',
  9: 'bt2020',
  11: 'p3-dci',
  12: 'p3-d65',
};

/** 1, 6, 14 and 15 are one function, by the table's own note. */
const TRANSFERS: Readonly<Record<number, string>> = {
  1: 'bt709',
  4: 'gamma22',
  5: 'gamma28',
  6: 'bt709',
  7: 'smpte240m',
  8: 'linear',
  13: 'srgb',
  14: 'bt709',
  15: 'bt709',
  16: 'pq',
  18: 'hlg',
};

/** @returns null for "unspecified" and reserved codes */
export const primariesOf = (code: number): string | null => PRIMARIES[code] ?? null;
export const transferOf = (code: number): string | null => TRANSFERS[code] ?? null;
