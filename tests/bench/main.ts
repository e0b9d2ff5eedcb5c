/**
 * `npm run bench`: what typing, opening and asking cost, as tables. Ratios within one run mean
 * more than the times: they depend on the machine and on what else it does.
 */
import { benchAnalysis, benchMemory, SIZES } from './analysis.ts';
import { benchHeaders, benchLooks } from './clips.ts';
import { benchCold, shippedSizes } from './cold.ts';
import { benchCuts } from './cuts.ts';
import { benchFrames } from './frames.ts';
import { benchMeasuredLens } from './measured-lens.ts';
import { benchOutline } from './outline.ts';
import { benchShapes, SHAPE_SIZES } from './shape-costs.ts';
import { both, ms, table } from './statistics.ts';
import {
  benchGeneral,
  benchOpenings,
  benchOurs,
  GENERAL_DELAY_MS,
  generalServer,
} from './transport.ts';

const say = (text: string) => process.stdout.write(`${text}\n`);

benchAnalysis(10);
say(
  'Analysis alone, p50 / p95 ms; one finding in ten shots, one hint for each name that is not used.\n',
);
const analysed = SIZES.map(benchAnalysis);
say(
  table(
    [
      'shots',
      'kB',
      'findings',
      'open',
      'edit a value',
      'break the text',
      'edit, hover',
      'edit, hints',
      'edit, completion',
      'edit, outline',
      'parseDocument',
    ],
    analysed.map((it) => [
      String(it.shots),
      it.kilobytes.toFixed(0),
      String(it.findings),
      both(it.open),
      both(it.edit),
      both(it.breaking),
      both(it.hover),
      both(it.hints),
      both(it.completion),
      both(it.symbols),
      both(it.parseDocument),
    ]),
  ),
);
const thousand = analysed.find(({ shots }) => shots === 1000);
if (thousand)
  say(
    `\nAt 1,000 shots an edit is ${(thousand.parseDocument.p50 / thousand.edit.p50).toFixed(0)} times faster than a whole parseDocument of the same text (p50), ${(thousand.parseDocument.p50 / thousand.edit.p95).toFixed(0)} times by its p95.`,
  );

say('\nThe outline as the protocol has it, ms of processor, p50 / p95.\n');
say(
  table(
    ['shots', 'nothing read yet', 'a value edited', 'a line more at the top'],
    SIZES.map(benchOutline).map(({ shots, first, value, line }) => [
      String(shots),
      ms(first),
      both(value),
      both(line),
    ]),
  ),
);

say('\nAn edit of a cut in the middle of a film, p50 / p95 ms.\n');
say(
  table(
    ['cuts', 'where in its clip it begins', 'how long it is'],
    [10, 100, 1000]
      .map(benchCuts)
      .map(({ cuts, from, duration }) => [String(cuts), both(from), both(duration)]),
  ),
);

say('\nA lens with a bench of ten rows, in all shots of a plan, p50 / p95 ms.\n');
say(
  table(
    [
      'shots',
      'open',
      'edit in a row',
      'longest wait in it',
      'edit of the lens without rows',
      'edit in a shot',
    ],
    [10, 100, 1000]
      .map(benchMeasuredLens)
      .map(({ shots, open, row, wait, lens, shot }) => [
        String(shots),
        ...[open, row, wait, lens, shot].map(both),
      ]),
  ),
);
say('\nA frame traced from its figures, as PNG, p50 / p95 ms.\n');
say(
  table(
    ['subject', '160 × 90', '480 × 270'],
    benchFrames().map(({ subject, small, large }) => [subject, both(small), both(large)]),
  ),
);

say('\nThe headers of a clip of 10 GB, p50 / p95 ms.\n');
say(
  table(
    ['seconds', 'read'],
    (await benchHeaders([10, 100, 1000])).map(([long, times]) => [String(long), both(times)]),
  ),
);
say('\nLooking at a clip, seconds of processor for 200 frames.\n');
say(
  table(
    ['size', 'frames', 'decoding alone', 'our own process', 'seconds in all', 'MB at most'],
    (
      await benchLooks([
        ['1280x720', 10],
        ['1920x1080', 10],
        ['1920x1080', 60],
        ['3840x2160', 10],
      ])
    ).map(({ size, frames, decoding, own, wall, heapMb }) => [
      ...[size, String(frames), decoding.toFixed(2), own.toFixed(2), wall.toFixed(1)],
      heapMb.toFixed(0),
    ]),
  ),
);

say(
  '\nMany of one thing, ms of the processor: to open / all fixes / fixes at the middle finding.\n',
);
say(
  table(
    ['what there are many of', ...SHAPE_SIZES.map(String)],
    benchShapes().map(({ shape, costs }) => [
      shape,
      ...costs.map((cost) => [cost.open, cost.fixes, cost.atCursor].map(ms).join(' / ')),
    ]),
  ),
);

say('\nHeap in MB after edits, garbage collected.\n');
say(
  table(
    ['shots', '1,000 edits', '10,000 edits'],
    [100, 1000, 5000]
      .map(benchMemory)
      .map((it) => [String(it.shots), ms(it.after1000), ms(it.after10000)]),
  ),
);

const general = generalServer();
say(
  `\nOver stdio, p50 / p95 ms, with the server in a process of its own${general ? `; beside it the general YAML server with our schema, its own wait of ${GENERAL_DELAY_MS} ms left out` : ''}.\n`,
);
const rows: string[][] = [];
for (const shots of SIZES) {
  const openings = await benchOpenings(shots, general);
  const ours = await benchOurs(shots);
  rows.push([
    'Lamella',
    String(shots),
    both(openings.ours.spawn),
    both(openings.ours.open),
    both(ours.early),
    both(ours.edit),
    both(ours.burst),
    both(ours.hover),
  ]);
  if (!general) continue;
  const theirs = await benchGeneral(shots, general);
  const less = (value: number) => Math.max(0, value - GENERAL_DELAY_MS);
  const without = ({ p50, p95 }: { p50: number; p95: number }) =>
    both({ p50: less(p50), p95: less(p95) });
  rows.push([
    'general',
    String(shots),
    without(openings.general!.spawn),
    without(openings.general!.open),
    without(theirs.early),
    without(theirs.edit),
    without(theirs.burst),
    both(theirs.hover),
  ]);
}
say(
  table(
    [
      'server',
      'shots',
      'spawn to findings',
      'open to findings',
      'edit to findings, the first 50',
      'edit to findings',
      'after a burst of keys',
      'edit, hover',
    ],
    rows,
  ),
);

say('\nCold, p50 / p95 ms.\n');
const cold = benchCold();
say(
  table(
    ['`lamella check` of a sample', '`yaml` and validator alone', 'node alone', 'ratio of p50'],
    [
      [
        both(cold.check),
        both(cold.bare),
        both(cold.node),
        (cold.check.p50 / cold.bare.p50).toFixed(2),
      ],
    ],
  ),
);

say('\nShipped, kB.\n');
say(
  table(
    ['file', 'kB'],
    shippedSizes().map(([name, size]) => [name, String(size)]),
  ),
);
