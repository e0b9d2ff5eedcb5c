/**
 * The plan that every rule's examples start from: a small bench with nothing wrong in it. Each
 * example changes a value or two of it, so that what fires is the change and nothing else.
 */
export const EXAMPLE_PLAN = `shootplan: 1
title: Winter Window
deliver: { resolution: 1920 x 1080, rate: 25 fps }
mains: 50 Hz

kit:
  bodies:
    body-a:
      sensor: 36 x 24 mm
      pixels: 6048 x 4024
      flange-distance: 44 mm
      iso: { lowest: 100, highest: 25600, usable-to: 3200 }
      displayed-aperture: marked
      readout: 18 ms
      mass: 0.76 kg
      recording-modes:
        full-25: { resolution: 1920 x 1080, rate: 25 fps, bitrate: 30 Mb/s, area: 36 x 20.25 mm }
        thin-25: { resolution: 1920 x 1080, rate: 25 fps, bitrate: 12 Mb/s, area: 36 x 20.25 mm }
        small-25: { resolution: 1280 x 720, rate: 25 fps, bitrate: 30 Mb/s, area: 36 x 20.25 mm }
  lenses:
    macro-100:
      focal-length: 100 mm
      aperture: f/2.8 to 32
      loss: 0.3 stops
      closest: { from-sensor: 0.31 m, magnification: 1x }
      length: 120 mm
      front-diameter: 70 mm
      pupil-ratio: 1
      mass: 0.7 kg
    short-50:
      focal-length: 50 mm
      aperture: f/1.8 to 22
      loss: 0.2 stops
      closest: { from-sensor: 0.45 m, magnification: 0.15x }
      length: 45 mm
      front-diameter: 58 mm
      pupil-ratio: 1
      mass: 0.3 kg
    long-200:
      focal-length: 200 mm
      aperture: f/4 to 32
      loss: 0.3 stops
      closest: { from-sensor: 0.85 m, magnification: 0.3x }
      length: 165 mm
      front-diameter: 82 mm
      pupil-ratio: 0.8
      mass: 1.1 kg
  tubes:
    tube-20: { length: 20 mm, mass: 80 g }
    tube-36: { length: 36 mm, mass: 110 g }
  converters:
    twice: { factor: 2x, length: 53 mm, loss: 0.1 stops, mass: 0.3 kg }

rigs:
  bench:
    parts: [body-a, macro-100]
  stacked:
    parts: [body-a, twice, tube-20, macro-100]
  crowded:
    parts: [body-a, tube-36, tube-20, short-50]
  plain:
    parts: [body-a, short-50]
  far:
    parts: [body-a, twice, tube-36, long-200]

lights:
  panel:
    kind: led
    emitting-size: 300 x 200 mm
    at: { distance: 400 mm, elevation: 40 deg }
    colour-temperature: 5600 K
    modulation: none
    supply: low-voltage
    reading: { aperture: f/8, shutter: 1/50 s, iso: 400, through: meter }
  bulb:
    kind: tungsten
    emitting-size: 120 x 120 mm
    at: { distance: 700 mm, elevation: 40 deg }
    colour-temperature: 3200 K
    supply: mains
    reading: { aperture: f/8, shutter: 1/50 s, iso: 400, through: meter }
  strip:
    kind: led
    emitting-size: 240 x 120 mm
    at: { distance: 300 mm, elevation: 14 deg }
    colour-temperature: 5600 K
    modulation: none
    supply: low-voltage
    luminance: 12000 cd/m2

subjects:
  frost-plate:
    kind: solid
    size: 200 x 150 mm
    depth: 1.5 mm
    finish: matt
  soap: { kind: film, orientation: upright, size: 160 x 100 mm, holder: wicking-frame, lifetime: 40 s }

shots:
  frost:
    subject: frost-plate
    rig: bench
    field: 60 mm
    aperture: f/8
    shutter: 1/50 s
    iso: 1250
    record: full-25
    white-balance: 5600 K
    light: [panel]
  skin:
    subject: soap
    rig: far
    field: 48 mm
    tilt: 4 deg
    aperture: f/11
    shutter: 1/50 s
    iso: 1600
    record: full-25
    white-balance: 5600 K
    light: [strip]
    take: { duration: 20 s, settle: 5 s }
    preflight: { background-clear: open, solution-ready: open, lens-not-in-mirror: open }

preflight:
  once: { card-and-battery: open }
  every-shot:
    - focus-at-full-size
    - record-setting-read-back
    - exposure-confirmed
    - white-balance-fixed
    - flicker-checked
    - foot-balanced
`;
