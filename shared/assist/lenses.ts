/**
 * A line over each shot with its state in a few words. Where it stands follows from the text
 * alone, so that a plan of any length is answered at once; the words are worked out for the
 * shots that are shown.
 */

import type { LensKind } from '../api/beside-text.ts';
import type { ShotLens } from '../api/facade.ts';
import type { Range } from '../api/located.ts';
import type { Bench } from '../figures/bench.ts';
import type { Figure } from '../figures/figure.ts';
import type { ShotFigures } from '../figures/shot-figures.ts';
import { idOf, nameOf } from '../plan/entry-id.ts';
import type { EntryId, FileId } from '../plan/place.ts';
import { isJudged, missingChecks } from '../rules/checks-called-for.ts';
import { isOutOfReach } from '../rules/field-out-of-reach.ts';
import { isoRangeOf, needsIso } from '../rules/needed-iso.ts';
import { openOwnChecks } from '../rules/readiness.ts';
import { depthPair, exposureWords } from '../say/figures.ts';
import type { Say } from '../say/say.ts';
import { allOf } from '../words/listed.ts';
import { message } from '../words/message.ts';
import type { Context } from '../workspace/context.ts';
import { takeWords } from '../workspace/takes.ts';
import type { SaidShot } from './hover/shot/view.ts';
import { Sure } from './hover/sure.ts';

/** Where a file's shots have their lens: at their names, in the order of the text. */
export function lensesIn(context: Context, file: FileId): readonly ShotLens[] {
  return context.analysis.shots(file).map((id) => ({
    shot: nameOf('shots', id),
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

/** A window of 900 pixels shows so many without cutting them off. */
const LONGEST = 80;

/** One or two values of a kind: with their bounds, and without. */
interface Words {
  readonly kind: LensKind;
  readonly long: string;
  readonly short: string;
}

/** The state of a shot; null: there is no such shot. */
export function lensWords(
  { analysis, say }: Context,
  file: FileId,
  shot: string,
  without: ReadonlySet<LensKind> = new Set(),
): string | null {
  const id: EntryId = idOf('shots', shot);
  if (!analysis.shots(file).includes(id)) return null;
  const bench = analysis.bench(file, id);
  const figures = analysis.figures(file, id);
  if (!bench || !figures) return message`has errors in its text`;
  const uncertain = analysis.uncertain(file, id);
  if (!uncertain) return null;
  const said = { bench, figures, say, sure: new Sure(uncertain, say) };
  const words = [
    ...pictureWords(said, without),
    ...asWords('checks', checkWords(bench)),
    ...asWords('takes', takeWords(analysis, file, shot)),
  ];
  return roomiest(words.filter(({ kind }) => !without.has(kind)));
}

const asWords = (kind: LensKind, said: string | null): readonly Words[] =>
  said === null ? [] : [{ kind, long: said, short: said }];

/** Which kinds say less where there is no room for all, the first before the others. */
const SHORTENED: readonly LensKind[] = ['exposure', 'depth', 'reflections'];

function roomiest(words: readonly Words[]): string {
  const joined = (short: readonly LensKind[]): string =>
    words.map((one) => (short.includes(one.kind) ? one.short : one.long)).join(' · ');
  const counts = SHORTENED.map((_, at) => at + 1);
  const tried = [0, ...counts].map((count) => joined(SHORTENED.slice(0, count)));
  return tried.find(({ length }) => length <= LONGEST) ?? tried.at(-1)!;
}

/** A field that the rig can't set leaves nothing to say about what it would look like. */
function pictureWords(shot: SaidShot, without: ReadonlySet<LensKind>): readonly Words[] {
  const { bench, figures, say } = shot;
  if (isOutOfReach(bench, figures)) return asWords('depth', message`field out of reach`);
  const all: readonly (readonly [LensKind, string, Part])[] = [
    ['depth', message`DOF`, depthWords(shot)],
    ['exposure', message`exposure`, lightWords(shot)],
    ['reflections', message`reflections`, mirrorWords(figures, say)],
  ];
  const parts = all.filter(([kind]) => !without.has(kind));
  const [missing, ...others] = parts.filter(([, , words]) => words === undefined);
  const names = [missing, ...others].flatMap((one) => (one ? [one[1]] : []));
  return [
    ...parts.flatMap(([kind, , words]) => (words ? [{ kind, ...words }] : [])),
    ...(missing ? asWords(missing[0], message`${allOf(names)} unknown`) : []),
  ];
}

/** Words, nothing to say (null), or not known (undefined). */
type Part = Omit<Words, 'kind'> | null | undefined;

const bounded = (say: (bounds: string) => string, bounds: string): Part => ({
  long: say(bounds),
  short: say(''),
});

const always = (words: string): Part => ({ long: words, short: words });

function depthWords({ figures, say, sure }: SaidShot): Part {
  const { usableDepthMm: depth, depthMm, stackFrames: frames } = figures;
  const { needed } = depthMm;
  if (!depth.known) return undefined;
  const bounds = sure.behind(
    message`depth of field`,
    (of) => of.usableDepthMm,
    (mm) => say.length(mm),
  );
  const alone = say.length(depth.value);
  if (frames.known)
    return bounded((around) => message`DOF ${alone}${around}, ${frames.value} frames`, bounds);
  if (!needed.known)
    return bounded((around) => message`DOF ${alone}${around}, need unknown`, bounds);
  if (needed.value === 0) return bounded((around) => message`DOF ${alone}${around}`, bounds);
  const [there, wanted] = depthPair(depth.value, needed.value, say);
  return bounded(
    (around) =>
      around === ''
        ? message`DOF ${there} (needs ${wanted})`
        : message`DOF ${there}${around}, needs ${wanted}`,
    bounds,
  );
}

function lightWords({ figures, bench, say, sure }: SaidShot): Part {
  const { exposureErrorStops: error, isoNeeded } = figures;
  const { iso } = bench;
  if (iso.known && iso.value === 'auto') {
    if (!isoNeeded.known) return undefined;
    const bounds = sure.behind(
      message`ISO needed`,
      (of) => of.isoNeeded,
      (needed) => say.iso(needed),
    );
    const words = needsIso(isoNeeded.value, isoRangeOf(bench), say);
    return bounded((around) => `${words}${around}`, bounds);
  }
  if (!error.known) return undefined;
  const words = exposureWords(error.value, say);
  return bounded((around) => `${words}${around}`, sure.exposure(message`exposure`));
}

/** The tilts at which the lens is not reflected; nothing where the subject is not a flat mirror. */
function mirrorWords({ leastTiltRad: least, tiltWindow: window }: ShotFigures, say: Say): Part {
  if (isWithout(least)) return null;
  if (!least.known) return undefined;
  if (!window.known) return always(message`no lens reflection above ${say.angle(least.value)}`);
  const { leastRad, greatestRad, openRad } = window.value;
  if (openRad < 0) return always(message`lens reflected at every tilt`);
  const [first, to] = say.angles2(leastRad, greatestRad);
  const from = first.replace('°', '');
  return {
    long: message`no lens reflection at ${from}–${to}`,
    short: message`tilt window ${from}–${to}`,
  };
}

const isWithout = (figure: Figure<unknown>): boolean => !figure.known && figure.applies === false;

/** Missing checks that a lens names; it has no room for more, and the hover lists them all. */
const MOST_NAMED = 2;

function checkWords(bench: Bench): string | null {
  const names = isJudged(bench) ? missingChecks(bench).map(({ name }) => name) : [];
  const missing = names.length;
  const open = openOwnChecks(bench).length;
  if (missing > 0 && missing <= MOST_NAMED)
    return open > 0
      ? message`${allOf(names)} missing, ${open} open`
      : message`${allOf(names)} missing`;
  if (missing > 0)
    return open > 0
      ? message`${missing} checks missing, ${open} open`
      : message`${missing} checks missing`;
  if (open > 0) return open === 1 ? message`${open} check open` : message`${open} checks open`;
  return bench.checks.size > 0 && !bench.checksUnread ? message`checks done` : null;
}
