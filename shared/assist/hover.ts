/** What a key is for, what a value comes to and from what, what a name stands for. */
import type { FileId } from '../plan/place.ts';
import type { Context } from '../workspace/context.ts';
import type { Hover } from '../workspace/facade.ts';
import { keyHover } from './hover/key.ts';
import type { Position } from './located.ts';
import { spotAt } from './spot.ts';

export function hoverAt(context: Context, file: FileId, position: Position): Hover | null {
  const spot = spotAt(context, file, position);
  if (!spot) return null;
  return { markdown: keyHover(spot.meaning), range: spot.range };
}
