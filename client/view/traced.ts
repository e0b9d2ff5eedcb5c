/// <reference lib="dom" />
/** Traced frames in the live view, each first among the drawings of its shot. */
import type { ToView } from './messages.ts';

type Traced = Extract<ToView, { kind: 'frame' }>;

const figures = new Map<string, HTMLElement>();

/** Keeps a shot's frame; it goes where the shot's section is put up. */
export function keepFrame({ shot, frame }: Traced): void {
  if (!frame) {
    figures.get(shot)?.remove();
    figures.delete(shot);
    return;
  }
  const image = document.createElement('img');
  image.src = frame.src;
  image.width = frame.width;
  image.height = frame.height;
  image.alt = frame.caption[0] ?? '';
  const words = document.createElement('figcaption');
  words.textContent = frame.caption.join(' ');
  const figure = document.createElement('figure');
  figure.className = 'traced';
  figure.append(image, words);
  figures.get(shot)?.replaceWith(figure);
  figures.set(shot, figure);
}

/** Puts a shot's frame into its section, where there is one. */
export function putFrame(shot: string, section: Element): void {
  const figure = figures.get(shot);
  const drawings = section.querySelector('.drawings');
  if (figure && drawings && drawings.firstElementChild !== figure) drawings.prepend(figure);
}
