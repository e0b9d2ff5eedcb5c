/** Formatting, names in colour and a rule's page, in the real editor. */
import { expect } from 'vitest';
import { inEachHost, WAIT } from './opened.ts';

const FILE = 'rough.shootplan.yaml';
const ROUGH = `shootplan: 1
rigs:
    near: {parts:  [ body ]}   # bare
shots:
    first:
        rig:   near
`;

/** The comment stays in its column. */
const TIDY = `shootplan: 1
rigs:
  near: { parts: [body] }      # bare
shots:
  first:
    rig: near
`;

inEachHost({ [FILE]: ROUGH }, (test, name) => {
  test('formats the plan, and colours a name alike where it is used', async ({
    host,
    workbench,
  }) => {
    await expect.poll(() => workbench.squiggles('error').count(), WAIT).toBeGreaterThan(0);
    await workbench.run('Format Document');
    // Made by the server: what is saved before is not laid out yet.
    await expect.poll(() => workbench.drawnLines(), WAIT).toContain('    rig: near');
    await workbench.save();
    await expect.poll(() => host.folder.read(FILE), WAIT).toBe(TIDY);
    const used = workbench.page.locator('.view-line span span', { hasText: /^near$/ });
    await expect.poll(() => used.count(), WAIT).toBe(2);
    const colours = await used.evaluateAll((all) => all.map((one) => getComputedStyle(one).color));
    expect(new Set(colours).size).toBe(1);
    await workbench.picture(`a formatted plan, ${name}`);
  });

  test('opens the page of a rule from the code of its finding', async ({ workbench }) => {
    await workbench.goTo('body', TIDY);
    await workbench.hover();
    await workbench.page.locator('.monaco-hover a.code-link').first().click();
    await expect
      .poll(() => workbench.page.locator('.tab').allInnerTexts(), WAIT)
      .toContainEqual(expect.stringContaining('Lamella unknown-name'));
    await workbench.picture(`the page of a rule, ${name}`);
  });
});
