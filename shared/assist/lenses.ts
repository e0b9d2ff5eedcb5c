/**
 * A line over each shot with its state in a few words. Where it stands follows from the text
 * alone, so that a plan of any length is answered at once; the words are worked out for the
 * shots that are shown.
 */
import type { Bench } from '../figures/bench.ts';
import type { Figure } from '../figures/figure.ts';
import { doesNotApply } from '../figures/not-applicable.ts';
import type { ShotFigures } from '../figures/shot-figures.ts';
import type { EntryId, FileId } from '../plan/place.ts';
import { hasSubjectAndRig, missingChecks, openChecks } from '../rules/checks-called-for.ts';
import { isOutOfReach } from '../rules/field-out-of-reach.ts';
import type { Say } from '../rules/say.ts';
import type { Context } from '../workspace/context.ts';
import type { ShotLens } from '../workspace/facade.ts';
import type { Range } from './located.ts';
import { depthPair, exposureWords } from './words.ts';

const SHOTS = 'shots/';

/** Where a file's shots have their lens: at their names, in the order of the text. */
export function lensesIn(context: Context, file: FileId): readonly ShotLens[] {
  return context.analysis.shots(file).map((id) => ({
    shot: id.slice(SHOTS.length),
    range: nameRange(context, file, id),
  }));
}

/** The name of a shot that has lines of its own is found without reading them. */
function nameRange({ store, locator }: Context, file: FileId, id: EntryId): Range {
  const index = locator.indexOf(file, id);
  const text = store.text(file);
  if (index === undefined || !text) return locator.rangeOf({ file, entry: id, path: [] });
  const { indent } = text.chunks[index]!;
  const at = text.positionOf(index, indent);
  return { start: at, end: at };
}

/** The state of a shot; null: there is no such shot. */
export function lensWords({ analysis, say }: Context, file: FileId, shot: string): string | null {
  const id: EntryId = `${SHOTS}${shot}`;
  if (!analysis.shots(file).includes(id)) return null;
  const bench = analysis.bench(file, id);
  const figures = analysis.figures(file, id);
  if (!bench || !figures) return "can't be read as it stands";
  return [...pictureWords(bench, figures, say), checkWords(bench)]
    .filter((words) => words !== null)
    .join(' · ');
}

/** A field that the rig can't set leaves nothing to say about what it would look like. */
function pictureWords(bench: Bench, figures: ShotFigures, say: Say): readonly (string | null)[] {
  if (isOutOfReach(bench, figures)) return ['field out of reach'];
  const parts = Object.entries({
    depth: depthWords(figures, say),
    exposure: lightWords(figures, bench, say),
    mirror: mirrorWords(figures, say),
  });
  const missing = parts.flatMap(([name, words]) => (words === undefined ? [name] : []));
  return [
    ...parts.flatMap(([, words]) => (words === undefined ? [] : [words])),
    missing.length > 0 ? `${listed(missing)} not known` : null,
  ];
}

/** Words, nothing to say (null), or not known (undefined). */
type Part = string | null | undefined;

function depthWords({ judgedDepthMm: depth, depthMm: { needed } }: ShotFigures, say: Say): Part {
  if (!depth.known) return undefined;
  if (!needed.known) return `depth ${say.length(depth.value)}, needed not known`;
  if (needed.value === 0) return `depth ${say.length(depth.value)}`;
  const [there, wanted] = depthPair(depth.value, needed.value, say);
  const unit = wanted.slice(wanted.lastIndexOf(' '));
  return `depth ${there.endsWith(unit) ? there.slice(0, -unit.length) : there} of ${wanted}`;
}

function lightWords(
  { exposureErrorStops: error, isoNeeded }: ShotFigures,
  { iso }: Bench,
  say: Say,
): Part {
  if (iso.known && iso.value === 'auto')
    return isoNeeded.known ? `needs ISO ${say.iso(isoNeeded.value)}` : undefined;
  if (!error.known) return undefined;
  const words = exposureWords(error.value, say);
  return words.replace(/^exposure (?=[+−])/, '');
}

/** The tilts at which the mirror is clear; nothing where the subject is no flat mirror. */
function mirrorWords({ leastTiltRad: least, tiltWindow: window }: ShotFigures, say: Say): Part {
  if (without(least)) return null;
  if (!least.known) return undefined;
  if (!window.known) return `mirror clear from ${say.angle(least.value)}`;
  const { leastRad, greatestRad, openRad } = window.value;
  if (openRad < 0) return 'mirror clear at no tilt';
  const [from, to] = say.angles2(leastRad, greatestRad);
  return `mirror clear ${from.replace('°', '')}–${to}`;
}

const without = (figure: Figure<unknown>): boolean => !figure.known && doesNotApply(figure.because);

function checkWords(bench: Bench): string | null {
  const missing = hasSubjectAndRig(bench) ? missingChecks(bench).length : 0;
  const open = openChecks(bench).length;
  const count = (checks: number, what: string): string =>
    `${checks} ${checks === 1 ? 'check' : 'checks'} ${what}`;
  if (missing > 0) return count(missing, open > 0 ? `missing, ${open} open` : 'missing');
  if (open > 0) return count(open, 'open');
  return bench.checks.size > 0 && !bench.checksUnread ? 'checks done' : null;
}

const listed = (names: readonly string[]): string =>
  names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
