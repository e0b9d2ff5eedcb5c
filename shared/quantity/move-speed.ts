/** Speed of a move: along a line, or of turning. */
import { later } from '../words/message.ts';
import { type Either, eitherKind } from './either.ts';
import type { QuantityKind } from './kind.ts';
import { speed } from './speed.ts';
import { turn } from './turn.ts';

const KINDS = { line: speed, turn } as const;

export type MoveSpeed = Either<typeof KINDS>;

export const moveSpeed: QuantityKind<MoveSpeed> = eitherKind(
  {
    id: 'move-speed',
    title: later`speed of a move`,
    examples: ['2 mm/s', '3 deg/s'],
    likelyUnits: ['mm/s', 'deg/s'],
  },
  KINDS,
);
