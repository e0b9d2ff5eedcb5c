/** Small drawings for a hover: colours along a thickness, and the window that a mirror leaves the tilt. */
import type { HoverPicture } from '../../api/facade.ts';
import type { Say } from '../../say/say.ts';
import { message } from '../../words/message.ts';
import type { Context } from '../../workspace/context.ts';
import type { PlanSpot } from '../spot.ts';
import type { SaidShot } from './shot/view.ts';
import { saidShot, shotOfSubject } from './value.ts';

const WIDTH = 240;
const HEIGHT = 40;
/** Left and right of the scale, so that words under its ends are not cut. */
const MARGIN = 8;
const INK = '#222';
/** A ground of its own: the editor's may be dark, light or of high contrast. */
const GROUND = '#f4f4f4';
const OPEN = '#3a7d44';

/** The drawings of what is told at a spot. */
export function picturesAt(context: Context, spot: PlanSpot): readonly HoverPicture[] {
  const { file, entry, path } = spot.place;
  const key = path.at(-1);
  if (key === 'thickness' || path[0] === 'birefringence') {
    const shot = shotOfSubject(context, spot);
    return shot ? coloursOf(shot, key === 'thickness') : [];
  }
  if (path.length !== 1 || key !== 'tilt' || !context.analysis.isShot(entry)) return [];
  const shot = saidShot(context, file, entry);
  return shot ? windowOf(shot) : [];
}

function coloursOf({ figures, say }: SaidShot, ofFilm: boolean): readonly HoverPicture[] {
  const { filmColours, retardationColours } = figures;
  if (ofFilm && filmColours.known)
    return strip(
      filmColours.value.swatches.map(({ thicknessNm, hex }) => ({ nm: thicknessNm, hex })),
      message`Colours of the film, from thin to thick`,
      say,
    );
  if (!retardationColours.known) return [];
  return strip(
    retardationColours.value.swatches.map(({ retardationNm, hex }) => ({ nm: retardationNm, hex })),
    message`Colours between polarisers, by retardation`,
    say,
  );
}

interface Swatch {
  readonly nm: number;
  readonly hex: string;
}

function strip(swatches: readonly Swatch[], alt: string, say: Say): readonly HoverPicture[] {
  const [first] = swatches;
  const last = swatches.at(-1);
  if (!first || !last) return [];
  const wide = (WIDTH - 2 * MARGIN) / swatches.length;
  // Half a pixel more, or the ground shows between two of them.
  const bars = swatches.map(
    ({ hex }, at) =>
      `<rect x="${round(MARGIN + at * wide)}" y="4" width="${round(wide + 0.5)}" height="18" fill="${hex}"/>`,
  );
  const ends = [
    text(MARGIN, `${say.number(first.nm)} nm`, 'start'),
    ...(last.nm > first.nm ? [text(WIDTH - MARGIN, `${say.number(last.nm)} nm`, 'end')] : []),
  ];
  return [{ svg: svgOf([...bars, ...ends]), alt }];
}

/** The window as a bar on a scale from flat, and the tilt as a line across it. */
function windowOf({ figures, bench, say }: SaidShot): readonly HoverPicture[] {
  const { tiltWindow } = figures;
  if (!tiltWindow.known || !bench.tiltRad.known) return [];
  const { leastRad, greatestRad, openRad } = tiltWindow.value;
  const tilt = Math.abs(bench.tiltRad.value);
  const end = Math.max(leastRad, greatestRad, tilt) * 1.15;
  if (!(openRad > 0) || !Number.isFinite(end)) return [];
  const x = (rad: number): number => round(MARGIN + (rad / end) * (WIDTH - 2 * MARGIN));
  const [from, to] = say.angles2(leastRad, greatestRad);
  const [left, right] = [x(leastRad), x(greatestRad)];
  const parts = [
    `<rect x="${MARGIN}" y="12" width="${WIDTH - 2 * MARGIN}" height="4" fill="#999"/>`,
    `<rect x="${left}" y="8" width="${round(right - left)}" height="12" fill="${OPEN}"/>`,
    `<path d="M${x(tilt)} 3v22" stroke="${INK}" stroke-width="2"/>`,
    text((left + right) / 2, `${from} to ${to}`, anchorAt((left + right) / 2)),
  ];
  const alt = message`Tilt window ${from} to ${to}, tilt ${say.angle(bench.tiltRad.value)}`;
  return [{ svg: svgOf(parts), alt }];
}

/** Words in the middle of a scale may spread to both sides; near an end, to one. */
const anchorAt = (x: number): 'start' | 'middle' | 'end' =>
  x < WIDTH / 4 ? 'start' : x > (WIDTH * 3) / 4 ? 'end' : 'middle';

const text = (x: number, words: string, anchor: 'start' | 'middle' | 'end'): string =>
  `<text x="${round(x)}" y="35" text-anchor="${anchor}">${ascii(words)}</text>`;

/** Whatever is no ASCII as a reference: the address of the picture is made byte by byte. */
const ascii = (words: string): string =>
  words.replace(/[^\x20-\x7e]|[<&]/gu, (one) => `&#${one.codePointAt(0)};`);

const svgOf = (parts: readonly string[]): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="${WIDTH}" height="${HEIGHT}" font-family="sans-serif" font-size="11" fill="${INK}"><rect width="${WIDTH}" height="${HEIGHT}" fill="${GROUND}"/>${parts.join('')}</svg>`;

const round = (value: number): number => Math.round(value * 10) / 10;
