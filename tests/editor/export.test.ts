/** The edit exported from the editor: the same bytes as on the command line, into the file named. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { expect } from 'vitest';
import { inEachHost, sample, WAIT } from './opened.ts';
import { CLI } from './paths.ts';

const FILE = 'salt-garden.shootplan.yaml';
const PLAN = sample(FILE);

const FORMATS = ['otio', 'fcpxml', 'edl', 'csv'] as const;
type Format = (typeof FORMATS)[number];

const SETTINGS = { 'lamella.startTimecode': '01:00:00:00', 'lamella.media': '/Volumes/media' };

/** What the command line makes of the same plan. */
function byCommand(format: Format): string {
  const folder = mkdtempSync(path.join(tmpdir(), 'lamella-export-'));
  try {
    writeFileSync(path.join(folder, FILE), PLAN);
    const start = ['--start-timecode', SETTINGS['lamella.startTimecode']];
    const media = ['--media', SETTINGS['lamella.media']];
    const args = [CLI, 'timeline', FILE, '--format', format, ...start, ...media];
    const made = spawnSync(process.execPath, args, { cwd: folder, encoding: 'utf8' });
    expect(made.status).toBe(0);
    return made.stdout;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

inEachHost(
  { [FILE]: PLAN },
  (test) => {
    test.for(FORMATS)('as .%s', async (format, { host, workbench }) => {
      await workbench.status.waitFor(WAIT);
      await workbench.focusText();
      await workbench.run('Lamella: Export the Edit as a Timeline or Shot List');
      const named = workbench.page.locator('.quick-input-widget:visible input[type=text]').first();
      await expect.poll(() => named.inputValue(), WAIT).toMatch(/salt-garden\.otio$/);
      const target = (await named.inputValue()).replace(/otio$/, format);
      await named.fill(target);
      await workbench.page.keyboard.press('Enter');
      const read = () => {
        try {
          return host.folder.read(`salt-garden.${format}`);
        } catch {
          return '';
        }
      };
      await expect.poll(read, WAIT).toBe(byCommand(format));
    });
  },
  { settings: SETTINGS },
);
