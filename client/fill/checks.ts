/// <reference lib="dom" />
/** The boxes of checks that the sheet has anyway, kept with when and by whom. */
import type { FillCheck, FillShot } from '../../shared/report/sheet/fill.ts';
import { isName } from './as-written.ts';
import type { Day } from './day.ts';
import { make, say } from './dom.ts';

/**
 * @param shot null: the checks of the day, in the page's head
 * @returns brings the boxes up to what is kept
 */
export function checksOf(day: Day, shot: FillShot | null, section: Element): () => void {
  const checks: readonly FillCheck[] = shot ? shot.checks : day.data.once;
  const name = shot?.name ?? null;
  const rows = [...section.querySelectorAll<HTMLInputElement>('.checks input')].flatMap(
    (input, index) => {
      const check = checks[index];
      if (!check || !isName(check.name)) return [];
      const when = make('small', { class: 'when' });
      input.closest('label')?.append(when);
      input.addEventListener('change', () => day.setDone(name, check, input.checked));
      return [{ input, check, when }];
    },
  );
  const state = section.querySelector('.state');
  return () => {
    let open = 0;
    for (const { input, check, when } of rows) {
      const kept = day.done(name, check.name);
      input.checked = kept?.done ?? check.done;
      if (!input.checked) open++;
      say(when, kept?.done ? whenWords(kept.at, kept.by) : '');
    }
    const words = shot?.states[open];
    if (state && words !== undefined) say(state, words);
  };
}

const whenWords = (at: string, by = ''): string => {
  const time = new Date(at).toLocaleTimeString([], { hour: '2-digit', minute: '2-digit' });
  return by === '' ? time : `${time}, ${by}`;
};
