/**
 * What stands beside the settings of a shot while it is written: what the aperture works as, how
 * the exposure comes out, how large the picture is; and beside its cuts. Only what is known, and only in the range
 * that is shown.
 */

import type { HintKind } from '../api/beside-text.ts';
import type { InlayHint } from '../api/facade.ts';
import type { Position, Range } from '../api/located.ts';
import type { Bench } from '../figures/bench.ts';
import type { ShotFigures } from '../figures/shot-figures.ts';
import type { UncertainShot } from '../figures/uncertain.ts';
import type { EntryId, FileId, Place } from '../plan/place.ts';
import { isoRangeOf, needsIso } from '../rules/needed-iso.ts';
import { asFound, depthPair, exposureWords, sizeWords } from '../say/figures.ts';
import type { LengthUnit, Say } from '../say/say.ts';
import { inLanguage, later, message } from '../words/message.ts';
import type { Context } from '../workspace/context.ts';
import { editHintsIn } from './edit-hints.ts';
import { fitting, hintPlace, LONGEST_LABEL } from './hint-place.ts';
import type { SaidShot } from './hover/shot/view.ts';
import { Sure } from './hover/sure.ts';

interface Hint {
  readonly label: string;
  /** English; see `inLanguage`. */
  readonly tooltip: string;
}

type HintOf = (shot: SaidShot) => Hint | null;

export function hintsIn(context: Context, file: FileId, range: Range): readonly InlayHint[] {
  const ofShots = shotsIn(context, file, range).flatMap((shot) => hintsOfShot(context, file, shot));
  const all = [...ofShots, ...editHintsIn(context, file, range)].filter(({ position }) =>
    isWithin(position, range),
  );
  return fitting(all);
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
  const { analysis, locator, say, store } = context;
  const uncertain = analysis.uncertain(file, shot);
  const text = store.text(file);
  if (!uncertain || !text) return [];
  return hintsOf(uncertain, say)
    .filter(({ at }) => at.file === file)
    .map(({ at, hint }) => ({ position: hintPlace(text, locator.rangeOf(at).end), ...hint }))
    .sort(
      (a, b) => a.position.line - b.position.line || a.position.character - b.position.character,
    );
}

interface PlacedHint {
  readonly at: Place;
  readonly hint: Hint & { readonly kind: HintKind };
}

/** What was last said of a shot: an editor asks for all that it shows after every key. */
const said = new WeakMap<
  UncertainShot,
  { readonly lengths: LengthUnit; readonly hints: readonly PlacedHint[] }
>();

function hintsOf(uncertain: UncertainShot, say: Say): readonly PlacedHint[] {
  const { lengths } = say;
  const known = said.get(uncertain);
  if (known?.lengths === lengths) return known.hints;
  const { bench, figures } = uncertain.middle;
  const hints = Object.entries(HINTS).flatMap(([key, [kind, hintOf]]): PlacedHint[] => {
    const field = bench.fields[key as keyof typeof HINTS];
    if (field.state !== 'known') return [];
    const sure = new Sure(uncertain, say);
    const hint = hintOf({ bench, figures, say, sure });
    if (!hint) return [];
    const tooltip = [inLanguage(hint.tooltip), sure.bounds(), sure.widest()]
      .filter(Boolean)
      .join(' ');
    return [{ at: field.at, hint: { kind, label: hint.label, tooltip } }];
  });
  said.set(uncertain, { lengths, hints });
  return hints;
}

const fits = (label: string): boolean => label.length <= LONGEST_LABEL;

/** The first of these labels that there is room for; bounds come before a word that says less. */
const roomiest = (...labels: readonly string[]): string => labels.find(fits) ?? labels.at(-1)!;

const APERTURE_TOOLTIP = later`Effective f-number at the sensor. Depth of field (DOF) along the lens axis, and the depth that subject, tilt and move need.`;

/** Two values at most: what the depth is needed for stands beside it where there is room for a second. */
const apertureHint: HintOf = ({ figures, bench: { marked }, say, sure }) => {
  const { effectiveFNumber: effective } = figures;
  const isSaid =
    effective.known &&
    marked.known &&
    (effective.measured === true || say.fNumber(effective.value) !== say.fNumber(marked.value));
  if (!isSaid) {
    const alone = depthLabels(figures, say, sure);
    return alone && { label: roomiest(...alone.withNeed), tooltip: APERTURE_TOOLTIP };
  }
  const bounds = sure.behind(
    message`effective f-number`,
    (of) => of.effectiveFNumber,
    (value) => say.fNumber(value),
  );
  const depth = depthLabels(figures, say, sure);
  const n = say.fNumber(effective.value);
  const words = say.effective(effective.value, effective.measured);
  const lefts = bounds === '' ? [words] : [`${words}${bounds}`, `${n}${bounds}`, words];
  // The word is longer than the number: where room is short it goes before the bounds of the depth.
  if (!effective.measured) lefts.push(n);
  const labels = depth
    ? depth.alone.flatMap((right) => lefts.map((left) => `${left} · ${right}`))
    : lefts;
  return { label: roomiest(...labels), tooltip: APERTURE_TOOLTIP };
};

/** Depth of field, alone and with the depth needed, the longest first. */
function depthLabels(
  figures: ShotFigures,
  say: Say,
  sure: Sure,
): Readonly<Record<'alone' | 'withNeed', readonly string[]>> | null {
  const { usableDepthMm: depth, depthMm } = figures;
  const { needed } = depthMm;
  if (!depth.known) return null;
  const bounds = depthAround(sure, say);
  const isNeeded = needed.known && needed.value > 0;
  const [there, wanted] = isNeeded
    ? depthPair(depth.value, needed.value, say)
    : [say.length(depth.value), ''];
  const alone = [...new Set([bounds, ''])].map((around) => message`DOF ${there}${around}`);
  return {
    alone,
    withNeed: isNeeded ? alone.map((words) => message`${words}, needs ${wanted}`) : alone,
  };
}

const depthAround = (sure: Sure, say: Say): string =>
  sure.behind(
    message`depth of field`,
    (of) => of.usableDepthMm,
    (mm) => say.length(mm),
  );

const isoHint: HintOf = ({ figures, bench, say, sure }) => {
  const { exposureErrorStops: error, isoNeeded } = figures;
  const { iso } = bench;
  if (!iso.known) return null;
  if (iso.value === 'auto') {
    if (!isoNeeded.known) return null;
    const label = needsIso(isoNeeded.value, isoRangeOf(bench), say);
    const bounds = sure.behind(
      message`ISO needed`,
      (of) => of.isoNeeded,
      (value) => say.iso(value),
    );
    return { label: roomiest(label + bounds, label), tooltip: later`ISO for correct exposure.` };
  }
  if (!error.known) return null;
  const label = exposureWords(error.value, say);
  return {
    label: roomiest(label + sure.exposure(message`exposure`), label),
    tooltip: later`How far the exposure is from correct with these settings: under or over.`,
  };
};

const magnificationHint: HintOf = ({ figures: { magnification }, say, sure }) => {
  if (!magnification.known || !(magnification.value > 0)) return null;
  const print = (m: number): string => say.magnification(m);
  const words = print(magnification.value);
  const bounds = sure.behind(message`magnification`, (of) => of.magnification, print);
  return {
    label: roomiest(asFound(magnification, words + bounds), asFound(magnification, words)),
    tooltip: later`Magnification at the sensor.`,
  };
};

const fieldHint: HintOf = ({ figures: { fieldMm }, say, sure }) => {
  if (!fieldMm.known || !Number.isFinite(fieldMm.value[0])) return null;
  const label = (bounds: string): string =>
    asFound(fieldMm, message`field ${sizeWords(fieldMm.value, say)}${bounds}`);
  const bounds = sure.size(message`field`, (of) => of.fieldMm, 'length');
  return {
    label: roomiest(label(bounds), label('')),
    tooltip: later`Field of view of the recorded frame in the plane of focus.`,
  };
};

const ringHint: HintOf = (shot) => {
  const hints = [magnificationHint, fieldHint].flatMap((of) => of(shot) ?? []);
  if (hints.length === 0) return null;
  const together = (...labels: readonly string[]): string => labels.join(' · ');
  const long = hints.map(({ label }) => label);
  const short = long.map((label) => label.replace(/ \([^)]*\)$/, ''));
  return {
    label: roomiest(together(...long), together(...short)),
    tooltip: hints.map(({ tooltip }) => inLanguage(tooltip)).join(' '),
  };
};

const HINTS = {
  field: ['size', magnificationHint],
  magnification: ['size', fieldHint],
  ring: ['size', ringHint],
  aperture: ['aperture', apertureHint],
  iso: ['exposure', isoHint],
} as const satisfies Partial<Record<keyof Bench['fields'], readonly [HintKind, HintOf]>>;

function isWithin({ line, character }: Position, { start, end }: Range): boolean {
  if (line < start.line || line > end.line) return false;
  if (line === start.line && character < start.character) return false;
  return line !== end.line || character <= end.character;
}
