/** What a day comes to: how much time its shots need, and which part of it one shot has. */
import { dayJson } from '../../figures/day-contract.ts';
import type { DayShotJson } from '../../figures/day-json.ts';
import { entryAt, isOf, nameOf } from '../../plan/entry-id.ts';
import type { FileId, Place } from '../../plan/place.ts';
import { dayRemarks, hourWords, neededWords, rebuildWords } from '../../report/day-words.ts';
import { message } from '../../words/message.ts';
import type { Context } from '../../workspace/context.ts';
import { last, line, paragraphs, plain, table } from './markdown.ts';

const isDay = ({ entry }: Place): boolean => entry === entryAt('day');

/** Keys of a shot that place it in the day. */
const OF_SHOTS: ReadonlySet<unknown> = new Set(['priority', 'start']);

/** null: the place has nothing to do with a day, or there is none. */
export function dayHover(context: Context, place: Place): string | null {
  if (isDay(place)) return wholeDay(context, place.file);
  if (isOf('shots', place.entry) && OF_SHOTS.has(place.path[0]))
    return ofShot(context, place.file, nameOf('shots', place.entry));
  return null;
}

function wholeDay({ analysis, say }: Context, file: FileId): string | null {
  const day = dayJson(analysis.day(file));
  if (!day) return null;
  const [first, final] = [day.shots[0], day.shots.at(-1)];
  const over = day.overS;
  return paragraphs(
    table([
      line(message`time needed`, `**${neededWords(day, say)}**`),
      over !== null &&
        (over > 0
          ? line(message`too long`, say.seconds(over))
          : line(message`left of the day`, say.seconds(-over))),
      first && line(message`first`, shotWords(first)),
      final && final !== first && line(message`last`, shotWords(final)),
    ]),
    dayRemarks(day, say).map(remark).join(' '),
    last(
      message`Formula: building, waiting and takes of every shot, in the order with the fewest changes.`,
    ),
    message`Source: common practice for times of rebuilding that the day leaves out.`,
  );
}

/** Names in backticks are code already; those of the plan's own making are plain. */
const remark = (words: string): string => plain(words.replaceAll('`', ''));

const shotWords = (step: DayShotJson): string =>
  message`${hourWords(step.begins, step.beginsS)} ${plain(step.shot)}`;

function ofShot({ analysis, say }: Context, file: FileId, name: string): string | null {
  const step = dayJson(analysis.day(file))?.shots.find(({ shot }) => shot === name);
  if (!step) return null;
  const built = rebuildWords(step.rebuilt);
  return table([
    line(message`begins`, `**${hourWords(step.begins, step.beginsS)}**`),
    line(message`done`, step.workS === null ? message`unknown` : hourWords(step.ends, step.endsS)),
    built !== '' && line(message`rebuilt before`, `${built}, ${say.seconds(step.rebuildS)}`),
    step.waitS > 0 && line(message`waiting`, say.seconds(step.waitS)),
    step.lateS > 0 && line(message`late`, say.seconds(step.lateS)),
  ]);
}
