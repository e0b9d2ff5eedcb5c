import { type Bench, substitute } from '../figures/bench.ts';
import { figuresOf } from '../figures/compute.ts';
import { known } from '../figures/figure.ts';
import type { MirrorWindow, ShotFigures } from '../figures/shot-figures.ts';
import { depthForTiltMm, fieldForTiltMm, workingDistanceForTiltMm } from '../mirror/tilt-window.ts';
import type { PlanEdit, PlanFix } from '../plan/problem.ts';
import { anyOf } from '../words/listed.ts';
import { message } from '../words/message.ts';
import { relatedTo, type ShotRule, type ShotView, setTo } from './shot-rule.ts';

/** What the least tilt is good to; a hand and a level set an angle no better. */
const DEAD_BAND_RAD = (0.1 * Math.PI) / 180;

interface Facts {
  readonly tiltRad: number;
  readonly leastRad: number;
  /** null: not named. */
  readonly subject: string | null;
  readonly workingDistanceMm: number;
  /** The window is shut: how far from open, what shuts it, and what would open it. */
  readonly shut: {
    readonly byRad: number;
    readonly greatestRad: number;
    readonly by: 'depth' | 'light';
    /** Working distance from which the greatest tilt would do, mm; null: none. */
    readonly distanceMm: number | null;
    /** Frame along the tilt in which it would do, mm. */
    readonly fieldAlongMm: number;
    /** Widest mark on the lens that holds the depth at the least tilt; null: none, or not that. */
    readonly mark: number | null;
  } | null;
}

export const lensReflected: ShotRule<Facts> = {
  name: 'lens-reflected',
  severity: 'warning',
  docs: {
    when: 'a flat mirror-like subject is tilted less than it takes to stop showing the lens, or no tilt is both enough for that and little enough for depth and light.',
    why: 'A mirror that faces the lens shows it. The least tilt is the smallest at which no visible point throws any part of the entrance pupil back into the front rim; doubling the working distance halves it, and every degree costs depth. Common practice: a long lens on tubes stands far off, keeps the film nearly parallel and so saves depth.',
    remedy:
      'Tilt as far as it takes and no further; stop down, stand further off, frame tighter, or put a smaller black card round the lens.',
    bad: [{ says: 'nearly facing the lens', change: { 'shots/skin/tilt': '2 deg' } }],
    good: [{ says: 'tilted enough', change: { 'shots/skin/tilt': '4 deg' } }],
  },
  check({ bench, figures }) {
    const { leastTiltRad, mirrorView } = figures;
    const { tiltRad } = bench;
    if (!leastTiltRad.known || !tiltRad.known || !mirrorView.known) return [];
    const tilt = Math.abs(tiltRad.value);
    const least = leastTiltRad.value;
    const window = shutWindow(figures);
    if (tilt >= least - DEAD_BAND_RAD && !window) return [];
    const at = bench.fields.tilt.at;
    return [
      {
        at,
        facts: {
          tiltRad: tilt,
          leastRad: least,
          subject: bench.subject?.name ?? null,
          workingDistanceMm: mirrorView.value.workingDistanceMm,
          shut: window ? shutBy({ bench, figures }, window) : null,
        },
        related: relatedTo(at, leastTiltRad),
      },
    ];
  },
  words({ tiltRad, leastRad, subject, workingDistanceMm, shut }, say) {
    const [tilted, takes] = say.angles2(tiltRad, leastRad);
    if (shut === null)
      return {
        what: message`The lens shows in ${subject ?? message`the subject`}: tilted ${tilted}, it takes ${takes}.`,
        why: message`From ${say.length(workingDistanceMm)} away, pupil and rim counted.`,
      };
    const [least, greatest] = say.angles2(leastRad, shut.greatestRad);
    const opened = [
      ...(shut.mark === null ? [] : [say.fNumber(shut.mark)]),
      ...(shut.distanceMm === null
        ? []
        : [message`${say.length(shut.distanceMm)} of working distance`]),
      ...(shut.fieldAlongMm > 0
        ? [message`a frame of ${say.length(shut.fieldAlongMm)} along the tilt`]
        : []),
    ];
    return {
      what:
        shut.by === 'depth'
          ? message`No tilt hides the lens and holds the depth: least ${least}, greatest ${greatest}.`
          : message`No tilt hides the lens and holds the light: least ${least}, greatest ${greatest}.`,
      why:
        message`The window is ${say.angle(shut.byRad)} from open at ${say.length(workingDistanceMm)}.` +
        (opened.length > 0 ? message` ${anyOf(opened)} would open it.` : ''),
    };
  },
  size: ({ tiltRad, leastRad, shut }) => ({
    kind: 'angle',
    value: Math.max(leastRad - tiltRad, shut?.byRad ?? 0),
  }),
  numbers: ({ tiltRad, leastRad, workingDistanceMm, shut }) => ({
    tiltDeg: degrees(tiltRad),
    leastTiltDeg: degrees(leastRad),
    workingDistanceMm,
    ...(shut && { shutByDeg: degrees(shut.byRad) }),
  }),
  fixes({ at, facts: { leastRad, shut } }, view) {
    if (shut) return shut.mark === null ? [] : stopDownAndTilt(view, shut.mark);
    const tilt = Math.ceil(degrees(leastRad) * 10) / 10;
    const needs = depthAt(view, (tilt * Math.PI) / 180);
    return [setTo(message`Tilt ${tilt}°${needs}`, at, `${tilt} deg`)];
  },
};

/**
 * The window, where it is shut. A light that fills the frame as it stands shuts nothing, so where
 * it would have to stand is only worked out where it doesn't.
 */
function shutWindow(figures: ShotFigures): MirrorWindow | undefined {
  const { leastTiltRad, greatestTiltByDepthRad: depth, darkFrame } = figures;
  if (!leastTiltRad.known || !depth.known) return undefined;
  const depthShuts = isShutByDepth(leastTiltRad.value, depth.value);
  if (!depthShuts && !(darkFrame.known && darkFrame.value.share > 0)) return undefined;
  const { tiltWindow } = figures;
  return tiltWindow.known && tiltWindow.value.openRad < -DEAD_BAND_RAD
    ? tiltWindow.value
    : undefined;
}

/** Whether no tilt is enough for the mirror and little enough for the depth, whatever the light does. */
export const isShutByDepth = (leastRad: number, greatestByDepthRad: number): boolean =>
  greatestByDepthRad < leastRad - DEAD_BAND_RAD;

const degrees = (radians: number): number => (radians * 180) / Math.PI;

/** The mirror's window at another mark, where it is open there. */
function windowAt(bench: Bench, mark: number): MirrorWindow | undefined {
  const figures = figuresOf(substitute(bench, { marked: known(mark) }));
  const { leastTiltRad: least, greatestTiltByDepthRad: depth } = figures;
  // Where the depth shuts it nothing has to be traced to the light.
  if (!least.known || !depth.known || depth.value <= least.value) return undefined;
  const { tiltWindow } = figures;
  return tiltWindow.known && tiltWindow.value.openRad > 0 ? tiltWindow.value : undefined;
}

function openingMark({ bench }: ShotView): number | null {
  const { marked } = bench;
  if (!marked.known) return null;
  const narrower = bench.marksOnLens.filter((mark) => mark > marked.value);
  return narrower.find((mark) => windowAt(bench, mark) !== undefined) ?? null;
}

function stopDownAndTilt({ bench }: ShotView, mark: number): readonly PlanFix[] {
  const window = windowAt(bench, mark);
  const { tiltRad, fields } = bench;
  if (!window || !tiltRad.known) return [];
  const aperture: PlanEdit = { op: 'set', at: fields.aperture.at, text: `f/${mark}` };
  const now = Math.abs(tiltRad.value);
  if (now >= window.leastRad && now <= window.greatestRad)
    return [{ title: message`Stop down to f/${mark}`, edits: [aperture] }];
  const tilt = Math.ceil(degrees(window.leastRad) * 10) / 10;
  const tilted: PlanEdit = { op: 'set', at: fields.tilt.at, text: `${tilt} deg` };
  return [{ title: message`Stop down to f/${mark} and tilt ${tilt}°`, edits: [aperture, tilted] }];
}

function shutBy(view: ShotView, window: MirrorWindow): Facts['shut'] {
  const { figures } = view;
  const { greatestTiltByDepthRad, mirrorView } = figures;
  const { openRad, greatestRad } = window;
  const byDepth =
    greatestTiltByDepthRad.known && greatestTiltByDepthRad.value <= greatestRad + 1e-9;
  const seen = mirrorView.known ? mirrorView.value : undefined;
  const reachable = seen !== undefined && greatestRad > 0;
  return {
    byRad: -openRad,
    greatestRad,
    by: byDepth ? 'depth' : 'light',
    distanceMm: reachable ? workingDistanceForTiltMm(seen, greatestRad) : null,
    fieldAlongMm: reachable ? fieldForTiltMm(seen, greatestRad) : 0,
    mark: byDepth ? openingMark(view) : null,
  };
}

/** " (needs 1.2 mm of depth, there is 1.5)", where both are known. */
function depthAt({ bench, figures }: ShotView, tiltRad: number): string {
  const { mirrorView, depthMm } = figures;
  if (!mirrorView.known || !depthMm.total.known || !Number.isFinite(depthMm.total.value)) return '';
  const { fieldAlongMm, bowMm = 0 } = mirrorView.value;
  const size = bench.subject?.fields.size;
  const extent =
    size?.state === 'known'
      ? bench.tiltAxis === 'level'
        ? size.value.height
        : size.value.width
      : fieldAlongMm * 100;
  const needed = depthForTiltMm({ fieldAlongMm, subjectAlongMm: extent, bowMm }, tiltRad);
  const short = (mm: number) => Number(mm.toPrecision(2));
  return message` (needs ${short(needed)} mm of depth, there is ${short(depthMm.total.value)})`;
}
