/** Frames on the sheet that `lamella sheet` writes: in the page itself, and from nowhere else. */
import { JSDOM } from 'jsdom';
import { expect, it } from 'vitest';
import { sheetPage } from '../../shared/report/sheet/html.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { Say } from '../../shared/say/say.ts';
import { coreWith, PLAN } from '../support/plans.ts';

it('shows a frame with its caption under its shot, and lets no other picture in', () => {
  const caption = [
    'Traced from the plan, not a photograph.',
    'The film <b>has</b> no colours here.',
  ];
  const frames = new Map([
    ['skin', { src: 'data:image/png;base64,AAAA', width: 32, height: 18, caption }],
  ]);
  const html = sheetPage(
    coreWith(EXAMPLE_PLAN).sheet(PLAN),
    { say: new Say(() => 'mm'), frames },
    'sha256-x',
  );
  const page = new JSDOM(html).window.document;
  const policy = page.querySelector('meta[http-equiv]')!.getAttribute('content');
  expect(policy).toContain("default-src 'none'; style-src 'sha256-x'; img-src data:;");
  const images = [...page.querySelectorAll('img')];
  expect(images.map((image) => image.closest('[id^="shot."]')?.id)).toEqual(['shot.skin']);
  const [image] = images;
  expect(image!.getAttribute('src')).toBe('data:image/png;base64,AAAA');
  expect(image!.getAttribute('alt')).toBe('The frame as traced from the plan');
  const figure = image!.closest('figure')!;
  expect(figure.querySelector('figcaption')!.textContent).toBe(caption.join(' '));
  expect(figure.querySelector('b')).toBeNull();
});
