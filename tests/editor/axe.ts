/// <reference lib="dom" />
/** What axe finds on a page or in a frame of one: contrast is of what is drawn, so it takes a browser. */
import axe from 'axe-core';
import type { Frame, Page } from 'playwright-core';

/**
 * Each kind of violation with the first place of it; empty where all is well.
 * @param within a selector: what is somebody else's around it is left out
 */
export async function violationsIn(shown: Page | Frame, within = ':root'): Promise<string[]> {
  await shown.evaluate(axe.source);
  return shown.evaluate(async (place) => {
    const { run } = (globalThis as unknown as { axe: typeof axe }).axe;
    const { violations } = await run(place);
    return violations.map(({ id, impact, nodes }) => `${id} (${impact}): ${nodes[0]?.html}`);
  }, within);
}

/** What moves by itself on a page, and whether it scrolls smoothly: nothing may, asked or not. */
export const motionOf = (shown: Page | Frame): Promise<string[]> =>
  shown.evaluate(() => [
    ...document.getAnimations().map((one) => one.id || one.constructor.name),
    ...[...document.querySelectorAll('*')].flatMap((one) => {
      const { transitionDuration, scrollBehavior } = getComputedStyle(one);
      const isStill = /^[0s, ]*$/.test(transitionDuration) && scrollBehavior === 'auto';
      return isStill ? [] : [`${one.tagName}: ${transitionDuration}, ${scrollBehavior}`];
    }),
  ]);
