/**
 * A line over each shot with its state in a few words. Where it stands follows from the text
 * alone, so that a plan of any length is answered at once; the words are worked out for the
 * shots that are shown.
 */

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

/** The state of a shot; null: there is no such shot. */
export function lensWords({ analysis, say }: Context, file: FileId, shot: string): string | null {
  const id: EntryId = idOf('shots', shot);
  if (!analysis.shots(file).includes(id)) return null;
  const bench = analysis.bench(file, id);
  const figures = analysis.figures(file, id);
  if (!bench || !figures) return message`has errors in its text`;
  const uncertain = analysis.uncertain(file, id);
  if (!uncertain) return null;
  const said = { bench, figures, say, sure: new Sure(uncertain, say) };
  const takes = takeWords(analysis, file, shot);
  return [...pictureWords(said), checkWords(bench), takes]
    .filter((words) => words !== null)
    .join(' · ');
}

/** A field that the rig can't set leaves nothing to say about what it would look like. */
function pictureWords(shot: SaidShot): readonly (string | null)[] {
  const { bench, figures, say } = shot;
  if (isOutOfReach(bench, figures)) return [message`field out of reach`];
  const parts: readonly (readonly [string, Part])[] = [
    [message`DOF`, depthWords(shot)],
    [message`exposure`, lightWords(shot)],
    [message`reflections`, mirrorWords(figures, say)],
  ];
  const missing = parts.flatMap(([name, words]) => (words === undefined ? [name] : []));
  return [
    ...parts.flatMap(([, words]) => (words === undefined ? [] : [words])),
    missing.length > 0 ? message`${allOf(missing)} unknown` : null,
  ];
}

/** Words, nothing to say (null), or not known (undefined). */
type Part = string | null | undefined;

function depthWords({ figures, say, sure }: SaidShot): Part {
  const { usableDepthMm: depth, depthMm, stackFrames: frames } = figures;
  const { needed } = depthMm;
  if (!depth.known) return undefined;
  const bounds = sure.behind(
    message`depth of field`,
    (of) => of.usableDepthMm,
    (mm) => say.length(mm),
  );
  if (frames.known) return message`DOF ${say.length(depth.value)}${bounds}, ${frames.value} frames`;
  if (!needed.known) return message`DOF ${say.length(depth.value)}${bounds}, need unknown`;
  if (needed.value === 0) return message`DOF ${say.length(depth.value)}${bounds}`;
  const [there, wanted] = depthPair(depth.value, needed.value, say);
  return bounds === ''
    ? message`DOF ${there} (needs ${wanted})`
    : message`DOF ${there}${bounds}, needs ${wanted}`;
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
    return `${needsIso(isoNeeded.value, isoRangeOf(bench), say)}${bounds}`;
  }
  if (!error.known) return undefined;
  return `${exposureWords(error.value, say)}${sure.exposure(message`exposure`)}`;
}

/** The tilts at which the lens is not reflected; nothing where the subject is not a flat mirror. */
function mirrorWords({ leastTiltRad: least, tiltWindow: window }: ShotFigures, say: Say): Part {
  if (without(least)) return null;
  if (!least.known) return undefined;
  if (!window.known) return message`no lens reflection above ${say.angle(least.value)}`;
  const { leastRad, greatestRad, openRad } = window.value;
  if (openRad < 0) return message`lens reflected at every tilt`;
  const [from, to] = say.angles2(leastRad, greatestRad);
  return message`no lens reflection at ${from.replace('°', '')}–${to}`;
}

const without = (figure: Figure<unknown>): boolean => !figure.known && figure.applies === false;

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
