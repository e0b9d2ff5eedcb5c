/// <reference lib="dom" />
/** The clips of a plan, checked from the command palette: on a disk, and where there is none. */
import path from 'node:path';
import { expect } from 'vitest';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { makeClip } from '../support/ffmpeg.ts';
import { violationsIn } from './axe.ts';
import { startNodeHost } from './node-host.ts';
import { test, WAIT } from './opened.ts';
import { startWebHost } from './web-host.ts';

const FILE = 'winter.shootplan.yaml';
const CLIP = 'small.mp4';
const PLAN = `${EXAMPLE_PLAN}\nclips:\n  frost:\n    - { file: ${CLIP} }\n`;
const COMMAND = 'Lamella: Check the Clips of the Plan';
const LOOK = "Lamella: Look at the Pictures of the Plan's Clips";

test('on a disk: a finding on the clip’s line, a page, and small pictures on request', async ({
  open,
}) => {
  const { workbench } = await open(
    startNodeHost,
    { [FILE]: PLAN },
    {
      before: (folder) => makeClip(path.join(folder.path, CLIP), { size: '640x360' }),
    },
  );
  await workbench.hideSideBar();
  await workbench.goTo(CLIP, PLAN);
  await workbench.run(COMMAND);
  await expect.poll(() => workbench.squiggles('error').count(), WAIT).toBe(1);
  const page = workbench.page.locator('.tab').filter({ hasText: 'and its clips' });
  await page.first().waitFor(WAIT);
  await workbench.picture('clips checked');
  await workbench.focusText();
  await workbench.run(LOOK);
  // Drawn, and not refused by the page's policy: as wide as it was made.
  const widths = async (): Promise<readonly number[]> => {
    const found: number[] = [];
    for (const frame of workbench.page.frames())
      found.push(
        ...(await frame
          .locator('img[src^="data:image/png"]')
          .evaluateAll((images) => images.map((one) => (one as HTMLImageElement).naturalWidth))
          .catch(() => [])),
      );
    return found;
  };
  await expect.poll(widths, WAIT).toEqual([160]);
  const pictures = workbench.page.frames().map(async (frame) => {
    const count = await frame
      .locator('img[src^="data:image/png"]')
      .count()
      .catch(() => 0);
    return count > 0 ? frame : null;
  });
  const [shown] = (await Promise.all(pictures)).filter((frame) => frame !== null);
  // Around it stands the editor's own page.
  expect(await violationsIn(shown!, '.markdown-body')).toEqual([]);
  await workbench.focusText();
  await workbench.goTo(CLIP, PLAN);
  await workbench.page.keyboard.type('a');
  await expect.poll(() => workbench.squiggles('error').count(), WAIT).toBe(0);
});

test('in the browser it says that it can’t, and where it can; a dropped clip is listed', async ({
  open,
}) => {
  const { workbench } = await open(startWebHost, { [FILE]: PLAN, 'b.mp4': '' });
  await workbench.goTo(CLIP, PLAN);
  await workbench.run(COMMAND);
  const said = workbench.page.locator('.notification-toast').filter({
    hasText: 'Clips can only be read from a disk',
  });
  await said.first().waitFor(WAIT);
  const { page } = workbench;
  // As the explorer drags, with Shift held over the text: no real drag brings its data along here.
  const drop = async (onto: string) => {
    const { box } = await workbench.drawn(onto);
    await page.evaluate(
      ({ x, y, uri }) => {
        const dataTransfer = new DataTransfer();
        for (const type of ['text/uri-list', 'application/vnd.code.uri-list'])
          dataTransfer.setData(type, uri);
        const at = { clientX: x, clientY: y, shiftKey: true, bubbles: true, cancelable: true };
        for (const kind of ['dragenter', 'dragover', 'drop'])
          document
            .elementFromPoint(x, y)
            ?.dispatchEvent(new DragEvent(kind, { ...at, dataTransfer }));
      },
      { x: box.x + 2, y: box.y + box.height / 2, uri: 'web-folder://plans/b.mp4' },
    );
  };
  await drop(CLIP);
  const lines = async () => (await workbench.drawnLines()).join('\n');
  await expect.poll(lines, WAIT).toContain('- { file: b.mp4 }');
  await workbench.picture('clip, dropped');
  await drop('frost:');
  await page.locator('.notification-toast').filter({ hasText: 'list' }).first().waitFor(WAIT);
  expect((await lines()).split('b.mp4')).toHaveLength(2);
});
