/** What stands on the bench for a shot, and what changes from one to the next. */

export interface SetUp {
  readonly shot: string;
  /** null: the shot names none. */
  readonly rig: string | null;
  /** Parts, support and filters: another rig of the same parts is no rebuild. */
  readonly parts: readonly string[];
  /** Lights by name; the same name with another word behind it stands elsewhere. */
  readonly lights: readonly Placed[];
  readonly subject: string | null;
  readonly body: string | null;
  /** A time-lapse: once begun, it runs by itself. */
  readonly isLapse: boolean;
}

interface Placed {
  readonly name: string;
  /** Where it stands and how it is dimmed, as one text. */
  readonly place: string;
}

/** Before the first shot of a day. */
export const NOTHING_UP: SetUp = {
  shot: '',
  rig: null,
  parts: [],
  lights: [],
  subject: null,
  body: null,
  isLapse: false,
};

export const isSameRig = (a: SetUp, b: SetUp): boolean =>
  a.rig === b.rig && a.parts.join('\n') === b.parts.join('\n');

/** How much is rebuilt between two shots. */
export interface Rebuild {
  readonly rigs: number;
  /** Lights that are put up, moved, dimmed or taken down, each once. */
  readonly lights: number;
  readonly subjects: number;
}

export function rebuildBetween(a: SetUp, b: SetUp): Rebuild {
  const before = new Map(a.lights.map(({ name, place }) => [name, place]));
  const stays = b.lights.filter(({ name, place }) => before.get(name) === place).length;
  const moved = b.lights.filter(({ name, place }) => (before.get(name) ?? place) !== place).length;
  return {
    rigs: isSameRig(a, b) ? 0 : 1,
    lights: a.lights.length + b.lights.length - 2 * stays - moved,
    subjects: a.subject === b.subject || b.subject === null ? 0 : 1,
  };
}
