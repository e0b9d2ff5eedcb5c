/// <reference lib="dom" />
/**
 * A bench, not a test: from a file drawn in the workbench to the first finding under its text, ours and a
 * bare YAML extension on the same file, in turns. `npm run bench:editor` runs it and prints the table.
 */
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { planOf } from '../bench/plan-of.ts';
import { both, spread, table } from '../bench/statistics.ts';
import { installGeneral } from './general-extension.ts';
import { startNodeHost } from './node-host.ts';
import { test } from './opened.ts';
import { Workbench } from './workbench.ts';

const FILE = 'many.shootplan.yaml';
const ROUNDS = 5;
/** A key that both of them find fault with, among the first lines. */
const withFault = (text: string): string => text.replace('title:', 'no-such-key: 1\ntitle:');

const PLANS: readonly (readonly [shots: number, text: string])[] = [
  [2, withFault(EXAMPLE_PLAN)],
  [1000, withFault(planOf(1000))],
];

/** Written by the page itself, the moment that each is drawn. */
interface Drawn {
  text?: number;
  finding?: number;
}

const watch = (): void => {
  const drawn: Drawn = {};
  Object.assign(globalThis, { drawn });
  new MutationObserver(() => {
    if (document.querySelector('.editor-instance .view-line span span'))
      drawn.text ??= performance.now();
    if (document.querySelector('.editor-instance [class*="squiggly-"]'))
      drawn.finding ??= performance.now();
  }).observe(document, { childList: true, subtree: true });
};

test('from the text to its first finding', { timeout: 1_800_000, retry: 0 }, async ({
  browser,
}) => {
  const general = await installGeneral();
  const rows: (readonly string[])[] = [];
  for (const [shots, text] of PLANS) {
    const extensions = [undefined, general];
    const times = extensions.map((): { text: number[]; finding: number[] } => ({
      text: [],
      finding: [],
    }));
    for (let round = 0; round < ROUNDS; round++)
      for (const [index, each] of extensions.entries()) {
        const host = await startNodeHost(
          { [FILE]: text },
          each === undefined ? {} : { extensions: each },
        );
        const workbench = await Workbench.open(browser, host, FILE, { before: watch });
        const { page } = workbench;
        await page
          .locator('.editor-instance [class*="squiggly-"]')
          .first()
          .waitFor({ timeout: 120_000 });
        const drawn = await page.evaluate(
          () => (globalThis as unknown as { drawn: Required<Drawn> }).drawn,
        );
        times[index]!.text.push(drawn.text);
        times[index]!.finding.push(drawn.finding - drawn.text);
        await workbench.close();
        await host.stop();
      }
    const cells = times.flatMap((each) => [both(spread(each.text)), both(spread(each.finding))]);
    rows.push([String(shots), ...cells]);
  }
  const head = [
    'shots',
    'page to text, ours',
    'text to finding, ours',
    'page to text, bare',
    'text to finding, bare',
  ];
  process.stdout.write(`\nIn the workbench, p50 / p95 ms.\n\n${table(head, rows)}\n`);
});
