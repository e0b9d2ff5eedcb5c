/** Files of a card as the clips of takes, by time: what is sure is proposed, the rest is told. */
import { MOST_COMPARED, matchClips, type TimedTake } from '../clips/match.ts';
import { message } from '../words/message.ts';
import type { Day } from './day.ts';
import { PlanText } from './plan-text.ts';
import { Told } from './told.ts';
import { freeText } from './write.ts';

/** A file of the card; times are null where its header has none, or it can't be read. */
export interface CardClip {
  /** As the plan is to name it. */
  readonly file: string;
  /** By the body's clock, ISO 8601. */
  readonly created: string | null;
  readonly durationS: number;
}

interface Laid {
  /** The plan with the files in it. */
  readonly text: string;
  /** What is proposed, a line each. */
  readonly done: readonly string[];
  /** What was left, and why, a line each. */
  readonly left: readonly string[];
}

interface ListedTake extends TimedTake {
  readonly path: readonly [section: string, shot: string, index: number];
  readonly words: string;
}

/**
 * Laying the same files again changes nothing.
 *
 * @param text of the plan, with the day brought back
 * @param day its takes say how long they ran; null: no day
 * @returns null where the plan's text has errors that leave open where something belongs
 */
export function layClips(clips: readonly CardClip[], text: string, day: Day | null): Laid | null {
  const plan = new PlanText(text);
  if (!plan.isWhole) return null;
  const told = new Told();
  const takes = takesIn(plan, day, clips);
  const timed = clips.flatMap(({ file, created, durationS }) => {
    const createdS = secondsOf(created);
    return createdS === null ? [] : [{ file, createdS, durationS }];
  });
  if (takes.length * timed.length > MOST_COMPARED)
    told.leave(message`The card has too many clips to be compared: ${timed.length}.`);
  const { pairs, doubtful, aheadS } = matchClips(takes, timed);
  const byKey = new Map(takes.map((take) => [take.key, take]));
  let isAny = false;
  for (const { take: key, file } of pairs) {
    const take = byKey.get(key)!;
    if (take.file !== null) continue;
    isAny = true;
    if (plan.set([...take.path, 'file'], freeText(file)))
      told.bring(message`${take.words}: ${file}, by its time.`);
    else told.leave(message`${take.words}: \`file\` can't be written where it belongs.`);
  }
  if (isAny && aheadS !== null) told.bring(clockWords(aheadS));
  for (const { take: key, files } of doubtful)
    told.leave(message`${byKey.get(key)!.words} may be ${files.join(', ')}. Nothing is proposed.`);
  tellOthers(clips, timed, takes, pairs, doubtful, told);
  const { done, left } = told;
  return { text: plan.text(), done, left };
}

/** Takes of the plan that say when they were made. */
function takesIn(
  plan: PlanText,
  day: Day | null,
  clips: readonly CardClip[],
): readonly ListedTake[] {
  return plan.names('clips').flatMap((shot) => {
    const list = plan.at('clips', shot);
    const count = list?.kind === 'seq' ? list.items.length : 0;
    return Array.from({ length: count }, (_, index) => index).flatMap((index): ListedTake[] => {
      const path = ['clips', shot, index] as const;
      const time = plan.scalar(...path, 'time');
      const startS = secondsOf(time);
      if (startS === null) return [];
      const file = fileOf(plan.scalar(...path, 'file'), clips);
      if (file === undefined) return [];
      const take = plan.scalar(...path, 'take') ?? String(index + 1);
      const lengthS =
        day?.takes.find((one) => one.shot === shot && one.at === time)?.seconds ?? null;
      const words = message`Take ${take} of ${shot}`;
      return [{ key: `${shot} ${index}`, startS, lengthS, file, path, words }];
    });
  });
}

/** The clip of the card that a take's file is; null: it has none; undefined: it is on another card. */
function fileOf(written: string | null, clips: readonly CardClip[]): string | null | undefined {
  if (written === null) return null;
  const isIt = ({ file }: CardClip): boolean =>
    file === written || file.endsWith(`/${written}`) || written.endsWith(`/${file}`);
  return clips.find(isIt)?.file;
}

/** Since 1970. Bodies that name no zone are read as if theirs were UTC; only differences count. */
function secondsOf(time: string | null): number | null {
  if (time === null) return null;
  const zoned = /(?:Z|[+-]\d\d:?\d\d)$/.test(time) ? time : `${time}Z`;
  const parsed = Date.parse(zoned.replace(/([+-]\d\d)(\d\d)$/, '$1:$2')) / 1000;
  return Number.isFinite(parsed) ? parsed : null;
}

const NOTICED_S = 60;

function clockWords(aheadS: number): string {
  const minutes = Math.round(Math.abs(aheadS) / 60);
  if (Math.abs(aheadS) < NOTICED_S) return message`The body's clock agrees with the sheet's.`;
  return aheadS > 0
    ? message`The body's clock is ${minutes} min ahead of the sheet's.`
    : message`The body's clock is ${minutes} min behind the sheet's.`;
}

/** What of the card is no take, and why. */
function tellOthers(
  clips: readonly CardClip[],
  timed: readonly { readonly file: string }[],
  takes: readonly ListedTake[],
  pairs: readonly { readonly file: string }[],
  doubtful: readonly { readonly files: readonly string[] }[],
  told: Told,
): void {
  const used = new Set([
    ...takes.map(({ file }) => file),
    ...pairs.map(({ file }) => file),
    ...doubtful.flatMap(({ files }) => files),
  ]);
  const isTimed = new Set(timed.map(({ file }) => file));
  const others = clips.filter(({ file }) => !used.has(file));
  const untimed = others.filter(({ file }) => !isTimed.has(file));
  const unmatched = others.filter(({ file }) => isTimed.has(file));
  if (untimed.length > 0)
    told.leave(message`No time in the header: ${untimed.map(({ file }) => file).join(', ')}.`);
  if (unmatched.length > 0)
    told.leave(
      message`No take at the time of: ${unmatched.map(({ file }) => file).join(', ')}. Nothing is proposed.`,
    );
}
