/**
 * An input that is not known exactly, and how the shot changes as it stands otherwise.
 */
import type { Prior } from '../assumptions/assumption.ts';
import type { AssumptionId } from '../assumptions/table.ts';
import { isOf } from '../plan/entry-id.ts';
import type { GroupName } from '../plan/generated/names.ts';
import type { EntryId, FileId, Place } from '../plan/place.ts';
import type { Constants } from './constants.ts';

/**
 * One value that stands otherwise: a field of the plan, a constant of the calculations, or the lens
 * along one axis of what its bench leaves uncertain, in standard deviations. An axis changes several
 * values of the lens together, as the bench ties them to each other.
 */
export type Change =
  | { readonly kind: 'field'; readonly at: Place; readonly value: unknown }
  | {
      readonly kind: 'constant';
      readonly key: ConstantKey;
      readonly value: number;
    }
  | { readonly kind: 'lens-axis'; readonly axis: number; readonly value: number }
  | {
      readonly kind: 'entry-axis';
      readonly file: FileId;
      readonly entry: EntryId;
      readonly axis: number;
      readonly value: number;
    };

export type ConstantKey = Exclude<keyof Constants, 'lensStands' | 'entryStands'>;

/** An input that is not known exactly. */
export interface Width {
  /** The key in the plan's words, or what it is: `loss`, `meter constant`. */
  readonly key: string;
  /** What it belongs to: `long-200`; null: the calculation itself. */
  readonly of: string | null;
  /** Where it stands or would stand; null: no key of a plan says it. */
  readonly at: Place | null;
  /** null: it was written as a range. */
  readonly assumed: AssumptionId | null;
  /** What is assumed; left out: it was written as a range, or only words say it. */
  readonly prior?: Prior;
  readonly low: Change;
  readonly high: Change;
  /** What it is taken for between them; null: there is nothing between the ends (`none` or 100 Hz). */
  readonly middle: number | null;
  /**
   * Where it has to be looked at besides its ends and its middle, as shares of the way from the
   * middle (0) to the low end (-1) or the high one (1).
   */
  readonly between: readonly number[];
  /**
   * Widths of one group are uncertain together: all of them at their ends at once would be far less
   * likely than any of them alone. Their stands are a vector that is never longer than 1.
   */
  readonly group?: string;
  /** Of an axis of a lens: what it changes over one standard deviation, in the order of `LensBeliefs`. */
  readonly direction?: readonly number[];
  /** In its middle it hides what others of the rig do to a figure. */
  readonly hides?: true;
}

/** What a rig's layout doesn't read. */
const BESIDE_THE_RIG: readonly GroupName[] = ['shots', 'lights', 'subjects'];

/** Whether a place is one that a rig's layout may read. */
export const isRigsPlace = ({ entry }: Place): boolean =>
  !BESIDE_THE_RIG.some((group) => isOf(group, entry));

/** Whether it may change the rig's layout. */
export const isOfRig = ({ at }: Width): boolean => at !== null && isRigsPlace(at);

/**
 * The value of a width so far from its middle; undefined: in its middle.
 *
 * @param stand from -1, the low end, to 1, the high one
 */
export function changeTo(width: Width, stand: number): Change | undefined {
  if (stand === 0) return undefined;
  const end = stand < 0 ? width.low : width.high;
  // An end of what is assumed may be its middle.
  if (end.value === width.middle) return undefined;
  if (Math.abs(stand) === 1 || width.middle === null) return end;
  const value = width.middle + Math.abs(stand) * ((end.value as number) - width.middle);
  return { ...end, value } as Change;
}
