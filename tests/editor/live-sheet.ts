/** The live sheet among the editor's frames. */
import type { Frame, Page } from 'playwright-core';
import { expect } from 'vitest';
import { WAIT } from './opened.ts';

/** The innermost frame of the view, once it shows a shot. */
export async function sheetIn(page: Page): Promise<Frame> {
  let found: Frame | undefined;
  await expect
    .poll(async () => {
      for (const frame of page.frames()) {
        const shots = await frame
          .locator('.shot')
          .count()
          .catch(() => 0);
        if (shots > 0) found = frame;
      }
      return found !== undefined;
    }, WAIT)
    .toBe(true);
  return found!;
}
