/** A value in three states: as the sheet knew it, as the day has it and as the plan has it now. */
import type { QuantityId } from '../quantity/index.ts';
import { message } from '../words/message.ts';
import type { Told } from './told.ts';
import { saysSame } from './value.ts';

/**
 * `bring`: the plan still says what the sheet knew. `keep`: only the plan was changed. `conflict`: both
 * were, or nobody can say.
 */
type Way = 'same' | 'bring' | 'keep' | 'conflict';

interface Value {
  readonly key: string;
  /** In the plan now; null: something that is no single value. */
  readonly now: string | null;
  readonly day: string;
  /** In the plan when the sheet was made, and in earlier texts of the sheet; none: not known. */
  readonly before: readonly string[];
  readonly isSame: (a: string, b: string) => boolean;
}

export const sameAs =
  (kind: QuantityId | null) =>
  (a: string, b: string): boolean =>
    saysSame(a, b, kind);

function wayOf({ now, day, before, isSame }: Value): Way {
  if (now === null) return 'conflict';
  if (isSame(now, day)) return 'same';
  if (before.some((one) => isSame(now, one))) return 'bring';
  return before.some((one) => isSame(one, day)) ? 'keep' : 'conflict';
}

/**
 * @param of what the value belongs to, for people
 * @param write puts the day's value into the plan; false: it can't stand there
 */
export function settle(value: Value, of: string, told: Told, write: () => boolean): void {
  const { key, now, day } = value;
  switch (wayOf(value)) {
    case 'same':
      return;
    case 'bring':
      if (write()) told.bring(message`${of}: \`${key}\` is ${day} instead of ${now ?? ''}.`);
      else told.leave(message`${of}: \`${key}\` can't be written where it belongs.`);
      return;
    case 'keep':
      told.keep(
        message`${of}: \`${key}\` was changed to ${now ?? ''} in the plan; the day has ${day} as before. The plan is kept.`,
      );
      return;
    case 'conflict':
      told.leave(
        message`${of}: \`${key}\` is ${now ?? message`something else`} in the plan and ${day} in the day. The plan is left as it is.`,
      );
  }
}
