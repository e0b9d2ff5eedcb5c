/**
 * What each figure of a shot is, for the table in shared/report/JSON.md. Apart from the declarations:
 * it is for the page alone, and what is shipped goes without it.
 */
import type { FigureName } from './catalogue.ts';

export const ABOUT: Readonly<Record<FigureName, string>> = {
  magnification: 'm, subject to sensor',
  lensMagnification: 'm1, of the lens with everything behind it, as it sees the subject',
  ringMagnification: "m0, the lens's own by its ring; 0 at infinity",
  reach: '[smallest, largest] magnification: ring at infinity, ring at its closest',
  fieldMm: '[width, height] of the recorded frame in the plane of focus',
  effectiveFNumber: 'N_eff = N·(1 + m1/p)·M_c, effective at the sensor',
  lightLossStops: '2·log2(N_eff/N), without the loss of filters and glass',
  lossByPart: 'the same by part: `part`, `stops`',
  workingDistanceMm:
    'subject to front edge of the rig; the `length` of filters and close-up lenses counts',
  subjectToSensorMm: '',
  pupilDiameterMm: 'entrance pupil',
  'depthMm.front': 'geometric depth of field in front of the plane of focus',
  'depthMm.behind': 'behind it, or `"endless"`',
  'depthMm.total': '',
  'depthMm.needed':
    'what subject, tilt and move need sharp at once along the lens axis; in a focus pull, what the pull does not pass through',
  usableDepthMm: 'depth by the larger of circle of confusion and Airy disk; findings use this one',
  circleOfConfusionMm: 'on the sensor',
  airyUm: 'diameter of the Airy disk, 2.44·λ·N_eff at 0.55 µm',
  pixelUm: 'the coarser of recorded and delivered pixel, on the sensor',
  pixelAtSubjectUm: 'size of that pixel on the subject, in the plane of focus: pixel over m',
  blurAtSubjectUm:
    'the largest blur that counts as sharp, on the subject: the larger of circle of confusion and Airy disk, over m',
  contrast: 'left by diffraction at half the Nyquist frequency of that pixel',
  contrastAtNyquist: 'the same at the Nyquist frequency',
  bestEffectiveFNumber: 'at which the needed depth is sharpest',
  leastBlurUm:
    'blur at both ends of the depth at that f-number, on the sensor; defocus and Airy disk in quadrature',
  exposureErrorStops:
    'positive: overexposed; of a flat mirror-like subject where the frame shows a light brightest',
  isoNeeded: 'ISO for a correct exposure, not rounded',
  unevennessStops:
    'falloff over the frame, from its brightest place to its darkest, edges included; 0 on a mirror-like subject; `"endless"` if part of the frame gets no light',
  highlightStops:
    'the brightest image of a light in a glossy subject, over mid-grey at this exposure: log2(R·C/(K·Ω)) and the exposure error by that light; Ω is the projected solid angle of the light',
  highlightShare:
    'share of the frame in which the flat face of the subject shows that light; relief may show it elsewhere',
  highlightLatitudeStops:
    'what the body records over mid-grey: `highlight-latitude`, or as assumed',
  shutterSeconds: '',
  shutterAngleDeg: '360 times shutter time times recording rate',
  flickerResidual:
    "how much a lamp's light varies from frame to frame, as half its peak-to-peak share; of the worst light, and if its `waveform` is unknown, the most that any waveform can leave",
  bandsInFrame:
    "flicker bands over the height of the picture: the lamp's frequency times the body's readout, or times a frame if that is shorter",
  subjectSpeedMmPerS: 'fastest movement across the axis, subject and camera together',
  smearPx: 'motion blur in one exposure, in pixels of the coarser kind',
  crossingS: 'how long a slide, pan or tilt carries a detail across the frame, along the move',
  jitterPx:
    'vibration over one pixel of the coarser kind, both at the subject: amplitude of `vibration` times m; the stand has it, or as assumed',
  travelMm: 'how far a move travels along the axis',
  pullFieldsMm: '[width, height] of the field at both ends of a focus pull: [from, to]',
  pullTravelMm: 'how far a focus pull moves the plane of focus along the axis',
  pullBreathing:
    'how much larger the picture is at the nearer end of a focus pull than at the other',
  stackStepMm:
    'from one plane of focus to the next: usable depth without the overlap, rounded down to a step of the rail; with a ring the first step, the shortest',
  stackFrames: 'as written, or from the nearest point of the subject to the farthest',
  stackDepthMm: 'what its frames together have sharp, from the nearest point on',
  stackTravelMm: 'from its first plane of focus to its last; a rail goes as far',
  stackTimeS: 'frames times settling and exposure',
  massKg: 'of the whole rig, without head and stand',
  centreOfGravityMm: 'from the sensor plane forward',
  footMm: 'where the rig is supported, from the sensor plane forward',
  momentAtFootNewtonMetres: 'moment of the rig about its foot; positive tips the lens down',
  momentAtMountNewtonMetres: 'moment of everything in front of the body about the lens mount',
  stabilityFactor: 'of a boom: righting moment over tipping moment; over 1 is stable',
  reflectance:
    'R, the share of the first light that a mirror-like subject reflects, or a glossy one as a mirror; for a film the mean over its `thickness`, or over every thickness if none is given',
  leastTiltDeg: 'tilt at which a flat mirror no longer reflects the lens',
  tiltWindowDeg:
    '[from, to]: the reflection of the lens sets the lower end, depth and light the upper',
  tiltWindowOpenDeg: 'width of that window; negative: by how much it is closed',
  neededLight:
    'position and size that the light needs: `upDeg`, `acrossDeg`, `widthMm`, `heightMm`',
  lightClearanceMm: 'smallest distance between a light and the lens; 0 or less: they touch',
  hiddenShare: 'share of the frame that a light hides',
  blackShare: 'share of the frame in which no point of the entrance pupil sees a light reflected',
  dimShare: 'share of the frame in which only part of the entrance pupil sees a light reflected',
  blackSide: 'on which side of the frame that is',
  backlitShare:
    'share of the frame that a light behind a clear subject fills: 1 is a bright field, 0 a dark one',
  passedShare:
    'of that light, what comes through the subject and, where they are, the polarisers: `transmittance` times the mean of sin²(π·Δn·d/λ) over `thickness`, at 45°',
  retardationNm: '[smallest, largest] Δn·d',
  retardationColours:
    'between crossed polarisers at 45°: `swatches` (`retardationNm`, `hex`, and `xyz` by CIE 1931, 100 for polarisers in line), and the first and last of the `orders`',
  strayRatio: 'light from behind a film, over the light that it reflects',
  focusBehindNearestMm: "from a bubble's nearest point to the best plane of focus",
  bubbleImages:
    "outline and lights as a bubble reflects them: `of`, `wall` (front or rear), `xPx` and `yPx` from the frame's middle, `widthPx`, `heightPx`, `blurPx`",
  filmColours:
    "over the film's thickness: `swatches` (`thicknessNm`, `hex`, and `xyz` by CIE 1931, 100 for a perfect white), and the `bands` of colour that it passes through (`band`, `fromNm`, `toNm`)",
  darkestBand: 'thickness at which the film is darkest: `thicknessNm`, `reflectance`',
  brightestBand: 'thickness at which it is brightest: `thicknessNm`, `reflectance`',
  lifeS: 'lifetime of the film',
  shareOfLife: 'settling and take over that lifetime; 1 just fits',
  domeDepthMm: 'depth that a dome as wide as the level film would need',
  flatSavesStops: 'stops that the level film saves by staying flat',
  recordedS: 'running time of all takes of the shot in real time, without settling',
  recordedBytes:
    'size of these takes: bit rate times length, or the number of stills times the size of one; without `size` of the stills, 1.2 bytes a pixel (0.3 to 2)',
  frameBytes:
    'size of one frame: bit rate over the rate of the clip, or the size of a still; what a high rate leaves for each',
  timeLapseFrames: 'frames of one time-lapse: whole intervals in its duration',
  timeLapseS:
    'real time of one time-lapse: frames times interval. From first frame to last it is one interval less',
  playingS: 'length of the clip of one take at 100%: frames over the rate that it plays at',
  intervalLeftS:
    'what exposure, and writing if it is known, leave of the interval; negative: the next frame is missed',
  growthPx: 'how far the subject grows or moves between two frames, in pixels of the coarser kind',
  growthCrossingS:
    'how long the subject takes to cross the width of the frame in the finished clip; `"endless"` if nothing moves',
  batteryShare:
    'real time over what one battery lasts at intervals; over 1: it runs empty; 0 on mains power',
};
