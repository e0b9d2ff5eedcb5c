/**
 * Across files and at a price, in the real editor: a name of the kit renamed from a plan that uses
 * it, and a fix that says in the list what it costs, and costs that.
 */
import { expect } from 'vitest';
import { planTemplate } from '../../shared/assist/template.ts';
import { sample, test, WAIT } from './opened.ts';
import { startWebHost } from './web-host.ts';
import type { Workbench } from './workbench.ts';

const FILE = 'tide-panes.shootplan.yaml';
const KIT = 'workshop-kit.shootplan.yaml';

/** Lines of the Problems list that are ours. */
const problemsOf = async (workbench: Workbench): Promise<string[]> =>
  (await workbench.problems()).filter((row) => row.includes('lamella'));

test('a light of the kit is renamed from a plan that uses it', async ({ open }) => {
  const plan = sample(FILE);
  const { host, workbench } = await open(startWebHost, { [FILE]: plan, [KIT]: sample(KIT) });
  const text = async () => (await workbench.drawnLines()).join('\n');
  await expect.poll(() => workbench.status.count(), WAIT).toBe(1);
  const before = await problemsOf(workbench);
  await workbench.run('View: Toggle Panel Visibility');
  await workbench.focusText();
  await workbench.goTo('bright-panel', plan);
  await expect.poll(text, WAIT).toContain('bright-panel');
  await workbench.rename('window-panel');
  await expect.poll(text, WAIT).toContain('window-panel');
  expect(await text()).not.toContain('bright-panel');
  await workbench.picture('renamed, plan');
  // Nothing new is found in either file.
  expect(await problemsOf(workbench)).toEqual(before);
  // From the name to what gives it, in the other file, by its new name too.
  await workbench.focusText();
  await workbench.goToDefinition(KIT);
  await expect.poll(text, WAIT).toContain('window-panel:');
  expect(await text()).not.toContain('bright-panel');
  await workbench.picture('renamed, kit');
  expect(await problemsOf(workbench)).toEqual(before);
  // Both are saved, for a plan whose kit is not would be broken for everybody else.
  const renamed = (name: string) => sample(name).replaceAll('bright-panel', 'window-panel');
  for (const name of [FILE, KIT])
    await expect.poll(() => host.folder.read(name), WAIT).toBe(renamed(name));
});

test('a fix says its price in the list, and brings it', async ({ open }) => {
  const plan = planTemplate().replace('aperture: f/8\n', 'aperture: f/16\n');
  const { workbench } = await open(startWebHost, { [FILE]: plan });
  await expect.poll(() => workbench.status.textContent(), WAIT).toContain('0 of 1 shot clear');
  const found = async () => (await problemsOf(workbench)).join('\n');
  await expect.poll(found, WAIT).toContain('underexposed');
  expect(await found()).not.toContain('usable limit');
  await workbench.focusText();
  await workbench.goTo('3200\n', plan);
  const titles = await workbench.openFixes();
  await workbench.picture('fixes with their price');
  const priced = titles.find((title) => title.startsWith('Set ISO 10000'));
  expect(priced).toMatch(/above body-a's usable limit/);
  expect(titles.find((title) => title.startsWith('Open up to f/9'))).toBe('Open up to f/9');
  await workbench.takeFix('Set ISO 10000', titles);
  await expect.poll(found, WAIT).toContain("above body-a's usable limit");
  expect(await found()).not.toContain('underexposed');
  await workbench.picture('price paid');
});
