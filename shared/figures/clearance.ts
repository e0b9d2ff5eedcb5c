/** Whether a light is inside the lens, or between the lens and the subject. */

import { faceClearanceMm, hiddenShare, lensCylinder } from '../mirror/clearance.ts';
import { message } from '../words/message.ts';
import { frontDiameter } from './assumed.ts';
import type { Bench, LightInUse } from './bench.ts';
import { derive, type Figure, figureOf, notKnown, unknownOf } from './figure.ts';
import { sourceOf } from './light-source.ts';
import { pupilDistanceMm } from './optical.ts';
import type { ClearanceFigures, LightInTheWay, OpticalFigures } from './shot-figures.ts';

export function clearanceFigures(bench: Bench, optical: OpticalFigures): ClearanceFigures {
  const { lights } = bench;
  if (!lights.known) return { lightInTheWay: lights };
  if (lights.value.length === 0) return { lightInTheWay: notKnown(message`the shot has no light`) };
  const all = lights.value.map((light) => inTheWay(light, bench, optical));
  // A light without a position might be anywhere. Those with a position can still be checked.
  const placed = all.filter((figure) => figure.known);
  if (placed.length === 0) return { lightInTheWay: unknownOf(all) };
  return {
    lightInTheWay: derive(placed, (...each) =>
      each.reduce((worst, next) =>
        next.hiddenShare > worst.hiddenShare || next.clearanceMm < worst.clearanceMm ? next : worst,
      ),
    ),
  };
}

function inTheWay(light: LightInUse, bench: Bench, optical: OpticalFigures): Figure<LightInTheWay> {
  const { lens } = bench;
  const { trace, workingDistanceMm, fieldMm, pupilDiameterMm } = optical;
  if (!lens) return unknownOf([trace]);
  return derive(
    [
      sourceOf(light),
      trace,
      workingDistanceMm,
      figureOf(lens.fields.length, lens.name),
      frontDiameter(lens),
      fieldMm,
      pupilDistanceMm(bench, optical),
      pupilDiameterMm,
    ],
    (source, { frontMm }, room, lengthMm, rimMm, [widthMm, heightMm], pupilDistance, pupilMm) => {
      if (!(room > 0) || !Number.isFinite(widthMm))
        return notKnown(message`there is no working distance`);
      const lensBody = lensCylinder(room, lengthMm + (frontMm ?? 0), rimMm);
      const view = { widthMm, heightMm, pupilDistanceMm: pupilDistance, pupilMm };
      return {
        light: light.name,
        clearanceMm: faceClearanceMm(source, lensBody),
        hiddenShare: hiddenShare(view, source),
      };
    },
  );
}
