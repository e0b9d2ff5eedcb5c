/** Names of a plan's things, where they are defined and where they are used. */
import { ENTRIES } from '../plan/generated/entries.ts';
import type { DefName } from '../plan/generated/names.ts';

/** What a name can be of: a shot, a lens, a lamp. */
export const NAME_KINDS: readonly DefName[] = [
  ...new Set(Object.values(ENTRIES).map(({ def }) => def)),
];

export interface NameToken {
  readonly line: number;
  readonly character: number;
  /** In UTF-16 units, on one line. */
  readonly length: number;
  /** null: no such thing is known. */
  readonly kind: DefName | null;
  readonly isDefinition: boolean;
}
