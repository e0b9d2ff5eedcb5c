/** The lights of a shot as the subject shows them, is lit by them or lets them through. */

import type { Bench, LightInUse } from '../figures/bench.ts';
import { type Figure, known, reasonOf } from '../figures/figure.ts';
import { sourceOf, weightOn } from '../figures/light-source.ts';
import { isGloss, mirrorKind } from '../figures/mirror-kind.ts';
import type { ShotFigures } from '../figures/shot-figures.ts';
import { DARK_FIELD, filledBy, passedShare, shinesThrough } from '../figures/through.ts';
import { type Source, sourceOutline } from '../mirror/source.ts';
import { message } from '../words/message.ts';
import { behindBy } from './backlit.ts';
import { type Balance, kelvinOf } from './balance.ts';
import type { Placed } from './camera.ts';
import { levelBy, MID_GREY } from './level.ts';
import { highlightOf, shownBy, times } from './mirrored.ts';
import type { LightBehind, LitBy, ShownLight } from './scene.ts';

/** Round lights are drawn with so many sides where they light a matt subject. */
const SIDES = 24;

interface Lights {
  readonly shown: ShownLight[];
  readonly lit: LitBy[];
  readonly behind: LightBehind[];
  /** What isn't drawn, in whole sentences. */
  readonly missing: string[];
}

interface Set {
  readonly bench: Bench;
  readonly figures: ShotFigures;
  readonly placed: Placed;
  readonly balance: Balance;
}

export function lightsOf(
  bench: Bench,
  figures: ShotFigures,
  placed: Placed,
  balance: Balance,
): Lights {
  const found: Lights = { shown: [], lit: [], behind: [], missing: [] };
  const set: Set = { bench, figures, placed, balance };
  const { missing } = found;
  const lights = bench.lights.known ? bench.lights.value : [];
  if (lights.length === 0) missing.push(message`The shot has no light that can be drawn.`);
  const levels = lights.map((light) => levelBy(light, bench, figures));
  const isUnlit = lights.map((light, i) => !levels[i]!.known && isStopped(light, set));
  const drawn = lights.filter((_, i) => !isUnlit[i]);
  const isUnknown = drawn.length > 0 && levels.every((level) => !level.known);
  if (isUnknown)
    missing.push(
      withReason(
        message`The exposure is unknown, so it is drawn as if it were right`,
        levels[isUnlit.indexOf(false)]!,
      ),
    );
  lights.forEach((light, i) => {
    const level = isUnknown && !isUnlit[i] ? known(MID_GREY) : levels[i]!;
    if (!level.known) {
      missing.push(withReason(message`${light.name} is not drawn`, level));
      return;
    }
    if (kelvinOf(light) === undefined)
      missing.push(
        message`${light.name} is drawn white, since its \`colour-temperature\` is not known.`,
      );
    add(light, level.value, set, found);
  });
  return found;
}

/**
 * Whether none of a light behind gets into the lens straight. In a dark field nothing but a reading says
 * what the subject scatters: it isn't made up.
 */
function isStopped(light: LightInUse, set: Set): boolean {
  if (!shinesThrough(light, set.bench)) return false;
  const passed = passedShare(light, set.bench);
  return (passed.known && passed.value === 0) || isDarkField(light, set);
}

/** Whether the light stands behind a clear subject and shines past the frame. */
function isDarkField(light: LightInUse, { bench, figures }: Set): boolean {
  if (!shinesThrough(light, bench)) return false;
  const filled = filledBy(light, bench, figures);
  return filled.known && filled.value < DARK_FIELD;
}

function add(light: LightInUse, level: number, set: Set, found: Lights): void {
  const { bench, balance } = set;
  const source = sourceOf(light);
  if (mirrorKind(bench) !== undefined) {
    if (source.known)
      found.shown.push(shownBy(light, source.value, level, bench, set.placed, balance));
    else found.missing.push(withReason(message`${light.name} is not drawn`, source));
    return;
  }
  if (!shinesThrough(light, bench)) {
    addLit(light, level, source, set, found);
    return;
  }
  if (isDarkField(light, set)) {
    const colour = times(balance.whiteOf(light), level);
    found.lit.push({ name: light.name, colour, outline: undefined });
    return;
  }
  const behind = behindBy(light, level, bench, balance);
  if (behind.known) found.behind.push(behind.value);
  else found.missing.push(withReason(message`${light.name} is not drawn`, behind));
}

function addLit(
  light: LightInUse,
  level: number,
  source: Figure<Source>,
  { bench, figures, balance }: Set,
  { lit, shown, missing }: Lights,
): void {
  if (!source.known)
    missing.push(withReason(message`The light of ${light.name} is drawn even`, source));
  if (source.known && shinesOnBack(source.value, bench)) {
    missing.push(message`${light.name} shines on the back of the subject.`);
    return;
  }
  lit.push({
    name: light.name,
    colour: times(balance.whiteOf(light), level),
    outline: source.known ? sourceOutline(source.value, SIDES) : undefined,
  });
  if (!isGloss(bench)) return;
  const highlight = highlightOf(light, source, bench, figures, balance);
  if (highlight.known) shown.push(highlight.value);
  else missing.push(withReason(message`The reflection of ${light.name} is not drawn`, highlight));
}

const shinesOnBack = (source: Source, { tiltRad, tiltAxis }: Bench): boolean =>
  weightOn(source, tiltRad.known ? tiltRad.value : 0, tiltAxis) === 0;

/** A sentence, with what is missing for it where that is known. */
export function withReason(what: string, figure: Figure<unknown>): string {
  const reason = figure.known ? null : reasonOf(figure);
  return reason === null ? message`${what}.` : message`${what}: ${reason}.`;
}
