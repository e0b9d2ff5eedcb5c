/// <reference lib="dom" />
/** Takes of one shot: counted, timed, kept or not, with what was really set. */
import type { FillShot } from '../../shared/report/sheet/fill.ts';
import { asWritten } from './as-written.ts';
import type { Day, Take } from './day.ts';
import { box, button, clock, filled, make, say, secondsSince, showIn, sureButton } from './dom.ts';
import { type TakeCard, takeCard } from './take-card.ts';

/** More are no day's work, and a text must end. */
const MOST_TAKES = 99;

interface Shown {
  /** Brings it up to what is kept. */
  update(): void;
  /** Once a quarter of a second. */
  tick(): void;
}

export function takesOf(day: Day, shot: FillShot, section: Element): Shown {
  const { words } = day.data;
  const { name } = shot;
  const running = (): readonly [number, Take] | undefined =>
    day.takes(name).find(([, { seconds }]) => seconds === null);

  const count = make('p', { class: 'count' });
  const time = make('output', { class: 'clock', 'aria-live': 'off' });
  const planned = make('span', { class: 'of' });
  const start = button(
    '',
    () => {
      const now = running();
      if (now) {
        day.changeTake(name, now[0], { seconds: lengthOf(now[1]) });
        cards.get(now[0])?.open();
      } else if (day.nextNumber(name) <= MOST_TAKES) day.startTake(shot);
    },
    'main',
  );
  if (shot.takeS !== null) planned.textContent = filled(words.planned, round(shot.takeS));
  const most = make('p', { class: 'note', hidden: true }, filled(words.tooMany, MOST_TAKES));
  const list = make('ol', { class: 'takes' });
  const life = lifeOf(day, shot);
  const exposure = shot.exposureAsked
    ? box(words.exposure, { maxlength: 40 }, (text) => day.setExposure(shot, text))
    : null;
  const block = make(
    'section',
    { class: 'fill' },
    make('div', { class: 'top' }, make('h3', {}, words.takes), count),
    make('div', { class: 'timer' }, start, make('p', {}, time, planned)),
    most,
    ...(life ? [life.element] : []),
    ...(exposure ? [exposure.label] : []),
    list,
  );
  const before = section.querySelector('.settings') ?? section.querySelector('header');
  before?.after(block);

  const cards = new Map<number, TakeCard>();
  const update = (): void => {
    const takes = day.takes(name);
    const kept = day.keptTakes(name);
    say(count, countWords(day, shot, kept));
    const now = running();
    const next = day.nextNumber(name);
    say(start, now ? filled(words.stop, now[0]) : filled(words.start, next));
    start.classList.toggle('on', now !== undefined);
    start.disabled = !now && next > MOST_TAKES;
    most.hidden = !start.disabled;
    time.hidden = now === undefined;
    for (const [number, take] of takes) {
      let card = cards.get(number);
      if (!card) {
        card = takeCard(day, shot, number);
        cards.set(number, card);
        const after = [...cards].filter(([other]) => other > number).map(([, one]) => one.element);
        // The newest is nearest to the thumb.
        const older = [...cards].filter(([other]) => other < number).sort(([a], [b]) => b - a)[0];
        if (older) older[1].element.before(card.element);
        else if (after.length > 0) list.append(card.element);
        else list.prepend(card.element);
      }
      card.update(take);
    }
    for (const [number, card] of cards) {
      if (takes.some(([each]) => each === number)) continue;
      card.element.remove();
      cards.delete(number);
    }
    life?.update();
    if (exposure) showExposure(exposure.input, day.exposure(name)?.text ?? '');
    tick();
  };
  const tick = (): void => {
    const now = running();
    if (now) say(time, clock(secondsSince(now[1].at)));
    life?.tick();
  };
  return { update, tick };
}

/** What is no number of stops is marked, and goes with a remark. */
function showExposure(input: HTMLInputElement, text: string): void {
  showIn(input, text);
  const isOdd = input.value.trim() !== '' && asWritten('exposure', input.value) === null;
  input.setAttribute('aria-invalid', String(isOdd));
}

const round = (seconds: number): number => Math.round(seconds * 10) / 10;

const lengthOf = (take: Take): number => round(Math.max(0, secondsSince(take.at)));

export const countWords = ({ data: { words } }: Day, { takes }: FillShot, kept: number): string =>
  takes > 0 ? filled(words.kept, kept, takes) : filled(words.keptOnly, kept);

/** How long film or bubble lasts; what was counted goes with the remark of the latest take. */
function lifeOf(day: Day, shot: FillShot): (Shown & { element: Element }) | null {
  const { name, lifeS } = shot;
  if (lifeS === null) return null;
  const { words } = day.data;
  const time = make('output', { class: 'clock', 'aria-live': 'off' });
  const lasts = make('span', { class: 'of' });
  if (lifeS !== 'unknown') lasts.textContent = filled(words.lasts, Math.floor(lifeS));
  const pressed = (): void => {
    const since = day.lifeSince(name);
    if (since === null) {
      day.setLife(name, new Date().toISOString());
      return;
    }
    const seconds = round(secondsSince(since));
    const counted = filled(words.lasted, seconds);
    say(time, counted);
    day.setLife(name, null);
    if (seconds > 0) day.addLifetime(shot, seconds);
    const latest = day.takes(name).at(-1);
    if (!latest) return;
    const [number, { note }] = latest;
    day.changeTake(name, number, { note: note === '' ? counted : `${note}; ${counted}` });
  };
  const start = button('', pressed);
  const counts = make('span', { class: 'of' });
  const remove = sureButton(words.lifeRemove, words.sure, () => day.removeLifetime(name));
  const about = make('p', {}, time, lasts, counts);
  const element = make('div', { class: 'timer life' }, start, about, remove);
  const tick = (): void => {
    const since = day.lifeSince(name);
    if (since === null) return;
    const seconds = secondsSince(since);
    say(time, clock(seconds));
    time.classList.toggle('over', lifeS !== 'unknown' && seconds > lifeS);
  };
  const update = (): void => {
    const since = day.lifeSince(name);
    say(start, since === null ? words.lifeStart : words.lifeStop);
    start.classList.toggle('on', since !== null);
    if (since === null) time.classList.remove('over');
    const counted = day.lifetimes(name).map(({ seconds }) => seconds);
    remove.hidden = counted.length === 0;
    say(counts, counted.length === 0 ? '' : filled(words.lifeCounted, counted.join(', ')));
  };
  return { element, update, tick };
}
