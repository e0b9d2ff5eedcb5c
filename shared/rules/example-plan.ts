/**
 * The plan that every rule's examples start from: a small bench with nothing wrong in it. Each
 * example changes a value or two of it, so that what fires is the change and nothing else.
 */
export const EXAMPLE_PLAN = `shootplan: 1
title: Winter Window
deliver: { size: 1920 x 1080, rate: 25 fps }
mains: 50 Hz

kit:
  bodies:
    body-a:
      sensor: 36 x 24 mm
      photosites: 6048 x 4024
      flange: 44 mm
      iso: { lowest: 100, highest: 25600, clean-to: 3200 }
      shows: marked
      readout: 18 ms
      mass: 0.76 kg
      record:
        full-25: { size: 1920 x 1080, rate: 25 fps, bitrate: 30 Mb/s, area: 36 x 20.25 mm }
        thin-25: { size: 1920 x 1080, rate: 25 fps, bitrate: 12 Mb/s, area: 36 x 20.25 mm }
        small-25: { size: 1280 x 720, rate: 25 fps, bitrate: 30 Mb/s, area: 36 x 20.25 mm }
  lenses:
    macro-100:
      focal: 100 mm
      aperture: f/2.8 to 32
      loss: 0.3 stops
      closest: { from-sensor: 0.31 m, magnification: 1x }
      length: 120 mm
      rim: 70 mm
      pupil-ratio: 1
      mass: 0.7 kg
    short-50:
      focal: 50 mm
      aperture: f/1.8 to 22
      loss: 0.2 stops
      closest: { from-sensor: 0.45 m, magnification: 0.15x }
      length: 45 mm
      rim: 58 mm
      pupil-ratio: 1
      mass: 0.3 kg
    long-200:
      focal: 200 mm
      aperture: f/4 to 32
      loss: 0.3 stops
      closest: { from-sensor: 0.85 m, magnification: 0.3x }
      length: 165 mm
      rim: 82 mm
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
    source: 300 x 200 mm
    at: { distance: 400 mm, up: 40 deg }
    colour: 5600 K
    modulation: none
    supply: low-voltage
    reading: { aperture: f/8, shutter: 1/50 s, iso: 400, through: meter }
  bulb:
    kind: tungsten
    source: 120 x 120 mm
    at: { distance: 700 mm, up: 40 deg }
    colour: 3200 K
    supply: mains
    reading: { aperture: f/8, shutter: 1/50 s, iso: 400, through: meter }
  strip:
    kind: led
    source: 240 x 120 mm
    at: { distance: 300 mm, up: 14 deg }
    colour: 5600 K
    modulation: none
    supply: low-voltage
    luminance: 12000 cd/m2

subjects:
  frost-plate:
    kind: solid
    size: 200 x 150 mm
    depth: 1.5 mm
    finish: matt
  soap: { kind: film, stands: upright, size: 160 x 100 mm, holder: wicking frame, lasts: 40 s }

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
    - lamps-safe
    - foot-balanced
`;
