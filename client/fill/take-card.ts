/// <reference lib="dom" />
/** One take: a line that says what became of it, and below it the fields. */
import type { FillShot } from '../../shared/report/sheet/fill.ts';
import type { Day, Take } from './day.ts';
import { box, button, filled, make, say, showIn, sureButton } from './dom.ts';

export interface TakeCard {
  readonly element: HTMLElement;
  update(take: Take): void;
  open(): void;
}

/** Characters; the page on the format names them too. */
const MOST = { clip: 200, note: 500, used: 40, setting: 40 } as const;

export function takeCard(day: Day, shot: FillShot, number: number): TakeCard {
  const { words } = day.data;
  const { name } = shot;
  const change = (what: Partial<Take>): void => day.changeTake(name, number, what);
  const now = (): Take | undefined => day.takes(name).find(([each]) => each === number)?.[1];

  const title = make('strong', {}, filled(words.take, number));
  const state = make('span', {});
  const verdict = (label: string, is: boolean): HTMLButtonElement =>
    button(label, () => change({ keep: now()?.keep === is ? null : is }));
  const [keep, reject] = [verdict(words.keep, true), verdict(words.reject, false)];
  const clip = box(words.clip, { maxlength: MOST.clip }, (text) => change({ clip: text }));
  const proposed = button('', () => change({ clip: proposed.textContent ?? '' }), 'quiet');
  const note = box(words.note, { maxlength: MOST.note }, (text) => change({ note: text }));
  const used = box(words.used, { maxlength: MOST.used }, (text) => change({ used: text }));
  const settings = shot.settings.map(({ key, label, value }) => ({
    key,
    ...box(label, { maxlength: MOST.setting, placeholder: value ?? '' }, (text) =>
      change({ set: { ...now()?.set, [key]: text } }),
    ),
  }));
  const remove = sureButton(words.remove, words.sure, () => day.removeTake(name, number));
  const details = make(
    'details',
    { open: true },
    make('summary', {}, title, state),
    make('div', { class: 'verdict' }, keep, reject),
    clip.label,
    proposed,
    note.label,
    used.label,
    make(
      'details',
      { class: 'set' },
      make('summary', {}, words.different),
      make('div', { class: 'fields' }, ...settings.map(({ label }) => label)),
    ),
    remove,
  );
  return {
    element: make('li', {}, details),
    open: () => {
      details.open = true;
    },
    update(take) {
      say(state, stateOf(day, take));
      keep.setAttribute('aria-pressed', String(take.keep === true));
      reject.setAttribute('aria-pressed', String(take.keep === false));
      details.classList.toggle('kept', take.keep === true);
      details.classList.toggle('rejected', take.keep === false);
      showIn(clip.input, take.clip);
      showIn(note.input, take.note);
      showIn(used.input, take.used);
      for (const { key, input } of settings) showIn(input, take.set[key] ?? '');
      const following = take.clip === '' ? clipAfter(day, name, number) : null;
      proposed.hidden = following === null;
      say(proposed, following ?? '');
    },
  };
}

/** "14:03 · 38 s · kept" */
function stateOf({ data: { words } }: Day, { at, seconds, keep, clip }: Take): string {
  const time = new Date(at).toLocaleTimeString([], { hour: '2-digit', minute: '2-digit' });
  const length = seconds === null ? words.running : `${seconds} s`;
  const became = keep === null ? '' : keep ? words.keptMark : words.rejectedMark;
  return [time, length, clip, became].filter((word) => word !== '').join(' · ');
}

/** What a camera calls the clip after that of the take before: a proposal, to be tapped. */
function clipAfter(day: Day, shot: string, number: number): string | null {
  const before = day.takes(shot).find(([each]) => each === number - 1)?.[1].clip ?? '';
  const found = /^(.*?)(\d{1,15})(\D*?(?:\.\w+)?)$/.exec(before);
  if (!found) return null;
  const [, start = '', digits = '', end = ''] = found;
  return start + String(Number(digits) + 1).padStart(digits.length, '0') + end;
}
