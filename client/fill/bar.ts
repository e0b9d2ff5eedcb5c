/// <reference lib="dom" />
/** What stays in reach of the thumb: where one is, what comes next, and the way out. */
import type { FillShot } from '../../shared/report/sheet/fill.ts';
import type { Day } from './day.ts';
import { button, filled, make, say } from './dom.ts';
import { countWords } from './takes.ts';

/** @returns brings it up to what is kept and to where the page is */
export function barOf(
  day: Day,
  sections: ReadonlyMap<string, Element>,
  save: () => void,
): () => void {
  const { data } = day;
  const { words, order } = data;
  const shots = new Map(data.shots.map((shot) => [shot.name, shot]));
  let current: string | null = null;
  const links = [...document.querySelectorAll('.shots [data-to]')];

  const name = make('strong');
  const count = make('span');
  const next = button('', () => {
    const to = nextShot();
    if (to) sections.get(to)?.scrollIntoView();
  });
  next.className = 'next';
  const bar = make(
    'nav',
    { class: 'fill-bar', 'aria-label': words.day },
    make('p', {}, name, count),
    next,
    button(words.save, save),
  );
  document.body.append(bar);

  const isDone = ({ name: shot, takes }: FillShot): boolean =>
    day.keptTakes(shot) >= Math.max(1, takes);
  /** Behind the present one, then from the start of the day. */
  const nextShot = (): string | undefined => {
    const at = current === null ? -1 : order.indexOf(current);
    return [...order.slice(at + 1), ...order.slice(0, Math.max(0, at))].find((each) => {
      const shot = shots.get(each);
      return shot !== undefined && sections.has(each) && !isDone(shot);
    });
  };
  const update = (): void => {
    const shot = current === null ? undefined : shots.get(current);
    say(name, shot?.name ?? words.day);
    say(count, shot ? countWords(day, shot, day.keptTakes(shot.name)) : data.plan);
    const to = nextShot();
    say(next, to === undefined ? words.allDone : filled(words.next, to));
    next.disabled = to === undefined;
    for (const link of links)
      if (link.getAttribute('data-to') === current) link.setAttribute('aria-current', 'true');
      else link.removeAttribute('aria-current');
  };

  // The shot that the upper part of the window shows.
  const seen = new IntersectionObserver(
    (entries) => {
      for (const { isIntersecting, target } of entries) {
        const shot = [...sections].find(([, section]) => section === target)?.[0] ?? null;
        if (isIntersecting) current = shot;
        else if (current === shot) current = null;
      }
      update();
    },
    { rootMargin: '-30% 0px -69% 0px' },
  );
  for (const section of sections.values()) seen.observe(section);
  return update;
}
