/** The traced frame in the live sheet: of the shot at the cursor, and anew after an edit of its tilt. */
import type { Locator } from 'playwright-core';
import { expect } from 'vitest';
import { sheetIn } from './live-sheet.ts';
import { sample, test, WAIT } from './opened.ts';
import { startWebHost } from './web-host.ts';

const FILE = 'tide-panes.shootplan.yaml';
const KIT = 'workshop-kit.shootplan.yaml';
const PLAN = sample(FILE);

/** Share of a frame's pixels that are black or nearly so; null: no frame is drawn. */
const blackShare = async (frame: Locator): Promise<number | null> =>
  (await frame.count()) === 0
    ? null
    : await frame.evaluate(async (one: HTMLImageElement) => {
        await one.decode();
        const [width, height] = [one.naturalWidth, one.naturalHeight];
        const canvas = Object.assign(document.createElement('canvas'), { width, height });
        const context = canvas.getContext('2d')!;
        context.drawImage(one, 0, 0);
        const { data } = context.getImageData(0, 0, width, height);
        let black = 0;
        for (let at = 0; at < data.length; at += 4)
          if (data[at]! + data[at + 1]! + data[at + 2]! < 30) black += 1;
        return black / (width * height);
      });

test('the frame follows the cursor, and shows the lens when the tilt gets too small', async ({
  open,
}) => {
  const { workbench } = await open(startWebHost, { [FILE]: PLAN, [KIT]: sample(KIT) });
  await workbench.hideSideBar();
  await workbench.run('Lamella: Show the Shot Sheet beside the Plan');
  const sheet = await sheetIn(workbench.page);
  const traced = (shot: string) => sheet.locator(`.shot[data-shot="${shot}"] .traced`);
  await workbench.focusText();
  await workbench.goTo('  swirl:', PLAN);
  await expect.poll(() => traced('swirl').count(), WAIT).toBe(1);

  await workbench.goTo('6 deg', PLAN);
  const frame = traced('bands-falling');
  await expect.poll(() => blackShare(frame.locator('img')), WAIT).toBeLessThan(0.05);
  const caption = () => frame.locator('figcaption').textContent();
  expect(await caption()).toContain('not a photograph');
  expect(await caption()).not.toContain('Stripes');

  await workbench.page.keyboard.press('Delete');
  await workbench.page.keyboard.type('2');
  await expect.poll(caption, WAIT).toContain('Stripes mark the lens');
  await expect.poll(() => blackShare(frame.locator('img')), WAIT).toBeGreaterThan(0.2);
  await workbench.picture('sheet, traced frame');
});
