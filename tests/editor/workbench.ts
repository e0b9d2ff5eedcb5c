/// <reference lib="dom" />
/** The workbench as a person uses it: by keyboard, and by what stands on the screen. */
import { mkdirSync } from 'node:fs';
import path from 'node:path';
import {
  type Browser,
  type BrowserContext,
  type BrowserContextOptions,
  chromium,
  type Locator,
  type Page,
} from 'playwright-core';
import type { Host } from './host.ts';
import { RESULTS } from './paths.ts';

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface PageOptions {
  readonly viewport?: { readonly width: number; readonly height: number };
  /** The display language by BCP 47, said where a language pack says it; left out: English. */
  readonly language?: string;
  /** Runs in the page before anything of it. */
  readonly before?: () => void;
}

const CHROMIUM = process.env.CHROMIUM ?? '/usr/bin/chromium';
const QUIET = ['disable-background-networking', 'disable-component-update', 'disable-sync'];

const LAUNCH = {
  executablePath: CHROMIUM,
  args: ['no-sandbox', 'disable-gpu', 'disable-quic', 'no-first-run', ...QUIET].map(
    (flag) => `--${flag}`,
  ),
};

export const launchBrowser = (): Promise<Browser> => chromium.launch(LAUNCH);

/** A browser that keeps in `profile` what pages store. */
export const launchKept = (
  profile: string,
  options: BrowserContextOptions,
): Promise<BrowserContext> => chromium.launchPersistentContext(profile, { ...LAUNCH, ...options });

/** The editor draws no-break spaces and middle dots for spaces, and zero-width marks. */
const plain = (text: string): string =>
  text.replace(/[\u00a0\u00b7]/g, ' ').replace(/[\u200b-\u200d\ufeff]/g, '');

export class Workbench {
  readonly page: Page;

  private constructor(page: Page) {
    this.page = page;
  }

  /** Opens `file` of the host's folder in a fresh profile. */
  static async open(
    browser: Browser,
    host: Host,
    file: string,
    { viewport = { width: 1280, height: 800 }, language, before }: PageOptions = {},
  ): Promise<Workbench> {
    const context = await browser.newContext({ viewport });
    if (language !== undefined)
      await context.addInitScript((tag) => {
        Object.assign(globalThis, { _VSCODE_NLS_LANGUAGE: tag });
      }, language);
    if (before) await context.addInitScript(before);
    context.setDefaultTimeout(15_000);
    const page = await context.newPage();
    await page.goto(host.address(file));
    const workbench = new Workbench(page);
    await workbench.#viewLines.first().waitFor({ timeout: 60_000 });
    await workbench.#viewLines.first().click();
    return workbench;
  }

  close(): Promise<void> {
    return this.page.context().close();
  }

  async picture(name: string): Promise<void> {
    mkdirSync(RESULTS, { recursive: true });
    const file = path.join(RESULTS, `${name}.png`);
    await this.page.screenshot({ path: file, animations: 'disabled' });
  }

  get #viewLines(): Locator {
    return this.page.locator('.editor-instance .view-lines > .view-line');
  }

  /** What the editor draws, hints included, in the order of the text. */
  async drawnLines(): Promise<string[]> {
    const drawn = await this.#viewLines.evaluateAll((lines) =>
      lines.map((line) => ({
        top: Number.parseFloat((line as HTMLElement).style.top),
        text: line.textContent ?? '',
      })),
    );
    return drawn.sort((a, b) => a.top - b.top).map(({ text }) => plain(text));
  }

  /** Where `text` is drawn, and in which colour. */
  async drawn(text: string): Promise<{ box: Box; colour: string }> {
    const found = await this.#viewLines.evaluateAll((lines, wanted) => {
      const same = (content: string) => content.replace(/\u00a0/g, ' ');
      for (const line of lines) {
        const at = same(line.textContent ?? '').indexOf(wanted);
        if (at < 0) continue;
        const range = document.createRange();
        const walker = document.createTreeWalker(line, NodeFilter.SHOW_TEXT);
        let before = 0;
        let colour = '';
        for (let node = walker.nextNode(); node; node = walker.nextNode()) {
          const length = node.textContent?.length ?? 0;
          if (before <= at && at < before + length) {
            range.setStart(node, at - before);
            colour = getComputedStyle(node.parentElement!).color;
          }
          const end = at + wanted.length;
          if (before < end && end <= before + length) range.setEnd(node, end - before);
          before += length;
        }
        const { x, y, width, height } = range.getBoundingClientRect();
        return { box: { x, y, width, height }, colour };
      }
      return undefined;
    }, text);
    if (!found) throw new Error(`"${text}" is not on the screen.`);
    return found;
  }

  squiggles(kind: 'error' | 'warning' | 'info'): Locator {
    return this.page.locator(`.editor-instance .squiggly-${kind}`);
  }

  get language(): Locator {
    return this.page.locator('#status\\.editor\\.mode');
  }

  /** The extension's own item in the status bar. */
  get status(): Locator {
    return this.page.locator('.statusbar-item').filter({ hasText: /shots? clear|No shots yet/ });
  }

  /** Resolves once the element is taken off the page, however soon another takes its place. */
  async removed(element: Locator): Promise<void> {
    await element.evaluate(
      (shown) =>
        new Promise<void>((resolve) => {
          const observer = new MutationObserver(() => {
            if (shown.isConnected) return;
            observer.disconnect();
            resolve();
          });
          observer.observe(document.body, { childList: true, subtree: true });
        }),
    );
  }

  /** Puts the caret where `text` begins. */
  async goTo(text: string, within: string): Promise<void> {
    const at = within.indexOf(text);
    if (at < 0) throw new Error(`"${text}" is not in the text.`);
    const before = within.slice(0, at).split('\n');
    const place = `:${before.length}:${before.at(-1)!.length + 1}`;
    await this.page.keyboard.press('Control+g');
    const input = this.page.locator('.quick-input-widget:visible input').first();
    await input.waitFor();
    await input.fill(place);
    await this.page.keyboard.press('Enter');
    await this.page.locator('.quick-input-widget').waitFor({ state: 'hidden' });
  }

  /** The hover at the caret. */
  async hover(): Promise<string> {
    await this.page.keyboard.press('Control+k');
    await this.page.keyboard.press('Control+i');
    const hover = this.page.locator('.monaco-hover:not(.hidden) .hover-contents');
    await hover.first().waitFor();
    // Findings come first, what the server says a little later: done once nothing more comes.
    let text = '';
    for (let same = 0, turns = 0; same < 3 && turns < 100; turns++) {
      await this.page.waitForTimeout(100);
      const now = plain((await hover.allInnerTexts()).join('\n'));
      same = now === text && !now.includes('Loading') ? same + 1 : 0;
      text = now;
    }
    return text;
  }

  async escape(): Promise<void> {
    await this.page.keyboard.press('Escape');
  }

  get #suggestions(): Locator {
    return this.page.locator('.suggest-widget.visible');
  }

  /**
   * Opens what may be written at the caret; the first of it that the list shows. Asks again where a
   * list that came of itself is closed under the hand, which a slow machine does late.
   */
  async openSuggestions(tries = 6): Promise<string[]> {
    if (!(await this.#suggestions.isVisible())) await this.page.keyboard.press('Control+Space');
    try {
      return await this.askedFor(5_000);
    } catch (error) {
      if (tries <= 1) throw error;
      return this.openSuggestions(tries - 1);
    }
  }

  /** The chosen row in full. */
  async focusedSuggestion(): Promise<string> {
    const row = this.#suggestions.locator('.monaco-list-row.focused');
    return plain((await row.textContent()) ?? '').replace(/\s+/g, ' ');
  }

  /** Unfolds what is said of the chosen row. */
  async suggestionDetails(): Promise<string> {
    await this.page.keyboard.press('Control+Space');
    const details = this.page.locator('.suggest-details .docs');
    await details.waitFor();
    return plain((await details.textContent()) ?? '');
  }

  /** Chooses from the open list, by keyboard, the offer of that label. */
  async pick(label: string): Promise<void> {
    const focused = this.#suggestions.locator('.monaco-list-row.focused .label-name');
    for (let steps = 0; steps < 60; steps++) {
      await focused.waitFor({ timeout: 5_000 });
      if (plain((await focused.textContent()) ?? '') === label) {
        await this.page.keyboard.press('Enter');
        return;
      }
      await this.page.keyboard.press('ArrowDown');
    }
    throw new Error(`"${label}" is not offered.`);
  }

  /** Opens what may be written at the caret and chooses the offer of that label; again where it closes. */
  async suggest(label: string, tries = 4): Promise<void> {
    await this.openSuggestions();
    try {
      await this.pick(label);
    } catch (error) {
      if (tries <= 1 || (await this.#suggestions.isVisible())) throw error;
      await this.suggest(label, tries - 1);
    }
  }

  /** What is offered of itself, for a value that was just begun. */
  async askedFor(timeout = 30_000): Promise<string[]> {
    const rows = this.#suggestions.locator('.monaco-list-row .label-name');
    await rows.first().waitFor({ timeout });
    return (await rows.allInnerTexts()).map(plain);
  }

  async closeSuggestions(): Promise<void> {
    await this.page.keyboard.press('Escape');
    await this.#suggestions.waitFor({ state: 'hidden' });
  }

  /** Leaves lists and places to fill in, and begins a line of the text's own at its end. */
  async newLineAtMargin(): Promise<void> {
    await this.closeSuggestions();
    for (const key of ['Escape', 'Control+End', 'Enter', 'Shift+Home', 'Delete'])
      await this.page.keyboard.press(key);
  }

  /**
   * Opens the list of fixes at the caret: their titles, in its order. Tries again where the text has
   * not got the focus yet, or the list was closed under the hand.
   */
  async openFixes(tries = 4): Promise<string[]> {
    const choices = this.page.locator('.action-widget .monaco-list-row.action');
    await this.page.keyboard.press('Control+.');
    try {
      await choices.first().waitFor({ timeout: 4_000 });
    } catch (error) {
      if (tries <= 1) throw error;
      await this.page.keyboard.press('Escape');
      return this.openFixes(tries - 1);
    }
    return (await choices.allInnerTexts()).map((text) => plain(text).trim());
  }

  /** Takes, by keyboard, the fix of that title from the open list. */
  async takeFix(title: string, titles: readonly string[]): Promise<void> {
    const place = titles.findIndex((text) => text.startsWith(title));
    if (place < 0) throw new Error(`"${title}" is not among the fixes: ${titles.join('; ')}`);
    for (let steps = 0; steps < place; steps++) await this.page.keyboard.press('ArrowDown');
    await this.page.keyboard.press('Enter');
  }

  /** Opens the list of fixes at the caret and applies the one of that title, by keyboard. */
  async applyFix(title: string): Promise<void> {
    await this.takeFix(title, await this.openFixes());
  }

  /** Renames what stands at the caret. */
  async rename(name: string): Promise<void> {
    const input = this.page.locator('.rename-box .rename-input');
    for (let tries = 4; ; tries--) {
      await this.page.keyboard.press('F2');
      const isOpen = await input
        .waitFor({ timeout: 4_000 })
        .then(() => true)
        .catch(() => false);
      if (isOpen) break;
      if (tries <= 1) throw new Error('The box for a new name did not open.');
    }
    await input.fill(name);
    await this.page.keyboard.press('Enter');
    await input.waitFor({ state: 'hidden' });
  }

  /** Follows the name at the caret to `file`, where it is given. */
  async goToDefinition(file: string): Promise<void> {
    await this.page.keyboard.press('F12');
    await this.page.locator('.tab.active').filter({ hasText: file }).waitFor();
  }

  /** Rows of the Problems list, headings included; opens it where it is closed. */
  async problems(): Promise<string[]> {
    const panel = this.page.locator('.markers-panel-container');
    if (!(await panel.isVisible())) await this.page.keyboard.press('Control+Shift+M');
    await panel.waitFor();
    const rows = panel.locator('.monaco-list-row');
    return (await rows.allInnerTexts()).map((row) => plain(row).replace(/\s+/g, ' '));
  }

  /** Back from a panel to the text; again where a panel that opens late takes the focus. */
  async focusText(tries = 4): Promise<void> {
    await this.page.keyboard.press('Control+1');
    const focused = this.page.locator('.editor-instance .monaco-editor.focused');
    try {
      await focused.waitFor({ timeout: 3_000 });
    } catch (error) {
      if (tries <= 1) throw error;
      await this.focusText(tries - 1);
    }
  }

  async hideSideBar(): Promise<void> {
    const bar = this.page.locator('.part.sidebar');
    if (await bar.isVisible()) await this.page.keyboard.press('Control+b');
    await bar.waitFor({ state: 'hidden' });
  }

  async save(): Promise<void> {
    await this.page.keyboard.press('Control+s');
  }

  /**
   * Runs a command by its title in the command palette. Tries again where the palette is closed
   * under the hand, which something that opens late and takes the focus does.
   */
  async run(title: string, tries = 4): Promise<void> {
    const palette = this.page.locator('.quick-input-widget:visible');
    const soon = { timeout: 3_000 };
    try {
      await this.page.keyboard.press('F1');
      await palette.locator('input[type=text]').first().fill(`>${title}`, soon);
      const row = palette.locator('.monaco-list-row.focused').filter({ hasText: title });
      await row.waitFor(soon);
      await row.click(soon);
      // Not the palette: what the command asks first may stand in its place at once.
      await row.waitFor({ state: 'hidden', ...soon });
    } catch (error) {
      if (tries <= 1) throw error;
      await this.page.keyboard.press('Escape');
      await this.run(title, tries - 1);
    }
  }
}
