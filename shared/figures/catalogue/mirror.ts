/** What a mirror-like subject shows: the lens, the lights, or neither. */
import { later, message } from '../../words/message.ts';
import type { BubbleImage } from '../shot-figures.ts';
import { figure, figureIn } from './declaration.ts';
import { list, number, part, range, record, WORD } from './shape.ts';

const degrees = (radians: number): number => (radians * 180) / Math.PI;

interface NeededLightJson {
  readonly upDeg: number;
  readonly acrossDeg: number;
  readonly widthMm: number;
  readonly heightMm: number;
}

/** Said of the window itself where it is shut. */
const shutWindow = (least: string, most: string): string =>
  message`none: the lens needs at least ${least}, the depth of field allows at most ${most}`;

export const MIRROR = {
  reflectance: figure('reflectance', {
    label: later`reflectance`,
    is: number('fraction'),
    about:
      'R, the share of the first light that a mirror-like subject reflects; for a film the mean over its `thickness`, or over every thickness if none is given',
    only: 'mirror',
  }),
  leastTiltDeg: figureIn(
    'leastTiltRad',
    degrees,
  )({
    label: later`minimum tilt`,
    is: number('degrees'),
    about: 'tilt at which a flat mirror no longer reflects the lens',
    only: 'flatMirror',
    rules: ['lens-reflected'],
    review: { place: 130, label: later`minimum tilt` },
  }),
  tiltWindowDeg: figureIn('tiltWindow', ({ leastRad, greatestRad }): readonly [number, number] => [
    degrees(leastRad),
    degrees(greatestRad),
  ])({
    label: later`tilt window`,
    is: range('degrees', shutWindow),
    about: '[from, to]: the reflection of the lens sets the lower end, depth and light the upper',
    only: 'flatMirror',
    rules: ['lens-reflected'],
    review: { place: 140, label: later`tilt window` },
  }),
  tiltWindowOpenDeg: figureIn('tiltWindow', ({ openRad }) => degrees(openRad))({
    label: later`tilt window, width`,
    is: number('degrees'),
    about: 'width of that window; negative: by how much it is closed',
    only: 'flatMirror',
  }),
  neededLight: figureIn(
    'neededLight',
    ({ upRad, acrossRad, widthMm, heightMm }): NeededLightJson => ({
      upDeg: degrees(upRad),
      acrossDeg: degrees(acrossRad),
      widthMm,
      heightMm,
    }),
  )({
    label: later`needed light`,
    is: record<NeededLightJson>({
      upDeg: part(later`up`, number('degrees')),
      acrossDeg: part(later`across`, number('degrees')),
      widthMm: part(later`width`, number('length')),
      heightMm: part(later`height`, number('length')),
    }),
    about: 'position and size that the light needs: `upDeg`, `acrossDeg`, `widthMm`, `heightMm`',
    only: 'flatMirror',
  }),
  lightClearanceMm: figureIn(
    'lightInTheWay',
    ({ clearanceMm }) => clearanceMm,
  )({
    label: later`light to lens`,
    is: number('length'),
    about: 'smallest distance between a light and the lens; 0 or less: they touch',
    rules: ['no-room'],
  }),
  hiddenShare: figureIn(
    'lightInTheWay',
    ({ hiddenShare }) => hiddenShare,
  )({
    label: later`hidden by a light`,
    is: number('share'),
    about: 'share of the frame that a light hides',
    rules: ['no-room'],
  }),
  blackShare: figureIn(
    'shade',
    ({ blackShare }) => blackShare,
  )({
    label: later`black part of frame`,
    is: number('share'),
    about: 'share of the frame in which no point of the entrance pupil sees a light reflected',
    only: 'flatMirror',
    rules: ['source-too-small'],
    review: { place: 150, label: later`black part of the frame` },
  }),
  dimShare: figureIn(
    'shade',
    ({ dimShare }) => dimShare,
  )({
    label: later`dimmed part of frame`,
    is: number('share'),
    about: 'share of the frame in which only part of the entrance pupil sees a light reflected',
    only: 'flatMirror',
  }),
  blackSide: figureIn(
    'darkFrame',
    ({ side }) => side,
  )({
    label: later`black side of frame`,
    is: WORD,
    about: 'on which side of the frame that is',
    only: 'flatMirror',
  }),
  strayRatio: figure('strayRatio', {
    label: later`background against film`,
    is: number('ratio'),
    about: 'light from behind a film, over the light that it reflects',
    only: 'mirror',
    rules: ['background-washes'],
    review: { place: 160, label: later`background against film` },
  }),
  focusBehindNearestMm: figure('focusBehindNearestMm', {
    label: later`focus beyond nearest point`,
    is: number('length'),
    about: "from a bubble's nearest point to the best plane of focus",
    only: 'bubble',
  }),
  bubbleImages: figure('bubbleImages', {
    label: later`bubble images`,
    is: list<BubbleImage>(
      record<BubbleImage>({
        of: part(null, WORD),
        wall: part(null, WORD),
        xPx: part(later`x`, number('pixels')),
        yPx: part(later`y`, number('pixels')),
        widthPx: part(later`width`, number('pixels')),
        heightPx: part(later`height`, number('pixels')),
        blurPx: part(later`blur`, number('pixels')),
      }),
    ),
    about:
      "outline and lights as a bubble reflects them: `of`, `wall` (front or rear), `xPx` and `yPx` from the frame's middle, `widthPx`, `heightPx`, `blurPx`",
    only: 'bubble',
    isLong: true,
  }),
};
