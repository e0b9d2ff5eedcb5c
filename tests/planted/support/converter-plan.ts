/** A clean plan with what the samples have none of: a converter, tubes on it, values with decimals in braces. */
export const CONVERTER_PLAN = `shootplan: 1
title: Lichen Walls
about: Lichen on roof slates, for a parish museum's window.
deliver: { resolution: 1920 x 1080, rate: 25 fps, duration: 45 s }
mains: 50 Hz

kit:
  bodies:
    body-a:
      sensor: 36 x 24 mm
      pixels: 6048 x 4024
      flange-distance: 44 mm
      iso: { lowest: 100, highest: 25600, usable-to: 6400 }
      displayed-aperture: marked
      recording-modes:
        full-25: { resolution: 1920 x 1080, rate: 25 fps, bitrate: 60 Mb/s, area: 36 x 20.25 mm }
  lenses:
    long-200:
      focal-length: 200 mm
      aperture: f/4 to 32
      loss: 0.3 stops
      closest: { from-sensor: 0.85 m, magnification: 0.3x }
      length: 165 mm
      front-diameter: 82 mm
      pupil-ratio: 0.8
  tubes:
    tube-12: { length: 12 mm, mass: 0.06 kg }
    tube-36: { length: 36.5 mm, mass: 0.11 kg }
  converters:
    twice: { factor: 2x, length: 53.5 mm, loss: 0.1 stops, mass: 0.3 kg }

rigs:
  far-off:
    parts: [body-a, twice, tube-36, long-200]
  further-off:
    parts: [body-a, twice, tube-12, long-200]

lights:
  window:
    kind: daylight
    emitting-size: 600 x 400 mm
    at: { distance: 1.5 m, elevation: 70.5 deg, azimuth: 20 deg }
    colour-temperature: 5600 K
    reading: { aperture: f/11, shutter: 1/50 s, iso: 100, through: meter }

subjects:
  slate: { kind: solid, size: 120 x 80 mm, depth: 2.5 mm, finish: matt }
  cup: { kind: solid, diameter: 15 mm, depth: 3.5 mm, finish: matt }

shots:
  edge:
    subject: slate
    rig: far-off
    field: 60 mm
    aperture: f/11
    shutter: 1/50 s
    iso: 1000
    record: full-25
    white-balance: 5600 K
    light: [window]
    take: { duration: 20 s, count: 2, settle: 2.5 s }
  spore-cup:
    subject: cup
    rig: further-off
    field: 62 mm
    aperture: f/11
    shutter: 1/50 s
    iso: 1000
    record: full-25
    white-balance: 5600 K
    light: [window]
    take: { duration: 20 s, count: 2, settle: 2.5 s }

preflight:
  every-shot:
    - focus-at-full-size
    - record-setting-read-back
    - exposure-confirmed
    - white-balance-fixed
    - card-and-battery
    - foot-balanced
`;
