/** Draws mutations by chance that a seed repeats. */

import { read, sharedSources } from '../tidy/support/project.ts';
import { linesOf, type Mutation, mutationsOf } from './mutations.ts';

/** Numbers from 0 to 1 after each other: the generator mulberry32, in the public domain. */
function chance(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** Where a wrong line is likeliest to hurt. */
export const FOLDERS: readonly string[] = [
  'optics',
  'exposure',
  'mirror',
  'film',
  'load',
  'recording',
  'timeline',
  'figures',
  'rules',
  'solve',
  'day',
  'frame',
  'lens-fit',
  'bring-back',
];

/** @param places a folder of `shared/` ('optics'), a file, a line of one ('shared/optics/chain.ts:40'); several after commas */
export function mutationsIn(places: string, seed: number, count: number): readonly Mutation[] {
  const all = places.split(',').flatMap(allIn);
  const next = chance(seed);
  const drawn = new Set<Mutation>();
  while (drawn.size < Math.min(count, all.length)) {
    const mutation = all[Math.floor(next() * all.length)];
    if (mutation !== undefined) drawn.add(mutation);
  }
  return [...drawn].sort((a, b) =>
    a.file === b.file ? a.start - b.start : a.file < b.file ? -1 : 1,
  );
}

function allIn(place: string): readonly Mutation[] {
  const [path = '', line] = place.split(':');
  const within = path.includes('/') ? path : `shared/${path}/`;
  const files = sharedSources.filter((file) => file.startsWith(within));
  const found = files
    .flatMap((file) => mutationsOf(file, read(file)))
    .filter((mutation) => line === undefined || mutation.line === Number(line));
  if (found.length === 0) throw new Error(`nothing to change in ${place}`);
  return found;
}

export function sayMutation(mutation: Mutation): string {
  const [before, after] = linesOf(read(mutation.file), mutation);
  return `${mutation.file}:${mutation.line}\n    ${before}\n    ${after}`;
}
