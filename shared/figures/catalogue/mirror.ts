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
    only: 'mirror',
  }),
  leastTiltDeg: figureIn(
    'leastTiltRad',
    degrees,
  )({
    label: later`minimum tilt`,
    is: number('degrees'),
    only: 'flatMirror',
    rules: ['lens-reflected'],
    review: { place: 130 },
  }),
  tiltWindowDeg: figureIn('tiltWindow', ({ leastRad, greatestRad }): readonly [number, number] => [
    degrees(leastRad),
    degrees(greatestRad),
  ])({
    label: later`tilt window`,
    is: range('degrees', shutWindow),
    only: 'flatMirror',
    rules: ['lens-reflected'],
    review: { place: 140 },
  }),
  tiltWindowOpenDeg: figureIn('tiltWindow', ({ openRad }) => degrees(openRad))({
    label: later`tilt window, width`,
    is: number('degrees'),
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
    only: 'flatMirror',
  }),
  lightClearanceMm: figureIn(
    'lightInTheWay',
    ({ clearanceMm }) => clearanceMm,
  )({
    label: later`light to lens`,
    is: number('length'),
    rules: ['no-room'],
  }),
  hiddenShare: figureIn(
    'lightInTheWay',
    ({ hiddenShare }) => hiddenShare,
  )({
    label: later`hidden by a light`,
    is: number('share'),
    rules: ['no-room'],
  }),
  blackShare: figureIn(
    'shade',
    ({ blackShare }) => blackShare,
  )({
    label: later`black part of frame`,
    is: number('share'),
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
    only: 'flatMirror',
  }),
  blackSide: figureIn(
    'darkFrame',
    ({ side }) => side,
  )({
    label: later`black side of frame`,
    is: WORD,
    only: 'flatMirror',
  }),
  strayRatio: figure('strayRatio', {
    label: later`background against film`,
    is: number('ratio'),
    only: 'mirror',
    rules: ['background-washes'],
    review: { place: 160 },
  }),
  focusBehindNearestMm: figure('focusBehindNearestMm', {
    label: later`focus beyond nearest point`,
    is: number('length'),
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
    only: 'bubble',
    isLong: true,
  }),
};
