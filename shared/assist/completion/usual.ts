/**
 * Values that are usual at large, by record and key; common practice throughout: delivery sizes and
 * rates of film and television, sensor formats, lamps' colours, marks on lenses and filters, and the
 * round values that makers build to and people measure in.
 */
import { MARKED_ISO } from '../../exposure/remedies.ts';
import type { DefName } from '../../plan/generated/names.ts';

const SIZES = [
  '1920 x 1080',
  '3840 x 2160',
  '1280 x 720',
  '2560 x 1440',
  '4096 x 2160',
  '1080 x 1920',
];
const RATES = [
  '25 fps',
  '50 fps',
  '24 fps',
  '23.976 fps',
  '30 fps',
  '29.97 fps',
  '60 fps',
  '59.94 fps',
  '100 fps',
  '120 fps',
];
const COLOURS = ['5600 K', '3200 K', '4000 K', '2700 K', '6500 K'];
const LOSSES = [
  '0.1 stops',
  '0.2 stops',
  '0.3 stops',
  '0.5 stops',
  '1 stop',
  '1.5 stops',
  '2 stops',
];
/** The few that come first, then every mark. */
const isoFrom = (...first: string[]): string[] => [
  ...new Set([...first, ...MARKED_ISO.map(String)]),
];
const each = (unit: string, ...values: (number | string)[]): string[] =>
  values.map((value) => `${value} ${unit}`);
const BITRATES = each('Mb/s', 50, 100, 25, 30, 60, 150, 200, 400);
const LUMINANCES = each('cd/m2', 1000, 2000, 3000, 5000, 10000, 20000);
const ILLUMINANCES = each('lx', 500, 1000, 2000, 5000);
const BACKGROUNDS = each('cd/m2', 0.1, 0.3, 0.5, 1, 2);
const LIGHT_MASSES = each('kg', 0.3, 0.5, 0.6, 0.7, 0.9, 1, 1.1, 1.5, 2);
const PAYLOADS = each('kg', 4, 5, 6, 8, 10, 12, 15, 20);
const PIECES = ['3', '1', '2', '4', '5', '6', '8', '10'];
const seconds = (...values: number[]): string[] => values.map((value) => `${value} s`);

export const USUAL: Partial<Record<DefName, Readonly<Record<string, readonly string[]>>>> = {
  plan: {
    mains: ['50 Hz', '60 Hz'],
    'circle-of-confusion': ['0.03 mm', '0.028 mm', '0.02 mm', '0.015 mm'],
  },
  deliver: {
    resolution: SIZES,
    rate: RATES,
    duration: ['30 s', '40 s', '60 s', '1 min', '2 min', '3 min', '4 min', '5 min', '10 min'],
  },
  body: {
    sensor: ['36 x 24 mm', '23.6 x 15.6 mm', '23.5 x 15.6 mm', '17.3 x 13 mm', '13.2 x 8.8 mm'],
    card: ['64 GB', '128 GB', '256 GB', '512 GB'],
    'longest-clip': ['30 min', '29 min', '60 min'],
    battery: each('min', 60, 90, 120, 45, 70, 80, 100),
    'flange-distance': each('mm', 44, 18, 46.5, 20, 16),
    mass: each('kg', 0.5, 0.6, 0.7, 0.8, 1),
    readout: ['0 ms', '10 ms', '16 ms', '18 ms', '20 ms', '22 ms', '30 ms'],
  },
  'iso-limits': {
    lowest: isoFrom('100', '50', '64', '200'),
    highest: isoFrom('25600', '12800', '51200', '6400', '102400'),
    'usable-to': isoFrom('3200', '1600', '6400', '800', '12800'),
  },
  recording: {
    resolution: SIZES,
    rate: RATES,
    bitrate: BITRATES,
    area: ['36 x 20.25 mm', '23.6 x 13.3 mm', '17.3 x 9.7 mm'],
  },
  lens: {
    aperture: ['f/2.8 to 32', 'f/2.8 to 22', 'f/4 to 32', 'f/4 to 22', 'f/3.5 to 22'],
    'focal-length': each('mm', 100, 90, 105, 60, 150, 180, 200, 50),
    'pupil-ratio': ['1', '0.8', '0.9', '1.1', '1.2'],
    mass: LIGHT_MASSES,
    loss: LOSSES,
  },
  closest: { magnification: ['1x', '0.5x', '0.3x', '2x'] },
  tube: { length: each('mm', 12, 20, 36, 10, 16, 25, 50), mass: each('g', 60, 80, 110) },
  converter: { factor: ['2x', '1.4x'], loss: LOSSES },
  'close-up': { power: ['1 dpt', '2 dpt', '3 dpt', '4 dpt', '5 dpt', '10 dpt'], loss: LOSSES },
  filter: { loss: LOSSES },
  head: { payload: PAYLOADS, mass: LIGHT_MASSES },
  stand: {
    payload: PAYLOADS,
    footprint: each('m', 0.5, 0.8, 1, 1.1, 1.2),
    mass: each('kg', 2, 3, 4, 5),
  },
  support: { foot: each('mm', 60, 70, 80, 90, 100, 120, 150, 180) },
  light: {
    'emitting-size': each(
      'mm',
      '300 x 200',
      '200 x 200',
      '400 x 300',
      '600 x 400',
      '300 x 300',
      '600 x 600',
    ),
    'colour-temperature': COLOURS,
    luminance: LUMINANCES,
    illuminance: ILLUMINANCES,
    modulation: ['none', '100 Hz', '120 Hz'],
    'modulation-depth': ['5 %', '10 %', '20 %', '50 %', '100 %'],
  },
  reading: {
    aperture: ['f/8', 'f/4', 'f/5.6', 'f/11', 'f/16'],
    shutter: ['1/50 s', '1/60 s', '1/100 s', '1/125 s'],
    iso: isoFrom('400', '100', '200', '800', '1600'),
    magnification: ['0.5x', '1x', '2x'],
  },
  placement: {
    distance: each('mm', 300, 400, 500, 200, 250, 350, 450, 600, 800, 1000),
    elevation: each('deg', 0, 15, 20, 30, 40, 45, 50, 60),
    azimuth: each('deg', 0, 20, -20, 45, -45, 90, -90),
  },
  subject: {
    depth: each('mm', 0, 0.5, 1, 1.5, 2, 3, 4, 5, 10),
    diameter: each('mm', 3, 5, 10, 15, 20, 30, 50, 70, 100),
    thickness: each('nm', '100 to 700', '80 to 700', '0 to 1000', '80 to 900'),
    'refractive-index': ['1.33', '1.4', '1.5'],
    'background-luminance': BACKGROUNDS,
    lifetime: seconds(10, 20, 30, 60, 90),
  },
  shot: {
    'subject-speed': each('mm/s', 0.3, 0.5, 1, 1.5, 2, 3, 5, 10),
    'background-luminance': BACKGROUNDS,
  },
  relight: {
    dimmed: ['1 stop', '0.5 stops', '2 stops', '-1 stops'],
    luminance: LUMINANCES,
    illuminance: ILLUMINANCES,
  },
  move: {
    speed: each('mm/s', 1, 2, 5, 10),
    'rail-angle': ['0 deg', '5 deg', '10 deg'],
    duration: seconds(10, 20, 30, 60),
  },
  take: {
    duration: seconds(10, 12, 15, 20, 25, 30, 40, 45, 60, 90, 120),
    count: PIECES,
    settle: seconds(0, 2, 3, 4, 5, 6, 8, 10, 15, 20, 30),
  },
  stack: {
    overlap: ['30 %', '20 %', '25 %', '40 %', '50 %'],
    settle: seconds(2, 3, 1, 4, 5, 10),
  },
  rail: {
    travel: each('mm', 100, 40, 60, 150, 200),
    'smallest-step': each('mm', 0.01, 0.05, 0.1, 0.005, 0.001),
  },
  edit: { memory: each('GB', 8, 16, 32, 64) },
  'edit-music': {
    tempo: ['60 bpm', '80 bpm', '92 bpm', '100 bpm', '120 bpm'],
    'first-beat': seconds(0),
    bar: ['4 beats', '3 beats', '2 beats', '6 beats'],
  },
  cut: {
    from: seconds(0, 2, 4, 5, 10),
    duration: [
      '1 bar',
      '2 bars',
      '3 bars',
      '4 bars',
      '2 beats',
      '4 beats',
      '2 s',
      '4 s',
      '6 s',
      '8 s',
    ],
    speed: ['100 %', '50 %', '25 %', '100 to 50 %', '100 to 25 %'],
    transition: ['cut', 'dissolve 12 frames', 'dissolve 1 s', 'dissolve 1 beat'],
    reframe: ['1x', '1.1x', '1.2x', '1.5x', '2x'],
  },
};
