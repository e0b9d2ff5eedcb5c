/** A plan from what makers' sheets and a ruler give, for tests of how sure an answer is. */

/** Nothing here gives the light that the glass takes, the pupils, or the mount. */
export const SHEET_PLAN = `shootplan: 1
title: Wax and Water
deliver: { resolution: 1920 x 1080, rate: 25 fps }
mains: 50 Hz

kit:
  bodies:
    body-a:
      sensor: 35.9 x 23.9 mm
      pixels: 6000 x 4000
      recording-modes:
        uhd-25: { resolution: 3840 x 2160, rate: 25 fps }
  lenses:
    macro-90:
      focal-length: 90 mm
      aperture: f/2.8 to 22
      closest: { from-sensor: 0.28 m, magnification: 1x }
      length: 120 mm
    long-180:
      focal-length: 180 mm
      aperture: f/3.5 to 32
      closest: { from-sensor: 0.48 m, magnification: 0.5x }
      length: 167 mm
  filters:
    polariser: { kind: polariser }

rigs:
  plain: { parts: [body-a, macro-90] }

lights:
  panel:
    kind: led
    emitting-size: 300 x 200 mm
    at: { distance: 1 m, elevation: 40 deg }
    illuminance: 2200 lx
    supply: mains

subjects:
  ball: { kind: bubble, diameter: 60 mm, lifetime: 60 to 120 s }

shots:
  globe:
    subject: ball
    rig: plain
    field: 80 mm
    aperture: f/11
    shutter: 1/60 s
    iso: 400
    record: uhd-25
    light: [panel]
    subject-speed: 1 to 5 mm/s
    take: { duration: 20 s, count: 4 }
`;

/** All that can be given of the lens and the body, and a reading in place of the meter's constants. */
export const SURE = {
  'kit/lenses/macro-90/loss': '0.3 stops',
  'kit/lenses/macro-90/pupil-ratio': '0.9',
  'kit/bodies/body-a/flange-distance': '18 mm',
} as const;
