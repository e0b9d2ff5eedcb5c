/** What a key or value is in the language, by the table of shapes: followed from its entry down. */

import { keysOf, plainId } from '../plan/entry-id.ts';
import type { DefName, Group } from '../plan/generated/names.ts';
import { SHAPES } from '../plan/generated/shapes.ts';
import type { EntryId, Place } from '../plan/place.ts';
import type { KeyShape, Shape } from '../plan/shape.ts';
import type { EntryKind } from '../workspace/entry-kinds.ts';

export interface Meaning {
  /** The key of the language that the place stands under: `aperture`, `lenses`. */
  readonly key: string;
  readonly keyShape: KeyShape;
  /** The kind of record that the key belongs to. */
  readonly of: DefName;
  /** The shape of what stands at the place itself: of the value, or of an item in it. */
  readonly shape: Shape;
  /** Where the last step is a name of the plan's own, and not a key of the language. */
  readonly name?: string;
  /** The groups that `name` refers to; absent: it is defined here. */
  readonly refersTo?: readonly Group[];
}

/** null: not of the language. */
export function meaningOf(kind: EntryKind, { entry, path }: Place): Meaning | null {
  const start = startOf(kind, entry);
  return start && path.reduce<Meaning | null>((at, step) => at && below(at, step), start);
}

function startOf(kind: EntryKind, entry: EntryId): Meaning | null {
  const [section = '', group = ''] = keysOf(plainId(entry));
  switch (kind.kind) {
    case 'key':
      return keyMeaning(kind.def, kind.key);
    case 'container':
      return group === '' ? keyMeaning('plan', section) : keyMeaning(section as DefName, group);
    case 'entry':
    case 'clips': {
      const outer = section === 'kit' || section === 'edit';
      const home = outer ? keyMeaning(section, group) : keyMeaning('plan', section);
      return home && below(home, kind.name);
    }
    case 'unknown':
      return null;
  }
}

function keyMeaning(of: DefName, key: string): Meaning | null {
  const { keys } = SHAPES[of];
  const keyShape = Object.hasOwn(keys, key) ? keys[key] : undefined;
  return keyShape ? { key, keyShape, of, shape: keyShape.shape } : null;
}

function below(at: Meaning, step: string | number): Meaning | null {
  const { key, keyShape, of, shape } = at;
  if (typeof step === 'number')
    return shape.kind === 'list' ? { key, keyShape, of, shape: shape.item } : null;
  switch (shape.kind) {
    case 'record':
    case 'word-or-record':
      return keyMeaning(shape.of, step);
    case 'map':
      return {
        key,
        keyShape,
        of,
        shape: shape.item,
        name: step,
        ...(shape.names && { refersTo: shape.names }),
      };
    default:
      return null;
  }
}
