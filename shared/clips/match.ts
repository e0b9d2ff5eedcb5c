/**
 * Clips of a card matched to takes by time. The body's clock may be wrong or in another zone, and files
 * say when they were begun or when they were closed: both are found from the times themselves, as the
 * one difference that most pairs share. What two differences explain alike is left open.
 */

export interface TimedTake {
  readonly key: string;
  /** Since 1970, s. */
  readonly startS: number;
  /** null: not known. */
  readonly lengthS: number | null;
  /** The clip that it is known to be; null: not known. */
  readonly file: string | null;
}

export interface TimedClip {
  readonly file: string;
  /** By the body's clock, since 1970, s. */
  readonly createdS: number;
  readonly durationS: number;
}

interface Matched {
  readonly pairs: readonly { readonly take: string; readonly file: string }[];
  /** Takes that more than one clip may be, or that share one. */
  readonly doubtful: readonly { readonly take: string; readonly files: readonly string[] }[];
  /** By how much the body's clock is ahead, s; null: nobody can say. */
  readonly aheadS: number | null;
}

/** Two hands on two buttons, s. */
const NEAR_S = 15;
/** By how much a length by the sheet's timer and that of the clip may differ, s and share. */
const LENGTH_S = 5;
const LENGTH_SHARE = 0.25;
/** One pair alone says nothing of a clock, unless that is right but for its zone. */
const ZONE_S = 3600;
const RIGHT_S = 60;
const MOST_ZONES = 14;
/** Differences that are looked at closer. */
const MOST_TRIED = 40;

const NOTHING: Matched = { pairs: [], doubtful: [], aheadS: null };

interface Stamp {
  readonly clip: TimedClip;
  /** When it was begun, by the body's clock, s. */
  readonly startS: number;
}

/** Takes times clips that are compared. */
export const MOST_COMPARED = 1_000_000;

export function matchClips(takes: readonly TimedTake[], clips: readonly TimedClip[]): Matched {
  if (takes.length * clips.length > MOST_COMPARED) return NOTHING;
  const begun = clips.map((clip) => ({ clip, startS: clip.createdS }));
  const closed = clips.map((clip) => ({ clip, startS: clip.createdS - clip.durationS }));
  const tried = [begun, closed].flatMap((stamps) =>
    differences(takes, stamps).map((aheadS) => matchedAt(takes, stamps, aheadS)),
  );
  const most = Math.max(0, ...tried.map(({ pairs }) => pairs.length));
  const best = tried.filter(({ pairs }) => pairs.length === most);
  const [first] = best;
  if (most === 0 || !first) return NOTHING;
  const isKnown = takes.some(({ file }) => file !== null);
  const likely = most === 1 && !isKnown ? best.filter(isRightButForZone) : best;
  const ways = new Set(likely.map(({ pairs }) => JSON.stringify(pairs)));
  return ways.size === 1 ? likely[0]! : NOTHING;
}

const isRightButForZone = ({ aheadS }: Matched): boolean => {
  const zones = Math.round((aheadS ?? 0) / ZONE_S);
  return Math.abs(zones) <= MOST_ZONES && Math.abs((aheadS ?? 0) - zones * ZONE_S) <= RIGHT_S;
};

/** Differences that many pairs share, each once; where pairs are known, theirs alone. */
function differences(takes: readonly TimedTake[], stamps: readonly Stamp[]): readonly number[] {
  const known = takes.filter(({ file }) => file !== null);
  const all = (known.length > 0 ? known : takes).flatMap((take) =>
    stamps.flatMap(({ clip, startS }) =>
      (take.file === null || take.file === clip.file) && isAsLong(take, clip)
        ? [startS - take.startS]
        : [],
    ),
  );
  all.sort((a, b) => a - b);
  const windows: { readonly middle: number; readonly count: number }[] = [];
  for (let from = 0, to = 0; from < all.length; from++) {
    while (to < all.length && all[to]! - all[from]! <= NEAR_S) to++;
    windows.push({ middle: all[(from + to - 1) >> 1]!, count: to - from });
  }
  windows.sort((a, b) => b.count - a.count);
  const chosen: number[] = [];
  for (const { middle } of windows) {
    if (chosen.length >= MOST_TRIED) break;
    if (!chosen.some((one) => Math.abs(one - middle) < NEAR_S / 2)) chosen.push(middle);
  }
  return chosen;
}

const isAsLong = ({ lengthS }: TimedTake, { durationS }: TimedClip): boolean =>
  lengthS === null || Math.abs(durationS - lengthS) <= LENGTH_S + LENGTH_SHARE * lengthS;

function matchedAt(takes: readonly TimedTake[], stamps: readonly Stamp[], aheadS: number): Matched {
  const near = takes.map((take) => ({
    take,
    files: stamps
      .filter(
        ({ clip, startS }) =>
          Math.abs(startS - take.startS - aheadS) <= NEAR_S &&
          isAsLong(take, clip) &&
          (take.file === null || take.file === clip.file),
      )
      .map(({ clip }) => clip.file),
  }));
  const times = new Map<string, number>();
  for (const { files } of near)
    for (const file of files) times.set(file, (times.get(file) ?? 0) + 1);
  const isSure = (files: readonly string[]) => files.length === 1 && times.get(files[0]!) === 1;
  return {
    pairs: near.flatMap(({ take, files }) =>
      isSure(files) ? [{ take: take.key, file: files[0]! }] : [],
    ),
    doubtful: near.flatMap(({ take, files }) =>
      files.length > 0 && !isSure(files) ? [{ take: take.key, files }] : [],
    ),
    aheadS,
  };
}
