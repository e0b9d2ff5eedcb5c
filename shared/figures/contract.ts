/** The figures of a shot in the names and the order of the JSON contract. */

import { message } from '../words/message.ts';
import { derive, notKnown } from './figure.ts';
import { figuresToJson, type ShotFiguresJson } from './json.ts';
import type { ShotFigures } from './shot-figures.ts';

const degrees = (radians: number): number => (radians * 180) / Math.PI;

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
    bandsInFrame: derive([figures.worstFlicker], ({ residual, bandsInFrame }) =>
      residual === 0 ? 0 : (bandsInFrame ?? notKnown(message`the body’s \`readout\` is not given`)),
    ),
    subjectSpeedMmPerS: figures.subjectSpeedMmPerS,
    smearPx: figures.smearPx,
    travelMm: figures.travelMm,
    pullFieldsMm: derive([figures.pullEnds], (ends) => ends.map(({ fieldMm }) => fieldMm)),
    pullTravelMm: figures.pullTravelMm,
    massKg: figures.massKg,
    centreOfGravityMm: figures.centreOfGravityMm,
    footMm: figures.footMm,
    momentAtFootNm: figures.momentAtFootNm,
    momentAtMountNm: figures.momentAtMountNm,
    tippingFactor: figures.tippingFactor,
    reflectance: figures.reflectance,
    leastTiltDeg: derive([figures.leastTiltRad], degrees),
    tiltWindowDeg: derive([figures.tiltWindow], ({ leastRad, greatestRad }) => [
      degrees(leastRad),
      degrees(greatestRad),
    ]),
    tiltWindowOpenDeg: derive([figures.tiltWindow], ({ openRad }) => degrees(openRad)),
    neededLight: derive([figures.neededLight], (it) => ({
      upDeg: degrees(it.upRad),
      acrossDeg: degrees(it.acrossRad),
      widthMm: it.widthMm,
      heightMm: it.heightMm,
    })),
    lightClearanceMm: derive([figures.lightInTheWay], ({ clearanceMm }) => clearanceMm),
    hiddenShare: derive([figures.lightInTheWay], ({ hiddenShare }) => hiddenShare),
    blackShare: derive([figures.darkFrame], ({ share }) => share),
    blackSide: derive([figures.darkFrame], ({ side }) => side),
    strayRatio: figures.strayRatio,
    focusBehindNearestMm: figures.focusBehindNearestMm,
    bubbleImages: figures.bubbleImages,
    filmColours: figures.filmColours,
    lifeS: figures.lifeS,
    shareOfLife: figures.shareOfLife,
    domeDepthMm: figures.domeDepthMm,
    flatSavesStops: figures.flatSavesStops,
    recordedS: figures.recordedS,
    recordedBytes: figures.recordedBytes,
  });
