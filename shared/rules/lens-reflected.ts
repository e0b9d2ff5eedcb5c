import { type Bench, substitute } from '../figures/bench.ts';
import { figuresOf } from '../figures/compute.ts';
import { known } from '../figures/figure.ts';
import { reliefMm } from '../figures/needed-depth.ts';
import type { MirrorWindow, ShotFigures } from '../figures/shot-figures.ts';
import { depthForTiltMm, fieldForTiltMm, workingDistanceForTiltMm } from '../mirror/tilt-window.ts';
import { setTo } from '../plan/fixes.ts';
import type { PlanEdit, PlanFix } from '../plan/problem.ts';
import { anyOf } from '../words/listed.ts';
import { message } from '../words/message.ts';
import { relatedTo, type ShotRule, type ShotView } from './shot-rule.ts';
import { softerPrice } from './softer.ts';

/** Accuracy of the minimum tilt; a hand and a level set an angle no better. */
const DEAD_BAND_RAD = (0.1 * Math.PI) / 180;

interface Facts {
  readonly tiltRad: number;
  readonly leastRad: number;
  /** null: not named. */
  readonly subject: string | null;
  readonly workingDistanceMm: number;
  /** The closed window: by how much, what closes it, and what would open it. */
  readonly shut: {
    readonly byRad: number;
    readonly greatestRad: number;
    readonly by: 'depth' | 'light';
    /** Working distance at which the maximum tilt would be enough, mm; null: none. */
    readonly distanceMm: number | null;
    /** Field along the tilt at which it would be enough, mm. */
    readonly fieldAlongMm: number;
    /**
     * Widest mark on the lens that gives the depth at the minimum tilt; null: none, or depth is
     * not the reason.
     */
    readonly mark: number | null;
  } | null;
}

export const lensReflected: ShotRule<Facts> = {
  name: 'lens-reflected',
  severity: 'warning',
  docs: {
    when: 'a flat mirror-like subject is tilted too little to hide the lens, or no tilt works. A tilt that hides the lens may be more than depth of field or light allow.',
    why: 'A mirror that faces the lens reflects it. The minimum tilt is the smallest at which no visible point reflects any of the front of the lens into the entrance pupil. Doubling the working distance halves the minimum tilt, and every degree uses up depth of field. A long lens on tubes works from farther away, so the film stays nearly parallel.',
    remedy:
      'Tilt just enough to hide the lens. Or stop down, work from farther away, frame tighter, or fit a smaller black card around the lens.',
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
        related: () => relatedTo(at, leastTiltRad),
      },
    ];
  },
  words({ tiltRad, leastRad, subject, workingDistanceMm, shut }, say) {
    const [tilted, takes] = say.angles2(tiltRad, leastRad);
    if (shut === null)
      return {
        what: message`The lens is reflected in ${subject ?? message`the subject`}: it is tilted ${tilted} and needs at least ${takes}.`,
        why: message`Calculated from ${say.length(workingDistanceMm)} working distance, the entrance pupil and the front diameter.`,
      };
    const [least, greatest] = say.angles2(leastRad, shut.greatestRad);
    const opened = [
      ...(shut.mark === null ? [] : [say.fNumber(shut.mark)]),
      ...(shut.distanceMm === null
        ? []
        : [message`a working distance of ${say.length(shut.distanceMm)}`]),
      ...(shut.fieldAlongMm > 0
        ? [message`a field of ${say.length(shut.fieldAlongMm)} along the tilt`]
        : []),
    ];
    return {
      what:
        shut.by === 'depth'
          ? message`No tilt works: hiding the lens needs ${least}, depth of field allows only ${greatest}.`
          : message`No tilt works: hiding the lens needs ${least}, the light allows only ${greatest}.`,
      why:
        message`Short by ${say.angle(shut.byRad)} at ${say.length(workingDistanceMm)} working distance.` +
        (opened.length > 0 ? message` To solve it, use ${anyOf(opened)}.` : ''),
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
 * The window, if it is closed. A light that fills the frame at its present position closes
 * nothing, so its best position is calculated only if it doesn't fill the frame.
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

/** Whether no tilt hides the lens and stays within the depth, regardless of the light. */
export const isShutByDepth = (leastRad: number, greatestByDepthRad: number): boolean =>
  greatestByDepthRad < leastRad - DEAD_BAND_RAD;

const degrees = (radians: number): number => (radians * 180) / Math.PI;

/** The window at another mark, if it is open there. */
function windowAt(bench: Bench, mark: number): MirrorWindow | undefined {
  const figures = figuresOf(substitute(bench, { marked: known(mark) }));
  const { leastTiltRad: least, greatestTiltByDepthRad: depth } = figures;
  // If the depth closes the window, no ray has to be traced to the light.
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
  const price = softerPrice(figuresOf(substitute(bench, { marked: known(mark) })));
  const softer = price === undefined ? {} : { sideEffects: price };
  const now = Math.abs(tiltRad.value);
  if (now >= window.leastRad && now <= window.greatestRad)
    return [{ title: message`Stop down to f/${mark}`, edits: [aperture], ...softer }];
  const tilt = Math.ceil(degrees(window.leastRad) * 10) / 10;
  const tilted: PlanEdit = { op: 'set', at: fields.tilt.at, text: `${tilt} deg` };
  return [
    {
      title: message`Stop down to f/${mark} and tilt ${tilt}°`,
      edits: [aperture, tilted],
      ...softer,
    },
  ];
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

/** " (uses 1.2 of the 1.5 mm depth of field)", where both are known. */
function depthAt({ bench, figures }: ShotView, tiltRad: number): string {
  const { mirrorView, usableDepthMm: usable } = figures;
  if (!mirrorView.known || !usable.known || !Number.isFinite(usable.value)) return '';
  const { fieldAlongMm, bowMm = 0 } = mirrorView.value;
  const size = bench.subject?.fields.size;
  const extent =
    size?.state === 'known'
      ? bench.tiltAxis === 'level'
        ? size.value.height
        : size.value.width
      : fieldAlongMm * 100;
  const relief = bench.subject && !bench.stack ? reliefMm(bench.subject) : known(0);
  const across = depthForTiltMm({ fieldAlongMm, subjectAlongMm: extent, bowMm }, tiltRad);
  const needed = across + (relief.known ? relief.value : 0);
  const short = (mm: number) => Number(mm.toPrecision(2));
  return message` (uses ${short(needed)} of the ${short(usable.value)} mm depth of field)`;
}
