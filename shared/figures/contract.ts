/** The figures of a shot in the names and the order of the JSON contract. */
import { figuresToJson, type ShotFiguresJson } from './json.ts';
import type { ShotFigures } from './shot-figures.ts';

export const figuresJson = (figures: ShotFigures): ShotFiguresJson =>
  figuresToJson({
    magnification: figures.magnification,
    lensMagnification: figures.lensMagnification,
    ringMagnification: figures.ringMagnification,
    reach: figures.reach,
    fieldMm: figures.fieldMm,
    effectiveFNumber: figures.effectiveFNumber,
    lightLossStops: figures.lightLossStops,
    lossByPart: figures.lossByPart,
    workingDistanceMm: figures.workingDistanceMm,
    subjectToSensorMm: figures.subjectToSensorMm,
    pupilDiameterMm: figures.pupilDiameterMm,
    depthMm: { ...figures.depthMm },
    judgedDepthMm: figures.judgedDepthMm,
    circleOfConfusionMm: figures.circleOfConfusionMm,
    airyUm: figures.airyUm,
    pixelUm: figures.pixelUm,
    contrast: figures.contrast,
    contrastAtNyquist: figures.contrastAtNyquist,
    bestEffectiveFNumber: figures.bestEffectiveFNumber,
    leastBlurUm: figures.leastBlurUm,
    exposureErrorStops: figures.exposureErrorStops,
    isoNeeded: figures.isoNeeded,
    shutterSeconds: figures.shutterSeconds,
    shutterAngleDeg: figures.shutterAngleDeg,
    flickerResidual: figures.flickerResidual,
  });
