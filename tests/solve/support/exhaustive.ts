/**
 * Every aperture, shutter time and ISO in third stops, and the nearest tilts of the window, one
 * after the other, judged by the rules themselves; the exposure by arithmetic of its own. Written
 * apart from the search that it is held against, and without any of its shortcuts.
 */

import { type Bench, substitute } from '../../../shared/figures/bench.ts';
import { figuresOf } from '../../../shared/figures/compute.ts';
import { known } from '../../../shared/figures/figure.ts';
import type { Sec } from '../../../shared/quantity/brands.ts';
import { Analysis } from '../../../shared/workspace/analysis.ts';
import { findInShot } from '../../../shared/workspace/shot-findings.ts';
import { Store } from '../../../shared/workspace/store.ts';
import { entryId } from '../../support/entry-id.ts';
import { PLAN, ROOT } from '../../support/plans.ts';

/** Third stops as rings, dials and menus are marked; common practice, written down from memory. */
const STOPS = [
  1.8, 2, 2.2, 2.5, 2.8, 3.2, 3.5, 4, 4.5, 5, 5.6, 6.3, 7.1, 8, 9, 10, 11, 13, 14, 16, 18, 20, 22,
  25, 29, 32,
];
const SPEEDS = [
  10, 13, 15, 20, 25, 30, 40, 50, 60, 80, 100, 125, 160, 200, 250, 320, 400, 500, 640, 800, 1000,
  1250, 1600, 2000, 2500, 3200, 4000, 5000, 6400, 8000,
];
const ISOS = [
  100, 125, 160, 200, 250, 320, 400, 500, 640, 800, 1000, 1250, 1600, 2000, 2500, 3200, 4000, 5000,
  6400, 8000, 10000, 12800, 16000, 20000, 25600,
];

/** Rules that aperture, shutter, ISO, tilt and light have to do with. */
export const OF_SETTINGS: ReadonlySet<string> = new Set([
  'aperture-not-on-lens',
  'depth-short',
  'diffraction-eats-detail',
  'focus-drifts',
  'shutter-too-slow',
  'motion-blur',
  'lamp-flicker',
  'iso-out-of-range',
  'exposure-off',
  'lens-reflected',
  'source-too-small',
  'background-washes',
  'polariser-takes-the-colour',
  'no-room',
]);

/** Two thirds of a stop and a dead band of 0.04: what makes the exposure a warning. */
const SPOILT = 2 / 3 + 0.04;
const NOTICED = 1 / 3 + 0.04;

export interface Solved {
  readonly settings: number;
  readonly exposedRight: boolean;
  readonly moved: number;
}

export const isLess = (a: Solved, b: Solved): boolean =>
  a.settings !== b.settings
    ? a.settings < b.settings
    : a.exposedRight !== b.exposedRight
      ? a.exposedRight
      : a.moved < b.moved - 1e-6;

const stops = (a: number, b: number): number => Math.abs(Math.log2(a / b));

export function benchOf(text: string, shot: string) {
  const store = new Store();
  const analysis = new Analysis(store, { rootOf: () => ROOT });
  store.give(PLAN, text);
  return { bench: analysis.bench(PLAN, entryId(`shots/${shot}`)), analysis };
}

/** The least change that solves the shot; null: none of them all does. */
export function exhaustive(text: string, shot: string): Solved | null {
  const { bench, analysis } = benchOf(text, shot);
  if (!bench) throw new Error(`${shot} can't be read`);
  const allow = analysis.reader(PLAN).plan('allow');
  const now = figuresOf(bench);
  const { marked, iso } = bench;
  const { shutterSeconds } = now;
  if (!marked.known || !shutterSeconds.known || !iso.known) throw new Error('nothing to set');
  const present = { aperture: marked.value, shutter: shutterSeconds.value, iso: iso.value };
  const range = bench.apertureRange.known ? bench.apertureRange.value : { from: 0, to: 0 };
  const isos =
    present.iso === 'auto'
      ? ['auto' as const]
      : [present.iso, ...ISOS.filter((one) => one !== present.iso)];
  let best: Solved | null = null;
  for (const aperture of new Set([present.aperture, ...STOPS]))
    for (const tilt of tiltsAt(bench, aperture))
      for (const shutter of [present.shutter, ...SPEEDS.map((speed) => 1 / speed)]) {
        if (aperture !== present.aperture && (aperture < range.from || aperture > range.to))
          continue;
        const changed = substitute(bench, {
          marked: known(aperture),
          ...(tilt !== null && { tiltRad: known(tilt) }),
          ...(shutter !== present.shutter && {
            shutter: known({ kind: 'time' as const, seconds: shutter as Sec }),
          }),
          iso: known('auto' as const),
        });
        const figures = figuresOf(changed);
        const found = findInShot({ bench: changed, figures }, allow).findings;
        const loud = found.filter(
          ({ rule, severity }) =>
            OF_SETTINGS.has(rule) && (severity === 'error' || severity === 'warning'),
        );
        const ofIso = present.iso === 'auto' ? [] : ['iso-out-of-range', 'exposure-off'];
        if (loud.some(({ rule }) => !ofIso.includes(rule))) continue;
        for (const speed of isos) {
          let error = 0;
          if (speed !== 'auto') {
            if (!isHeld(bench, speed)) continue;
            error = figures.isoNeeded.known ? Math.log2(speed / figures.isoNeeded.value) : 0;
            if (Math.abs(error) > SPOILT) continue;
          }
          const tilted = tilt === null ? 0 : (Math.abs(tilt - tiltOf(bench)) * 180) / Math.PI;
          const moves = [
            2 * stops(aperture, present.aperture),
            stops(shutter, present.shutter),
            speed === 'auto' || present.iso === 'auto' ? 0 : stops(speed, present.iso),
            tilted,
          ];
          const one = {
            settings: moves.filter((moved) => moved > 0).length,
            exposedRight: Math.abs(error) <= NOTICED,
            moved: moves.reduce((sum, moved) => sum + moved, 0),
          };
          if (!best || isLess(one, best)) best = one;
        }
      }
  return best;
}

const tiltOf = ({ tiltRad }: Bench): number => (tiltRad.known ? tiltRad.value : 0);

/** An ISO that the body has, and holds clean. */
function isHeld({ isoLimits: { lowest, highest, cleanTo } }: Bench, iso: number): boolean {
  if (lowest.known && iso < lowest.value * 0.97) return false;
  const most = Math.min(
    highest.known ? highest.value : Number.POSITIVE_INFINITY,
    cleanTo.known ? cleanTo.value : Number.POSITIVE_INFINITY,
  );
  return iso <= most * 1.03;
}

/** As it is (null), and the tilts in tenths of a degree at both ends of the window there. */
function tiltsAt(bench: Bench, aperture: number): readonly (number | null)[] {
  const figures = figuresOf(substitute(bench, { marked: known(aperture) }));
  const { leastTiltRad: least, greatestTiltByDepthRad: greatest, litTiltsRad: lit } = figures;
  if (!least.known || !greatest.known) return [null];
  const isLit = lit.known && lit.value.greatestRad > lit.value.leastRad;
  const from = Math.max(least.value, isLit ? lit.value.leastRad : 0);
  const to = Math.min(greatest.value, isLit ? lit.value.greatestRad : 1, Math.PI / 4);
  const first = (Math.ceil((from * 1800) / Math.PI) * Math.PI) / 1800;
  const last = (Math.floor((to * 1800) / Math.PI) * Math.PI) / 1800;
  const side = tiltOf(bench) < 0 ? -1 : 1;
  return [
    null,
    ...[first, last].filter((one) => one >= from && one <= to).map((one) => side * one),
  ];
}
