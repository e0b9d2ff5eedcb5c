/**
 * A film in the real editor: its colours beside its thickness, what the mirror asks of the tilt,
 * and a fix that says what it costs; light and dark.
 */
import { expect } from 'vitest';
import { sample, test, WAIT } from './opened.ts';
import { startWebHost } from './web-host.ts';

const FILE = 'tide-panes.shootplan.yaml';
const KIT = 'workshop-kit.shootplan.yaml';
/** The first shot of the sample, hardly tilted at all. */
const PLAN = sample(FILE).replace('tilt: 6 deg', 'tilt: 2 deg');

test.for([
  ['light', 'Default Light Modern'],
  ['dark', 'Default Dark Modern'],
])('a film shows its colours and what its tilt lacks (%s)', async ([name, theme], { open }) => {
  const { workbench } = await open(
    startWebHost,
    { [FILE]: PLAN, [KIT]: sample(KIT) },
    { settings: { 'workbench.colorTheme': theme } },
  );
  await workbench.goTo('80 to 900 nm', PLAN);
  const colours = (): Promise<string[]> =>
    workbench.page
      .locator('.editor-instance .view-line span')
      .evaluateAll((spans) =>
        spans
          .map((span) => getComputedStyle(span, '::before').backgroundColor)
          .filter((colour) => !/^$|, 0\)$/.test(colour)),
      );
  await expect.poll(colours, WAIT).toHaveLength(2);
  expect(new Set(await colours()).size).toBe(2);
  // Pointed at by hand, the swatch of the editor's own would open its picker over the hover.
  const { box } = await workbench.drawn('80 to 900 nm');
  await workbench.page.mouse.move(box.x + 8, box.y + box.height / 2);
  const pointed = workbench.page.locator('.monaco-hover:not(.hidden)');
  await expect
    .poll(() => pointed.allInnerTexts(), WAIT)
    .toContainEqual(expect.stringContaining('order 1'));
  expect(
    await workbench.page.locator('.colorpicker-widget, .colorpicker-color-decoration').count(),
  ).toBe(0);
  await workbench.picture(`film colours, ${name}`);
  await workbench.escape();
  await workbench.goTo('2 deg', PLAN);
  await expect.poll(() => workbench.squiggles('warning').count(), WAIT).toBe(1);
  const hover = await workbench.hover();
  expect(hover).toContain('minimum tilt');
  expect(hover).toContain('window');
  await workbench.picture(`tilt, ${name}`);
  const problems = await workbench.problems();
  expect(problems.filter((row) => row.includes('lamella'))).toHaveLength(1);
  await workbench.focusText();
  await workbench.goTo('2 deg', PLAN);
  await workbench.escape();
  await workbench.applyFix('Tilt ');
  await expect.poll(() => workbench.squiggles('warning').count(), WAIT).toBe(0);
});
