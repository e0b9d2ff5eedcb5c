/**
 * What figures are called for people, where the name in JSON is not the trade's word for it. The same
 * words head a comparison (`compare/words.ts`). All other figures are called by their name in JSON.
 */
export const CALLED: Readonly<Record<string, string>> = {
  reach: 'magnification range',
  leastBlurUm: 'smallest blur',
  flickerResidual: 'flicker',
  bandsInFrame: 'flicker bands',
  smearPx: 'motion blur',
  pullFieldsMm: 'focus pull, fields',
  pullTravelMm: 'focus pull, travel',
  leastTiltDeg: 'minimum tilt',
  tiltWindowOpenDeg: 'tilt window, width',
  lightClearanceMm: 'light to lens',
  hiddenShare: 'hidden by a light',
  blackShare: 'black part of frame',
  dimShare: 'dimmed part of frame',
  blackSide: 'black side of frame',
  strayRatio: 'background against film',
  focusBehindNearestMm: 'focus beyond nearest point',
  lifeS: 'film lifetime',
  shareOfLife: 'share of film lifetime',
  domeDepthMm: 'depth of a dome',
  flatSavesStops: 'saved by lying flat',
  leastRecordedS: 'recorded time, at least',
  leastRecordedBytes: 'recorded data, at least',
};
