/** The state of each shot over it in the real editor; a click shows the sheet at that shot. */
import { expect } from 'vitest';
import { sample, test, WAIT } from './opened.ts';
import { startWebHost } from './web-host.ts';

const FILE = 'tide-panes.shootplan.yaml';
const KIT = 'workshop-kit.shootplan.yaml';
const PLAN = sample(FILE);

test('each shot has its state over it, and a click shows the sheet there', async ({ open }) => {
  const { workbench } = await open(
    startWebHost,
    { [FILE]: PLAN, [KIT]: sample(KIT) },
    {
      settings: {
        'workbench.colorTheme': 'Default Light Modern',
        'lamella.codeLenses.exposure': false,
      },
      viewport: { width: 1500, height: 900 },
    },
  );
  await workbench.hideSideBar();
  const lenses = workbench.page.locator('.editor-instance .codelens-decoration a');
  // Of the three shots, those that the window shows.
  await expect.poll(() => lenses.count(), WAIT).toBe(2);
  const words = await lenses.allInnerTexts();
  for (const each of words)
    expect(each).toMatch(/^DOF [^·]* · no lens reflection [^·]* · 7 checks open$/);
  await workbench.picture('lenses');
  const shown = async () => {
    for (const frame of workbench.page.frames()) {
      const current = frame.locator('.shot.current');
      if ((await current.count().catch(() => 0)) > 0) return current.getAttribute('data-shot');
    }
    return null;
  };
  // A lens that is written anew under the pointer takes no click: it is clicked until the sheet is there.
  const clicked = async () => {
    const before = await shown();
    if (before !== null) return before;
    await lenses.nth(1).click();
    await workbench.page.waitForTimeout(1500);
    return shown();
  };
  await expect.poll(clicked, WAIT).toBe('first-black');
  await workbench.picture('lens clicked');
  await lenses.nth(0).click();
  await expect.poll(shown, WAIT).toBe('bands-falling');
});
