/**
 * The main job in the real editor, with the extension as it is packed: a plan is opened, the value
 * at fault is marked, a fix is applied, and what is saved checks cleanly on the command line.
 */
import { expect } from 'vitest';
import { planTemplate } from '../../shared/assist/template.ts';
import { check, figures, markedText } from './command-line.ts';
import { inEachHost, WAIT } from './opened.ts';
import type { Workbench } from './workbench.ts';

const FILE = 'crystal.shootplan.yaml';
/** Longer than a frame at the 50 frames a second that the shot records. */
const SLOW = '1/20 s';
const PLAN = planTemplate().replace('shutter: 1/100 s', `shutter: ${SLOW}`);

inEachHost({ [FILE]: PLAN }, (test, name) => {
  test('the language is known and its parts are told apart by colour', async ({ workbench }) => {
    await expect.poll(() => workbench.language.textContent(), WAIT).toBe('Shoot Plan');
    await workbench.goTo(SLOW, PLAN);
    await expect.poll(() => colours(workbench), WAIT).toHaveLength(3);
  });

  test('what is wrong is marked, on the value and nowhere else', async ({ host, workbench }) => {
    const found = check(host.folder.path, FILE).filter(({ severity }) => severity === 'error');
    expect(found.map((finding) => markedText(finding, PLAN))).toEqual([SLOW]);
    await workbench.goTo(SLOW, PLAN);
    await expect.poll(() => workbench.squiggles('error').count(), WAIT).toBe(1);
    const marked = (await workbench.squiggles('error').boundingBox())!;
    const { box } = await workbench.drawn(SLOW);
    expect(marked.x).toBeCloseTo(box.x, -1);
    expect(marked.width).toBeCloseTo(box.width, -1);
    expect(marked.y).toBeGreaterThanOrEqual(box.y - 1);
    expect(marked.y + marked.height).toBeLessThanOrEqual(box.y + box.height + 3);
  });

  test('the Problems list and the status bar say so', async ({ host, workbench }) => {
    const rows = await workbench.problems();
    for (const { message, rule, severity } of check(host.folder.path, FILE)) {
      if (severity === 'hint') continue;
      const row = rows.find((each) => each.includes(message.replace(/\s+/g, ' ')));
      expect(row, rows.join('\n')).toContain(rule);
    }
    await expect.poll(() => workbench.status.textContent(), WAIT).toContain('0 of 1 shot clear');
    await workbench.focusText();
  });

  test('hints and hover tell what the settings come to', async ({ host, workbench }) => {
    const { effectiveFNumber, magnification } = figures(host.folder.path, FILE).first!;
    const drawnAfter = async (setting: string) => {
      const line = (await workbench.drawnLines()).find((each) => each.startsWith(setting));
      return line?.slice(setting.length) ?? '';
    };
    await workbench.goTo('48 mm', PLAN);
    const [works, size] = [`f/${short(effectiveFNumber)}`, `${short(magnification)}x`];
    await expect.poll(() => drawnAfter('    aperture: f/8'), WAIT).toContain(works);
    await expect.poll(() => drawnAfter('    field: 48 mm'), WAIT).toContain(size);
    // Nothing is found on this value: what the hover says can only be about the value itself.
    expect(await workbench.hover()).toContain(size);
    await workbench.picture(`hover, ${name}`);
    await workbench.escape();
  });

  test('a fix applied and saved leaves nothing to find', async ({ host, workbench }) => {
    const [finding] = check(host.folder.path, FILE).filter(({ severity }) => severity === 'error');
    const [fix] = finding!.fixes ?? [];
    expect(fix, finding!.message).toBeDefined();
    await workbench.goTo(SLOW, PLAN);
    await workbench.applyFix(fix!.title);
    await expect.poll(() => workbench.squiggles('error').count(), WAIT).toBe(0);
    await workbench.save();
    await expect.poll(() => host.folder.read(FILE), WAIT).not.toBe(PLAN);
    const left = check(host.folder.path, FILE);
    expect(left.filter(({ rule }) => rule === finding!.rule)).toEqual([]);
    expect(left.filter(({ severity }) => severity === 'error')).toEqual([]);
    await workbench.picture(`fixed, ${name}`);
  });
});

/** Of a key, the name of an entry, a quantity and a word: as many as are different. */
/** Names look alike where they are defined and where they are used. */
const colours = async (workbench: Workbench): Promise<string[]> => {
  const texts = ['subject', 'first', '48', 'near'];
  const drawn = await Promise.all(texts.map((text) => workbench.drawn(text)));
  return [...new Set(drawn.map(({ colour }) => colour))];
};

/** A figure as it is shown: with as many digits as the tool gives, which are at least two. */
const short = (figure: number | null): string =>
  String(Number((figure ?? Number.NaN).toPrecision(2)));
