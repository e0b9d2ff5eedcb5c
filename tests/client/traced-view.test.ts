/** Traced frames in the live view: put up, kept where a section is exchanged, taken away. */
import { JSDOM } from 'jsdom';
import { afterAll, expect, it, vi } from 'vitest';

const { window } = new JSDOM('<main></main>');
vi.stubGlobal('document', window.document);
afterAll(() => void vi.unstubAllGlobals());

const { keepFrame, putFrame } = await import('../../client/view/traced.ts');

const frame = {
  width: 160,
  height: 90,
  src: 'data:image/png;base64,AAAA',
  caption: ['Traced <b>from</b> the plan.', 'And more.'],
};

function section(): Element {
  const made = window.document.createElement('section');
  made.innerHTML = '<div class="drawings"><figure>drawn</figure></div>';
  return made;
}

it('puts a frame first among the drawings, its words as words', () => {
  const skin = section();
  keepFrame({ kind: 'frame', shot: 'skin', frame });
  putFrame('skin', skin);
  const figure = skin.querySelector('.drawings')!.firstElementChild!;
  expect(figure.querySelector('img')!.getAttribute('src')).toBe(frame.src);
  expect(figure.querySelector('figcaption')!.textContent).toBe(frame.caption.join(' '));
  expect(figure.querySelector('b')).toBeNull();
});

it('keeps it over an exchange of the section, sharpens it in place, and takes it away', () => {
  const before = section();
  keepFrame({ kind: 'frame', shot: 'frost', frame });
  putFrame('frost', before);
  const after = section();
  putFrame('frost', after);
  expect([before, after].map((one) => one.querySelectorAll('img').length)).toEqual([0, 1]);
  keepFrame({ kind: 'frame', shot: 'frost', frame: { ...frame, width: 480 } });
  expect(after.querySelector('img')!.width).toBe(480);
  keepFrame({ kind: 'frame', shot: 'frost', frame: null });
  expect(after.querySelectorAll('figure').length).toBe(1);
  putFrame('frost', after);
  expect(after.querySelectorAll('img').length).toBe(0);
});
