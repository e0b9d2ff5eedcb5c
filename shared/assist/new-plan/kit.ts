/**
 * A kit to begin with: no make's, each piece with the figures that are usual for its kind, to be
 * replaced by those of one's own. Written as a plan writes it.
 */

/** Something to choose. */
export interface Piece {
  readonly name: string;
  /** What it is, for the list that it is chosen from. */
  readonly about: string;
}

/** A body, with its lines under `bodies`. */
export interface Body extends Piece {
  readonly lines: string;
}

/** A lens, with what goes between it and the body. */
export interface Lens extends Piece {
  readonly lines: string;
  /** Lines of further groups of the kit, by group. */
  readonly between: Readonly<Record<string, string>>;
  /** Parts behind the lens, from the body on. */
  readonly parts: readonly string[];
  /** From the sensor forward, mm; null: nothing is known of what carries it. */
  readonly footMm: number | null;
  /**
   * How far up the light of a mirror-like subject stands, degrees: about twice the tilt that it
   * takes, which is the less the further off the lens stands.
   */
  readonly mirrorUpDeg: number;
}

/** A kind of subject, with the light that shows it. */
export interface SubjectKind extends Piece {
  readonly entry: string;
  readonly lines: string;
  /** What the frame takes in across, where the rig can, mm. */
  readonly fieldMm: number;
  readonly light: string;
  lightLines(lens: Lens): string;
}

export const BODIES: readonly Body[] = [
  {
    name: 'full-frame',
    about: '36 × 24 mm sensor, displays the marked f-number',
    lines: `sensor: 36 x 24 mm
pixels: 6048 x 4024
flange-distance: 44 mm
iso: { lowest: 100, highest: 25600, usable-to: 6400 }
displayed-aperture: marked
readout: 18 ms
mass: 0.76 kg
card: 128 GB
battery: 90 min
longest-clip: 30 min
recording-modes:
  full-50: { resolution: 1920 x 1080, rate: 50 fps, bitrate: 60 Mb/s, area: 36 x 20.25 mm }`,
  },
  {
    name: 'small-sensor',
    about: '23.5 × 15.6 mm sensor, displays the effective f-number',
    lines: `sensor: 23.5 x 15.6 mm
pixels: 6240 x 4160
flange-distance: 18 mm
iso: { lowest: 100, highest: 32000, usable-to: 3200 }
displayed-aperture: effective
readout: 22 ms
mass: 0.48 kg
card: 64 GB
battery: 70 min
longest-clip: 29 min
recording-modes:
  full-50: { resolution: 1920 x 1080, rate: 50 fps, bitrate: 50 Mb/s, area: 23.5 x 13.2 mm }`,
  },
];

export const LENSES: readonly Lens[] = [
  {
    name: 'macro-100',
    about: '100 mm macro, 1x without accessories',
    lines: `focal-length: 100 mm
aperture: f/2.8 to 32
loss: 0.2 stops
closest: { from-sensor: 0.31 m, magnification: 1x }
length: 120 mm
front-diameter: 72 mm
pupil-ratio: 1
mass: 0.7 kg`,
    between: {},
    parts: [],
    footMm: 55,
    mirrorUpDeg: 20,
  },
  {
    name: 'tele-135',
    about: '135 mm on extension tubes, medium working distance',
    lines: `focal-length: 135 mm
aperture: f/3.5 to 32
loss: 0.2 stops
closest: { from-sensor: 0.7 m, magnification: 0.25x }
length: 110 mm
front-diameter: 62 mm
pupil-ratio: 0.9
mass: 0.6 kg`,
    between: {
      tubes: 'tube-20: { length: 20 mm, mass: 80 g }\ntube-36: { length: 36 mm, mass: 110 g }',
    },
    parts: ['tube-36', 'tube-20'],
    footMm: 75,
    mirrorUpDeg: 20,
  },
  {
    name: 'long-200',
    about: '200 mm on extension tubes and a teleconverter, long working distance',
    lines: `focal-length: 200 mm
aperture: f/4 to 32
loss: 0.3 stops
closest: { from-sensor: 0.85 m, magnification: 0.3x }
length: 165 mm
front-diameter: 82 mm
pupil-ratio: 0.8
mass: 1.1 kg`,
    between: {
      tubes: 'tube-36: { length: 36 mm, mass: 110 g }',
      converters: 'twice: { factor: 2x, length: 53 mm, loss: 0.1 stops, mass: 0.3 kg }',
    },
    parts: ['twice', 'tube-36'],
    footMm: 127,
    mirrorUpDeg: 16,
  },
];

const LED = `kind: led
colour-temperature: 5600 K
modulation: none
supply: low-voltage`;

export const SUBJECT_KINDS: readonly SubjectKind[] = [
  {
    name: 'solid',
    about: 'a crystal, an insect, a movement: matt, with some depth',
    entry: 'crystal',
    lines: 'kind: solid\nsize: 30 x 20 mm\ndepth: 1 mm\nfinish: matt',
    fieldMm: 40,
    light: 'panel',
    lightLines: () => `${LED}
emitting-size: 300 x 200 mm
at: { distance: 350 mm, elevation: 45 deg, azimuth: 20 deg }
reading: { aperture: f/8, shutter: 1/50 s, iso: 250, through: meter }`,
  },
  {
    name: 'film',
    about: 'a liquid film on a frame: thin, mirror-like, short-lived',
    entry: 'pane',
    lines:
      'kind: film\norientation: upright\nsize: 150 x 100 mm\nholder: wicking-frame\nlifetime: 90 s\nthickness: 80 to 900 nm\nbackground-luminance: 0.3 cd/m2',
    fieldMm: 72,
    light: 'bright-panel',
    lightLines: ({ mirrorUpDeg }) => `${LED}
emitting-size: 400 x 200 mm
at: { distance: 450 mm, elevation: ${mirrorUpDeg} deg, azimuth: 0 deg }
luminance: 24000 cd/m2`,
  },
  {
    name: 'bubble',
    about: 'a bubble with the images of its lights in it',
    entry: 'lantern',
    lines:
      'kind: bubble\ndiameter: 25 mm\nlifetime: 25 s\nthickness: 100 to 700 nm\nbackground-luminance: 0.2 cd/m2',
    fieldMm: 60,
    light: 'sky',
    lightLines: () => `${LED}
emitting-size: 600 x 400 mm
at: { distance: 550 mm, elevation: 50 deg, azimuth: -20 deg }
luminance: 24000 cd/m2`,
  },
  {
    name: 'surface',
    about: 'a liquid surface or a polished plate: mirror-like, flat',
    entry: 'slick',
    lines:
      'kind: surface\nsize: 180 x 120 mm\ndepth: 0.4 mm\nfinish: mirror\nreflectance: 4 %\nbackground-luminance: 0.5 cd/m2',
    fieldMm: 60,
    light: 'lit-paper',
    lightLines: ({ mirrorUpDeg }) => `${LED}
emitting-size: 400 x 200 mm
at: { distance: 450 mm, elevation: ${mirrorUpDeg} deg, azimuth: 0 deg }
luminance: 24000 cd/m2`,
  },
];
