/** A stack as the plan has it. */
import { ifKnown } from '../plan/field.ts';
import type { Shot } from '../plan/generated/types.ts';
import { message } from '../words/message.ts';
import type { Stack } from './bench.ts';
import { derive, type Figure, figureOf, known, notKnown, silent } from './figure.ts';

/** Share of the depth of field by which frames overlap where the plan doesn't say. Common practice: 20 to 30 %. */
const USUAL_OVERLAP = 0.3;

/** null: the shot has no stack. */
export function stackOf({ stack }: Pick<Shot, 'stack'>, shot: string): Stack | null {
  if (stack.state === 'missing') return null;
  const { at } = stack;
  if (stack.state === 'invalid')
    return { isStills: true, moves: silent, overlap: silent, frames: silent, settleS: silent, at };
  const { mode, overlap, frames, settle } = stack.value;
  const of = message`${shot}'s stack`;
  return {
    isStills: ifKnown(mode) !== 'video',
    moves: figureOf(stack.value.with, of),
    overlap:
      overlap.state === 'missing' ? known(USUAL_OVERLAP) : overlapping(figureOf(overlap, of)),
    frames: frames.state === 'missing' ? known(undefined) : figureOf(frames, of),
    settleS: figureOf(settle, of),
    at,
  };
}

/** Frames that overlap by all of their depth never get on; that is a finding of its own. */
const overlapping = (figure: Figure<number>): Figure<number> =>
  derive([figure], (share) => (share < 1 ? share : notKnown(message`the overlap leaves no step`)));
