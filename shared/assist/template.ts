/**
 * The plan that somebody starts from: filled in, and checking cleanly as it stands, so that the
 * first finding a newcomer sees is about what they changed.
 */

/** Text of a whole plan: one body, one lens, one light, one subject, one shot. */
export const planTemplate = (): string => TEMPLATE;

const TEMPLATE = `shootplan: 1
title: New plan
about: What is filmed, for whom, and where it will be shown.
deliver: { resolution: 1920 x 1080, rate: 25 fps, duration: 1 min }
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
      card: 128 GB
      battery: 90 min
      longest-clip: 30 min
      recording-modes:
        full-50: { resolution: 1920 x 1080, rate: 50 fps, bitrate: 60 Mb/s, area: 36 x 20.25 mm }
  lenses:
    close-100:
      focal-length: 100 mm
      aperture: f/2.8 to 32
      loss: 0.2 stops
      closest: { from-sensor: 0.31 m, magnification: 1x }
      length: 120 mm
      front-diameter: 72 mm
      pupil-ratio: 1
      mass: 0.7 kg
  heads:
    ball-head: { payload: 10 kg }

rigs:
  near:
    parts: [body-a, close-100]
    support: { head: ball-head, foot: 60 mm }

lights:
  panel:
    kind: led
    emitting-size: 300 x 200 mm
    at: { distance: 400 mm, elevation: 35 deg, azimuth: 0 deg }
    colour-temperature: 5600 K
    modulation: none
    supply: low-voltage
    reading: { aperture: f/8, shutter: 1/50 s, iso: 400, through: meter }

subjects:
  crystal: { kind: solid, depth: 1 mm, finish: matt }

shots:
  first:
    subject: crystal
    rig: near
    field: 48 mm
    aperture: f/8
    shutter: 1/100 s
    iso: 3200
    record: full-50
    white-balance: 5600 K
    light: [panel]
    take: { duration: 20 s, count: 3, settle: 5 s }

preflight:
  once: { card-and-battery: open }
  every-shot:
    - focus-at-full-size
    - record-setting-read-back
    - exposure-confirmed
    - white-balance-fixed
`;
