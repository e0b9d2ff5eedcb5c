/** The language server killed while somebody types: the editor starts it again and nothing is lost. */
import { execFileSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { expect, inject } from 'vitest';
import { MOST_FAILED_STARTS } from '../../client/failed-starts.ts';
import { startNodeHost } from './node-host.ts';
import { sample, test, WAIT } from './opened.ts';

const FILE = 'first-draft.shootplan.yaml';
const PLAN = sample(FILE);
const KILLS = process.env.LAMELLA_LONG === '1' ? 50 : 3;

const EXTENSIONS = inject('extensions');
const isServer = (word: string): boolean =>
  word.startsWith(EXTENSIONS) && word.endsWith('lamella-language-server.cjs');

/** Processes of the language server that the editor's own copy of the extension started. */
const servers = (): readonly number[] =>
  readdirSync('/proc').flatMap((name) => {
    if (!/^\d+$/.test(name)) return [];
    try {
      const words = readFileSync(`/proc/${name}/cmdline`, 'utf8').split('\0');
      return words.some(isServer) ? [Number(name)] : [];
    } catch {
      return [];
    }
  });

test(
  `killed ${KILLS} times in mid-edit`,
  async ({ open }) => {
    const before = new Set(servers());
    const { host, workbench } = await open(startNodeHost, { [FILE]: PLAN });
    await workbench.hideSideBar();
    await workbench.goTo('title:', PLAN);
    /** How many findings the list shows, and the line of the first: where the checked text had it. */
    const findings = async () => {
      const rows = await workbench.problems();
      const heading = rows.find((row) => row.startsWith('first-draft'));
      const line = /\[Ln (\d+), /.exec(rows.join('\n'))?.[1];
      return heading && line ? { heading, line: Number(line) } : undefined;
    };
    await expect.poll(findings, WAIT).toBeDefined();
    const found = (await findings())!;
    let typed = '';
    for (let count = 1; count <= KILLS; count++) {
      await workbench.focusText();
      await workbench.page.keyboard.type('# ', { delay: 20 });
      const own = servers().filter((id) => !before.has(id));
      expect(own).toHaveLength(1);
      execFileSync('kill', ['-9', String(own[0])]);
      await workbench.page.keyboard.type(`note ${count}`, { delay: 20 });
      await workbench.page.keyboard.press('Enter');
      typed += `# note ${count}\n`;
      // A line further down than before: said by the next server, of the text with all that was typed.
      const again = { ...found, line: found.line + count };
      await expect.poll(findings, WAIT).toEqual(again);
    }
    // Also where the next one has not come up yet: as often as somebody may think it still could.
    for (let count = 1; count < MOST_FAILED_STARTS; count++) {
      const ended = servers().filter((id) => !before.has(id));
      execFileSync('kill', ['-9', ...ended.map(String)]);
      const next = () => servers().filter((id) => !before.has(id) && !ended.includes(id)).length;
      await expect.poll(next, { timeout: 30_000, interval: 5 }).toBe(1);
    }
    await workbench.focusText();
    await workbench.page.keyboard.type('# last');
    await workbench.page.keyboard.press('Enter');
    typed += '# last\n';
    const again = { ...found, line: found.line + KILLS + 1 };
    await expect.poll(findings, WAIT).toEqual(again);
    await workbench.save();
    await expect
      .poll(() => host.folder.read(FILE), WAIT)
      .toBe(PLAN.replace('title:', `${typed}title:`));
  },
  KILLS * 60_000,
);

test('a sheet opened while the server is away looks as it should once the next one is there', async ({
  open,
}) => {
  const before = new Set(servers());
  const { workbench } = await open(startNodeHost, { [FILE]: PLAN });
  await workbench.hideSideBar();
  await expect.poll(() => workbench.status.textContent(), WAIT).toContain('clear');
  const [server] = servers().filter((id) => !before.has(id));
  // Halted, it takes the question for the sheet and never answers.
  execFileSync('kill', ['-STOP', String(server)]);
  await workbench.run('Lamella: Show the Shot Sheet beside the Plan');
  const page = (selector: string) =>
    Promise.all(
      workbench.page.frames().map((frame) => frame.locator(selector).allTextContents()),
    ).then((texts) => texts.flat());
  await workbench.page.locator('.tab').filter({ hasText: 'Sheet: ' }).waitFor();
  await workbench.page.waitForTimeout(500);
  execFileSync('kill', ['-9', String(server)]);
  await expect.poll(async () => (await page('.shot h2')).length, WAIT).toBeGreaterThan(1);
  expect((await page('head style')).some((style) => style.includes('.shot'))).toBe(true);
});
