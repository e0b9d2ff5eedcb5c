/** The brightness of a mirror-like subject: it shows the light's own face, at any distance. */
import { evOfLuminance } from '../exposure/ev.ts';
import { mirrorLuminance, strayRatio } from '../mirror/exposure.ts';
import { message } from '../words/message.ts';
import type { Bench, LightInUse } from './bench.ts';
import { derive, type Figure, figureOf, notKnown, unknownOf } from './figure.ts';
import { diffuseEv, isShotsOwn, readThrough } from './light-reading.ts';
import { atItsBrightest, luminanceOf } from './light-source.ts';
import { mirrorKind, reflectanceOf } from './mirror-kind.ts';
import { isNo } from './not-applicable.ts';

/**
 * EV of the light as the mirror shows it, before it is dimmed: R·L. Only where the light's own
 * luminance can be had; a reading of the subject through a lens holds as it is.
 *
 * @param read EV of the light on a diffuse subject, where it was read on one
 */
export function shownEv(light: LightInUse, bench: Bench, read: Figure<number>): Figure<number> {
  return derive(
    [reflectanceOf(bench, light), luminanceOf(atItsBrightest(light), bench, read)],
    (share, luminance) =>
      evOfLuminance(mirrorLuminance(share, luminance), bench.constants.reflected),
  );
}

/**
 * Whether the subject shows this light as a mirror by what is known of the light, instead of being
 * lit by it or read itself: through its rig, or through the bare lens for the shot.
 */
export function showsLight(light: LightInUse, bench: Bench): boolean {
  if (mirrorKind(bench) === undefined) return false;
  const through = readThrough(light);
  return through !== 'this-rig' && (through !== 'bare-lens' || !isShotsOwn(light, bench));
}

/**
 * What a light's brightness is taken from where several are given: what is nearest to what the
 * subject does with it. A mirror shows the face's luminance, another subject is lit as it was read.
 */
export function goesBy(
  light: LightInUse,
  bench: Bench,
): 'luminance' | 'illuminance' | 'reading' | undefined {
  const ways = ['reading', 'illuminance', 'luminance'] as const;
  const isGiven = (way: (typeof ways)[number]) => light.fields[way].state !== 'missing';
  return showsLight(light, bench) ? ways.findLast(isGiven) : ways.find(isGiven);
}

/** L_background/(R·L), of the light whose reflection in the film is brightest. */
export function strayRatioOf(bench: Bench): Figure<number> {
  const { fields, subject, lights } = bench;
  if (mirrorKind(bench) === undefined || !subject) return isNo('mirror');
  const background =
    fields['background-luminance'].state === 'missing'
      ? figureOf(subject.fields['background-luminance'], subject.name)
      : figureOf(fields['background-luminance'], bench.shot);
  if (!lights.known) return lights;
  const each = lights.value.map((light) =>
    derive(
      [background, reflectanceOf(bench, light), luminanceOf(light, bench, diffuseEv(light, bench))],
      strayRatio,
    ),
  );
  if (each.length === 0) return notKnown(message`the shot has no light`);
  if (each.some((figure) => !figure.known)) return unknownOf(each);
  return derive(each, (...all) => Math.min(...all));
}
