/**
 * What stands beside the settings of a shot while it is written: what the aperture works as, how
 * the exposure comes out, how large the picture is; and beside its cuts. Only what is known, and only in the range
 * that is shown.
 */

import type { InlayHint } from '../api/facade.ts';
import type { Position, Range } from '../api/located.ts';
import type { Bench } from '../figures/bench.ts';
import type { ShotFigures } from '../figures/shot-figures.ts';
import type { EntryId, FileId } from '../plan/place.ts';
import { isoRangeOf, needsIso } from '../rules/needed-iso.ts';
import { asFound, depthPair, exposureWords, sizeWords } from '../say/figures.ts';
import type { Say } from '../say/say.ts';
import { message } from '../words/message.ts';
import type { Context } from '../workspace/context.ts';
import { editHintsIn } from './edit-hints.ts';

interface Hint {
  readonly label: string;
  readonly tooltip: string;
}

type HintOf = (figures: ShotFigures, bench: Bench, say: Say) => Hint | null;

export function hintsIn(context: Context, file: FileId, range: Range): readonly InlayHint[] {
  const ofShots = shotsIn(context, file, range).flatMap((shot) => hintsOfShot(context, file, shot));
  return [...ofShots, ...editHintsIn(context, file, range)].filter(({ position }) =>
    isWithin(position, range),
  );
}

/** The shots of the chunks that a range touches; no other is looked at. */
function shotsIn({ store, analysis }: Context, file: FileId, range: Range): readonly EntryId[] {
  const text = store.text(file);
  if (!text) return [];
  const first = text.locate(range.start).index;
  const last = text.locate(range.end).index;
  return store
    .chunkIds(file)
    .slice(first, last + 1)
    .flatMap((id) => {
      if (analysis.isShot(id)) return [id];
      const whole = id === 'shots' && store.chunk(file, id)?.kind === 'entry';
      return whole ? analysis.shots(file).filter((shot) => sourceIs(shot, id)) : [];
    });

  function sourceIs(shot: EntryId, chunk: EntryId): boolean {
    return analysis.entries.source(file, shot)?.chunk === chunk;
  }
}

function hintsOfShot(context: Context, file: FileId, shot: EntryId): InlayHint[] {
  const { analysis, locator, say } = context;
  const bench = analysis.bench(file, shot);
  const figures = analysis.figures(file, shot);
  if (!bench || !figures) return [];
  const hints = Object.entries(HINTS).flatMap(([key, hintOf]): InlayHint[] => {
    const field = bench.fields[key as keyof typeof HINTS];
    const hint = field.state === 'known' ? hintOf(figures, bench, say) : null;
    return hint && field.at.file === file
      ? [{ position: locator.rangeOf(field.at).end, ...hint }]
      : [];
  });
  return hints.sort(
    (a, b) => a.position.line - b.position.line || a.position.character - b.position.character,
  );
}

const apertureHint: HintOf = (figures, { marked }, say) => {
  const { effectiveFNumber: effective, usableDepthMm: depth } = figures;
  const needed = figures.depthMm.needed;
  const parts: string[] = [];
  if (effective.known && marked.known) {
    const isOther = say.fNumber(effective.value) !== say.fNumber(marked.value);
    if (isOther || effective.measured)
      parts.push(say.effective(effective.value, effective.measured));
  }
  if (depth.known && needed.known && needed.value > 0) {
    const [there, wanted] = depthPair(depth.value, needed.value, say);
    parts.push(message`DOF ${there}, needs ${wanted}`);
  } else if (depth.known) parts.push(message`DOF ${say.length(depth.value)}`);
  if (parts.length === 0) return null;
  return {
    label: parts.join(' · '),
    tooltip: message`Effective f-number at the sensor. Depth of field (DOF) along the lens axis, and the depth that subject, tilt and move need.`,
  };
};

const isoHint: HintOf = ({ exposureErrorStops: error, isoNeeded }, bench, say) => {
  const { iso } = bench;
  if (!iso.known) return null;
  if (iso.value === 'auto')
    return isoNeeded.known
      ? {
          label: needsIso(isoNeeded.value, isoRangeOf(bench), say),
          tooltip: message`ISO for correct exposure.`,
        }
      : null;
  return error.known
    ? {
        label: exposureWords(error.value, say),
        tooltip: message`How far the exposure is from correct with these settings: under or over.`,
      }
    : null;
};

const magnificationHint: HintOf = ({ magnification }, _bench, say) =>
  magnification.known && magnification.value > 0
    ? {
        label: asFound(magnification, say.magnification(magnification.value)),
        tooltip: message`Magnification at the sensor.`,
      }
    : null;

const fieldHint: HintOf = ({ fieldMm }, _bench, say) =>
  fieldMm.known && Number.isFinite(fieldMm.value[0])
    ? {
        label: asFound(fieldMm, message`field ${sizeWords(fieldMm.value, say)}`),
        tooltip: message`Field of view of the recorded frame in the plane of focus.`,
      }
    : null;

const ringHint: HintOf = (figures, bench, say) => {
  const hints = [magnificationHint, fieldHint].flatMap((of) => of(figures, bench, say) ?? []);
  if (hints.length === 0) return null;
  return {
    label: hints.map(({ label }) => label).join(' · '),
    tooltip: hints.map(({ tooltip }) => tooltip).join(' '),
  };
};

const HINTS = {
  field: magnificationHint,
  magnification: fieldHint,
  ring: ringHint,
  aperture: apertureHint,
  iso: isoHint,
} as const satisfies Partial<Record<keyof Bench['fields'], HintOf>>;

function isWithin({ line, character }: Position, { start, end }: Range): boolean {
  if (line < start.line || line > end.line) return false;
  if (line === start.line && character < start.character) return false;
  return line !== end.line || character <= end.character;
}
