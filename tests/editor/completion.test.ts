/**
 * A plan written in the real editor from an empty file, by keyboard, with what is offered alone: it
 * ends without a finding.
 */
import { expect } from 'vitest';
import { check } from './command-line.ts';
import { inEachHost, WAIT } from './opened.ts';

const FILE = 'new.shootplan.yaml';
const KEYS = ['shootplan', 'title', 'deliver', 'mains'];
const ASKING = ['shootplan', 'mains'];
const SECTIONS = ['kit', 'rigs', 'lights', 'subjects', 'shots', 'preflight'];

inEachHost({ [FILE]: '' }, (test, name) => {
  test('an empty file offers what a plan is made of', async ({ workbench }) => {
    await expect.poll(() => workbench.status.textContent(), WAIT).toContain('No shots yet');
    const offered = await workbench.openSuggestions();
    await workbench.picture(`completion in an empty file, ${name}`);
    // The list shows twelve rows, of which the first is a whole new plan.
    expect(offered).toHaveLength(12);
    for (const key of [...KEYS, ...SECTIONS.slice(0, -1)]) expect(offered).toContain(key);
    await workbench.closeSuggestions();
  });

  test('section by section it becomes a plan without a finding', async ({ host, workbench }) => {
    for (const key of [...KEYS, ...SECTIONS]) {
      await workbench.suggest(key);
      // Its value is asked for at once: not to be typed into before it is.
      if (ASKING.includes(key)) await workbench.askedFor();
      if (key === 'shots') await workbench.picture(`completion, a new shot, ${name}`);
      await workbench.newLineAtMargin();
    }
    await expect.poll(() => workbench.status.textContent(), WAIT).toContain('1 of 1 shot clear');
    await workbench.save();
    await expect.poll(() => host.folder.read(FILE), WAIT).toContain('every-shot');
    const found = check(host.folder.path, FILE).filter(({ severity }) => severity !== 'hint');
    expect(found.map(({ message }) => message)).toEqual([]);
    for (const kind of ['error', 'warning', 'info'] as const)
      expect(await workbench.squiggles(kind).count()).toBe(0);
  });

  test('a setting tells what it comes to, and the one chosen is written', async ({
    host,
    workbench,
  }) => {
    const text = host.folder.read(FILE);
    const [, aperture = ''] = /^ {4}aperture: (\S+)$/m.exec(text) ?? [];
    await workbench.goTo(`    aperture: ${aperture}`, text);
    await workbench.page.keyboard.press('End');
    const offered = await workbench.openSuggestions();
    expect(offered.length).toBeGreaterThan(5);
    const focused = await workbench.focusedSuggestion();
    expect(focused).toMatch(/f\/\S+.*DOF .*needs .*mm/);
    expect(await workbench.suggestionDetails()).toContain('effective');
    await workbench.picture(`completion of an aperture, ${name}`);
    await workbench.pick('f/9');
    const line = async () =>
      (await workbench.drawnLines()).find((each) => each.startsWith('    aperture:'));
    expect(aperture).not.toBe('f/9');
    await expect.poll(line, WAIT).toContain('aperture: f/9');
    // Thought better of: what stood there first is in the list, marked, and can be had back.
    for (const _ of 'f/9') await workbench.page.keyboard.press('Backspace');
    await expect.poll(async () => (await line())?.trimEnd(), WAIT).toMatch(/aperture:$/);
    expect(await workbench.openSuggestions()).toContain(aperture);
    const was = workbench.page.locator('.suggest-widget .monaco-list-row', {
      hasText: 'previous value',
    });
    await expect.poll(() => was.allInnerTexts(), WAIT).toEqual([expect.stringContaining(aperture)]);
    await workbench.picture(`what was deleted, offered as it was, ${name}`);
    await workbench.pick(aperture);
    await expect.poll(line, WAIT).toContain(`aperture: ${aperture}`);
  });

  test('on a new line of a shot its other keys are offered, and stand where they belong', async ({
    host,
    workbench,
  }) => {
    const text = host.folder.read(FILE);
    await workbench.goTo('    light: [', text);
    await workbench.page.keyboard.press('End');
    await workbench.page.keyboard.press('Enter');
    const offered = await workbench.openSuggestions();
    expect(offered).toContain('tilt');
    expect(offered).not.toContain('subject');
    await workbench.picture(`completion of keys, ${name}`);
    await workbench.pick('tilt');
    const lines = async () => (await workbench.drawnLines()).map((line) => line.trimEnd());
    await expect.poll(lines, WAIT).toContainEqual(expect.stringMatching(/^ {4}tilt: \d+ deg/));
    expect(await workbench.askedFor()).toContain('10 deg');
    await workbench.picture(`completion asks for a value, ${name}`);
  });
});
