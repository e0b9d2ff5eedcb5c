/** The day on the sheet: how long it is, what it leaves out, and its picture. */
import type { DaySheet } from '../../api/sheet.ts';
import { dayJson } from '../../figures/day-contract.ts';
import type { DayFigures } from '../../figures/day-figures.ts';
import { valueIn } from '../../figures/figure.ts';
import type { Say } from '../../say/say.ts';
import { message } from '../../words/message.ts';
import { dayRemarks, neededWords } from '../day-words.ts';
import { dayDrawing } from './drawings/day.ts';

export function daySheet(day: DayFigures | null, say: Say): DaySheet | null {
  const json = dayJson(day);
  if (!day || !json) return null;
  const { date, place, start, end } = json;
  const hours = start !== null && end !== null ? message`${start} to ${end}` : (start ?? end);
  return {
    when: [date, place, hours].filter((one) => one !== null).join(' · '),
    remarks: [message`Time needed: ${neededWords(json, say)}.`, ...dayRemarks(json, say)],
    drawing: dayDrawing(json, valueIn(day.startS) ?? null, say),
  };
}
