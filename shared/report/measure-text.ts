/** What to measure next, as people read it in a terminal. */
import { type Block, list, paragraph, section, toned } from '../api/document.ts';
import type { KnownOfLens, MeasureAdvice } from '../api/measure.ts';
import { message } from '../words/message.ts';

/** @param known one thing that is known of a lens, as its name and its value in words */
export function measureDocument(
  advice: readonly MeasureAdvice[],
  known: (one: KnownOfLens) => readonly [label: string, words: string],
): readonly Block[] {
  if (advice.length === 0) return [paragraph(message`No shot uses a lens that could be measured.`)];
  return advice.flatMap((one) =>
    section(1, one.lens, [
      paragraph(
        one.rows === 0
          ? message`Known by its data alone:`
          : one.rows === 1
            ? message`Known by its data and 1 row of its bench:`
            : message`Known by its data and ${one.rows} rows of its bench:`,
      ),
      { kind: 'pairs', rows: one.known.map(known) },
      ...(one.next
        ? [
            list([
              [toned('heading', message`Measure next`), `: ${one.next.how}`],
              one.next.gives,
              [toned('heading', message`Row for its bench`), `: ${one.next.row}`],
            ]),
          ]
        : [paragraph(message`No measurement would make the figures of its shots much narrower.`)]),
    ]),
  );
}
