/**
 * A bubble: both its walls as mirrors, and what is behind it. The light goes from the near wall straight
 * to the far one, which throws it back out through the near one; further bounces are left out, as the
 * film returns less of each.
 */
import { dot, scale, sub, unit, type Vec } from '../mirror/vector.ts';
import type { Scene } from './scene.ts';
import {
  addLight,
  addReflection,
  EDGE,
  isInTheWay,
  returnedShare,
  SEES,
  type Seen,
} from './seen.ts';

export function seeBall(
  scene: Scene,
  radiusMm: number,
  pupil: Vec,
  frameAt: Vec,
  seen: Seen,
): void {
  const toward = unit(sub(pupil, frameAt));
  // |pupil − t·toward| = r: the near and the far wall.
  const half = dot(pupil, toward);
  const root = half * half - dot(pupil, pupil) + radiusMm * radiusMm;
  const near = root > 0 ? sub(pupil, scale(toward, half - Math.sqrt(root))) : null;
  if (scene.inTheWay.length > 0 && isInTheWay(scene.inTheWay, pupil, near ?? frameAt)) {
    seen[SEES.hidden]! += 1;
    return;
  }
  if (near === null) {
    addLight(seen, scene.background);
    seen[SEES.beside]! += 1;
    const aside = Math.sqrt(dot(pupil, pupil) - half * half);
    if (aside < radiusMm + EDGE * scene.camera.widthMm) seen[SEES.mark]! += 1;
    return;
  }
  const outward = scale(near, 1 / radiusMm);
  const down = downAt(near, radiusMm);
  addReflection(scene, near, outward, toward, down, 1, seen);
  // Seen from within, the far wall's normal points at the centre. Both walls are met at one angle.
  const far = sub(pupil, scale(toward, half + Math.sqrt(root)));
  const farDown = downAt(far, radiusMm);
  const cos = Math.min(1, dot(outward, toward));
  const through = 1 - returnedShare(scene, down, cos);
  addReflection(scene, far, scale(far, -1 / radiusMm), toward, farDown, through * through, seen);
  const { background } = scene;
  addLight(seen, background, through * (1 - returnedShare(scene, farDown, cos)));
}

const downAt = (at: Vec, radiusMm: number): number =>
  Math.max(0, Math.min(1, 0.5 - at[1] / (2 * radiusMm)));
