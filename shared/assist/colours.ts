/** Swatches beside film thicknesses: one for each end of a range, as the shot would show it. */

import type { ColourSwatch, Range } from '../api/located.ts';
import { swatchesOf } from '../figures/film.ts';
import { filmColour, prepareSwatches, type Swatches } from '../film/colour.ts';
import { D65_K } from '../film/daylight.ts';
import { THICKEST_NM } from '../film/reflectance.ts';
import { nameOf } from '../plan/entry-id.ts';
import { ifKnown } from '../plan/field.ts';
import type { Shot, Subject } from '../plan/generated/types.ts';
import type { EntryId, FileId, Place } from '../plan/place.ts';
import type { Context } from '../workspace/context.ts';

const NUMBER = /[0-9]+(?:\.[0-9]+)?/g;

export function coloursIn(context: Context, file: FileId): readonly ColourSwatch[] {
  const { analysis } = context;
  return analysis.entries.list(file).flatMap(({ id, kind }) => {
    if (kind.kind !== 'entry' || kind.home.def !== 'subject') return [];
    const subject = analysis.entries.lowered(file, id)?.value as Subject | undefined;
    const thickness = subject && thicknessOf(subject);
    if (thickness?.state !== 'known') return [];
    const { from, to } = thickness.value;
    if (to > THICKEST_NM || from > to) return [];
    const swatches = swatchesFor(context, file, id);
    const ranges = numberRanges(context, thickness.at);
    const values = ranges.length === 1 ? [from] : [from, to];
    return ranges.slice(0, 2).map((range, index) => {
      const { red, green, blue } = filmColour(swatches, values[index] ?? from).screen;
      return { range, red, green, blue };
    });
  });
}

/** Of the film itself, else of the one that floats on it. */
const thicknessOf = ({ thickness, film }: Subject): Subject['thickness'] | undefined =>
  thickness.state === 'missing' ? ifKnown(film)?.thickness : thickness;

/** As the first shot of the subject lights and balances it; without one, in D65 and square on. */
function swatchesFor({ store, analysis }: Context, file: FileId, subject: EntryId): Swatches {
  const name = nameOf('subjects', subject);
  for (const plan of store.files())
    for (const shot of analysis.shots(plan)) {
      // Laying a shot out costs more than reading whom it names.
      const fields = analysis.entries.lowered(plan, shot)?.value as Shot | undefined;
      if (!fields || ifKnown(fields.subject) !== name) continue;
      const bench = analysis.bench(plan, shot);
      if (bench?.subject?.file !== file || bench.subject.entry !== subject) continue;
      const swatches = swatchesOf(bench);
      if (swatches.known) return swatches.value;
    }
  return prepareSwatches({ lightK: D65_K, incidenceRad: 0 });
}

/** Where the numbers of a value stand. */
function numberRanges({ locator, store }: Context, at: Place): Range[] {
  const found = locator.spanOf(at);
  const text = store.text(at.file);
  if (!found || !text) return [];
  const index = locator.indexOf(at.file, found.chunk);
  const chunk = index === undefined ? undefined : text.chunks[index];
  if (index === undefined || !chunk) return [];
  const written = chunk.text.slice(found.span.start, found.span.end);
  return [...written.matchAll(NUMBER)].map((match) => ({
    start: text.positionOf(index, found.span.start + match.index),
    end: text.positionOf(index, found.span.start + match.index + match[0].length),
  }));
}
