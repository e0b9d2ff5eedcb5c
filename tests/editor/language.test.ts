/**
 * The extension in a language other than English, in the real editor. There is no translation yet, so
 * one is invented, every text in brackets, and put where a translator puts it: among the files of the
 * extension, here in a copy of the installed one. The language is said to the page as a language pack
 * says it. No pack is to be had without a network, so what the editor itself says stays English.
 */
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, expect, inject } from 'vitest';
import { planTemplate } from '../../shared/assist/template.ts';
import { check } from './command-line.ts';
import { startNodeHost } from './node-host.ts';
import { HOSTS, test, WAIT } from './opened.ts';
import { ROOT } from './paths.ts';

/** Any that isn't English. */
const LANGUAGE = 'de';
const FILE = 'crystal.shootplan.yaml';
/** Longer than a frame at the 50 frames a second that the shot records. */
const SLOW = '1/20 s';
const PLAN = planTemplate().replace('shutter: 1/100 s', `shutter: ${SLOW}`);

const extensions = mkdtempSync(path.join(tmpdir(), 'lamella-translated-'));
const inCopy = (file: string): string =>
  path.join(extensions, path.basename(inject('lamella')), file);
const MESSAGES = inCopy(`client/l10n/messages.${LANGUAGE}.json`);

/** @param textOf the English of an entry of the catalogue */
function translate(
  catalogue: string,
  into: string,
  textOf: (key: string, entry: unknown) => unknown,
): void {
  const entries = Object.entries(JSON.parse(readFileSync(path.join(ROOT, catalogue), 'utf8')));
  const translated = entries.map(([key, entry]) => [key, `[${textOf(key, entry)}]`]);
  writeFileSync(into, JSON.stringify(Object.fromEntries(translated)));
}

beforeAll(() => {
  cpSync(inject('extensions'), extensions, { recursive: true });
  translate('shared/words/messages.json', MESSAGES, (key) => key);
  const bundle = inCopy(`client/l10n/bundle.l10n.${LANGUAGE}.json`);
  translate('client/l10n/bundle.l10n.json', bundle, (key) => key);
  translate('package.nls.json', inCopy(`package.nls.${LANGUAGE}.json`), (_, text) => text);
});
afterAll(() => rmSync(extensions, { recursive: true, force: true }));

test.for(HOSTS)(
  'findings, states, fixes and commands are told in it (%s)',
  async ([name, startHost], { open }) => {
    const { host, workbench } = await open(
      startHost,
      { [FILE]: PLAN },
      { language: LANGUAGE, extensions },
    );
    await expect.poll(() => workbench.status.textContent(), WAIT).toContain('[0 of 1 shot clear]');

    const lens = workbench.page.locator('.editor-instance .codelens-decoration a').first();
    await workbench.goTo(SLOW, PLAN);
    await expect.poll(() => lens.textContent(), WAIT).toMatch(/^\[.+\] · .*\]$/);

    // What is found, and offered against it: as on the command line in that language.
    const found = check(host.folder.path, FILE, MESSAGES);
    const { message, fixes } = found.find(({ severity }) => severity === 'error')!;
    expect(message).toMatch(/^\[A 1\/20 s shutter is longer than one frame .*\]$/);
    expect((await workbench.problems()).join('\n')).toContain(message);
    await workbench.focusText();
    await workbench.goTo(SLOW, PLAN);
    expect(fixes![0]!.title).toBe('[Set shutter to 1/50 s]');
    expect(await workbench.openFixes()).toContainEqual(expect.stringContaining(fixes![0]!.title));
    await workbench.picture(`another language, ${name}`);
    await workbench.escape();

    // An extension that a page brings along, as in this browser, has its manifest read in English alone.
    const title = 'Solve the Shot at the Cursor';
    await workbench.goTo('title:', PLAN);
    await workbench.run(`Lamella: ${startHost === startNodeHost ? `[${title}]` : title}`);
    const said = workbench.page.locator('.notification-toast');
    await expect
      .poll(() => said.allInnerTexts(), WAIT)
      .toContainEqual(expect.stringContaining('[Put the cursor into a shot of a plan first.]'));
  },
);
