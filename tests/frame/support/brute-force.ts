/**
 * A frame's pixels by brute force: many random rays, each followed through the set with plain vector
 * algebra. Nothing of shared/frame or shared/mirror is used; the film's spectrum and the adaptation
 * to white are checked in tests/published/.
 */
import { adapted } from '../../../shared/film/adaptation.ts';
import { SCREEN_WHITE } from '../../../shared/film/screen.ts';
import {
  filmTristimulus,
  prepareFilm,
  weightedSpectrum,
  whiteOf,
} from '../../../shared/film/tristimulus.ts';

type V = readonly [number, number, number];

export interface SetLight {
  readonly distance: number;
  /** Degrees. */
  readonly up: number;
  readonly across: number;
  readonly width: number;
  /** 0: round, of that width. */
  readonly height: number;
  /** Linear light of the face itself; or of a matt subject's middle under it. */
  readonly level: number;
  readonly kelvin: number;
}

export type SetSubject = { readonly kelvin: number } & (
  | {
      readonly is: 'plane';
      /** Degrees. */
      readonly tilt: number;
      readonly about: 'level' | 'upright';
      /** Radius of the sphere that it bows into, toward the lens; 0: flat. */
      readonly bowRadius: number;
      readonly width: number;
      readonly height: number;
    }
  | { readonly is: 'bubble'; readonly radius: number; readonly focusBehind: number }
);

export type Finish =
  | {
      readonly is: 'film';
      readonly from: number;
      readonly to: number;
      readonly over: number;
      /** n of a film that floats on water; left out: a film of water in air. */
      readonly onWater?: number;
    }
  | {
      /** Between crossed sheets, at 45° to them; a light's level is that of its face in line with them. */
      readonly is: 'crystal';
      readonly clear: number;
      /** Γ from top to bottom, nm. */
      readonly from: number;
      readonly to: number;
      readonly over: number;
    }
  | { readonly is: 'mirror'; readonly share: number }
  | { readonly is: 'matt' }
  | { readonly is: 'gloss'; readonly index: number; readonly faces: readonly number[] };

export interface BruteSet {
  readonly camera: {
    readonly width: number;
    readonly height: number;
    readonly pupilAt: number;
    readonly pupil: number;
    readonly room: number;
    readonly front: number;
  };
  readonly subject: SetSubject;
  readonly finish: Finish;
  readonly lights: readonly SetLight[];
  readonly background: number;
}

const plus = (a: V, b: V, k = 1): V => [a[0] + b[0] * k, a[1] + b[1] * k, a[2] + b[2] * k];
const by = (a: V, b: V): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const normed = (a: V): V => plus([0, 0, 0], a, 1 / Math.sqrt(by(a, a)));
const cross = (a: V, b: V): V => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const rad = (deg: number): number => (deg * Math.PI) / 180;

/** A small generator of numbers that are the same in every run (mulberry32, public domain). */
export function randomBy(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}

export interface Estimate {
  readonly mean: number;
  readonly deviation: number;
}

/** Luminance of the pixel whose middle is at x, y (−1 to 1) and whose half sides are dx, dy. */
export function pixelOf(
  set: BruteSet,
  [x, y]: readonly [number, number],
  [dx, dy]: readonly [number, number],
  rays: number,
  random: () => number,
): Estimate {
  const values = Array.from({ length: rays }, () => {
    const { width, height, pupilAt, pupil } = set.camera;
    const away = set.subject.is === 'bubble' ? set.subject.radius - set.subject.focusBehind : 0;
    let [px, py] = [1, 1];
    while (px * px + py * py > 1) [px, py] = [2 * random() - 1, 2 * random() - 1];
    const from: V = [(px * pupil) / 2, (py * pupil) / 2, pupilAt + away];
    const to: V = [
      ((x + dx * (2 * random() - 1)) * width) / 2,
      ((y + dy * (2 * random() - 1)) * height) / 2,
      away,
    ];
    return alongRay(set, from, normed(plus(to, from, -1)));
  });
  const mean = values.reduce((sum, value) => sum + value, 0) / rays;
  const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  return { mean, deviation: Math.sqrt(squares / rays) };
}

function alongRay(set: BruteSet, from: V, along: V): number {
  if (set.subject.is === 'plane' && set.lights.some((light) => blocks(light, from, along)))
    return 0;
  return set.subject.is === 'bubble'
    ? inBubble(set, set.subject.radius, from, along)
    : onPlane(set, set.subject, from, along);
}

/** Where a ray meets a sphere, near and far. */
function sphere(from: V, along: V, centre: V, radius: number): readonly [number, number] | null {
  const off = plus(from, centre, -1);
  const b = by(off, along);
  const root = b * b - by(off, off) + radius * radius;
  return root < 0 ? null : [-b - Math.sqrt(root), -b + Math.sqrt(root)];
}

function onPlane(
  set: BruteSet,
  subject: Extract<SetSubject, { is: 'plane' }>,
  from: V,
  along: V,
): number {
  const t = rad(subject.tilt);
  const facing: V =
    subject.about === 'level' ? [0, Math.sin(t), Math.cos(t)] : [Math.sin(t), 0, Math.cos(t)];
  const sideways: V = subject.about === 'level' ? [1, 0, 0] : [Math.cos(t), 0, -Math.sin(t)];
  const upwards = cross(facing, sideways);
  let reach = -by(facing, from) / by(facing, along);
  let normal = facing;
  if (subject.bowRadius > 0) {
    const centre = plus([0, 0, 0], facing, -subject.bowRadius);
    const met = sphere(from, along, centre, subject.bowRadius);
    if (!met) return set.background;
    reach = met[0];
    normal = normed(plus(plus(from, along, reach), centre, -1));
  }
  const at = plus(from, along, reach);
  const [a, b] = [by(at, sideways), by(at, upwards)];
  const { finish } = set;
  const isBeside = Math.abs(a) > subject.width / 2 || Math.abs(b) > subject.height / 2;
  if (finish.is === 'crystal') {
    const light = set.lights.find((one) => Number.isFinite(reachOf(one, at, along)));
    if (isBeside) return light ? 0 : set.background;
    const part = Math.min(1, Math.max(0, 0.5 - b / finish.over));
    return light
      ? light.level * finish.clear * turned(light, finish.from + (finish.to - finish.from) * part)
      : finish.clear * set.background;
  }
  if (isBeside) return set.background;
  if (finish.is === 'matt') return scattered(set, at, facing);
  if (finish.is === 'gloss')
    return scattered(set, at, facing) + shown(set, at, normal, along, 0).light;
  const down = finish.is === 'film' ? 0.5 - b / finish.over : 0;
  const { light, share } = shown(set, at, normal, along, down);
  return light + (finish.is === 'film' ? (1 - share) * set.background : 0);
}

function inBubble(set: BruteSet, radius: number, from: V, along: V): number {
  const met = sphere(from, along, [0, 0, 0], radius);
  if (!met) return set.background;
  const [near, far] = met.map((reach) => plus(from, along, reach)) as unknown as readonly [V, V];
  const downOf = (at: V): number => 0.5 - at[1] / (2 * radius);
  const first = shown(set, near, normed(near), along, downOf(near));
  const second = shown(set, far, plus([0, 0, 0], normed(far), -1), along, downOf(far));
  return (
    first.light +
    (1 - first.share) ** 2 * second.light +
    (1 - first.share) * (1 - second.share) * set.background
  );
}

/** What a mirror-like place throws back to the ray, and its share of all light there. */
function shown(
  set: BruteSet,
  at: V,
  normal: V,
  along: V,
  down: number,
): { readonly light: number; readonly share: number } {
  const cos = -by(along, normal);
  const away = plus(along, normal, 2 * cos);
  const { finish, camera, subject, lights } = set;
  const lensAt = camera.room + (subject.is === 'bubble' ? subject.radius - subject.focusBehind : 0);
  let nearest = Number.POSITIVE_INFINITY;
  let hit = -1;
  const toLens = (lensAt - at[2]) / away[2];
  if (toLens > 0) {
    const place = plus(at, away, toLens);
    if (Math.hypot(place[0], place[1]) < camera.front / 2) nearest = toLens;
  }
  lights.forEach((light, i) => {
    const reach = reachOf(light, at, away);
    if (reach < nearest) [nearest, hit] = [reach, i];
  });
  const asked = lights[Math.max(0, hit)]!;
  const share = shareOf(finish, cos, down, asked, subject.kelvin);
  if (hit < 0) return { light: 0, share: share.all };
  const face = finish.is === 'gloss' ? finish.faces[hit]! : asked.level;
  return { light: share.seen * face, share: share.all };
}

/** Films at angles half a milliradian apart: what lies between is far under a percent. */
const films = new Map<string, ReturnType<typeof prepareFilm>>();
function filmAt(
  lightK: number,
  incidenceRad: number,
  onWater: number | undefined,
): ReturnType<typeof prepareFilm> {
  // The formulas end at 89°.
  const step = Math.round(Math.min(incidenceRad, 1.553) * 2000);
  const key = `${lightK} ${step} ${onWater}`;
  const kept = films.get(key);
  if (kept) return kept;
  const floats = onWater === undefined ? {} : { index: onWater, under: 'water' as const };
  const made = prepareFilm({ lightK, incidenceRad: step / 2000, ...floats });
  films.set(key, made);
  return made;
}

/** R of the place: as the eye counts it under the light, and as the balanced picture shows it. */
function shareOf(
  finish: Finish,
  cos: number,
  down: number,
  light: SetLight,
  balance: number,
): { readonly all: number; readonly seen: number } {
  if (finish.is === 'mirror') return { all: finish.share, seen: finish.share };
  if (finish.is === 'gloss') {
    // Fresnel by the sines and tangents of both angles, as he wrote it.
    const [a, b] = [Math.acos(cos), Math.asin(Math.sin(Math.acos(cos)) / finish.index)];
    const s =
      a < 1e-6
        ? ((finish.index - 1) / (finish.index + 1)) ** 2
        : (Math.sin(a - b) / Math.sin(a + b)) ** 2;
    const p = a < 1e-6 ? s : (Math.tan(a - b) / Math.tan(a + b)) ** 2;
    return { all: (s + p) / 2, seen: (s + p) / 2 };
  }
  if (finish.is !== 'film') throw new Error('a matt subject shows nothing');
  const film = filmAt(light.kelvin, Math.acos(Math.min(1, cos)), finish.onWater);
  const part = Math.min(1, Math.max(0, down));
  const xyz = filmTristimulus(film, finish.from + (finish.to - finish.from) * part);
  return { all: xyz.y / 100, seen: adapted(xyz, whiteOf(balance), SCREEN_WHITE).y };
}

/** Share of polarised light that a retardation turns by a right angle: sin²(π·Γ/λ) (Born and Wolf, 15.4). */
function turned({ kelvin }: SetLight, retardation: number): number {
  let sum = 0;
  for (const { nm, weight } of weightedSpectrum(kelvin))
    sum += Math.sin((Math.PI * retardation) / nm) ** 2 * weight.y;
  return sum / 100;
}

/** Whether a light's back stands between the pupil and the plane of focus. */
function blocks(light: SetLight, from: V, along: V): boolean {
  const { out, level, high } = axesOf(light);
  const reach = (light.distance - by(from, out)) / by(along, out);
  const place = plus(from, along, reach);
  return reach > 0 && place[2] > 0 && isOnFace(light, by(place, level), by(place, high));
}

const isOnFace = (light: SetLight, x: number, y: number): boolean =>
  light.height === 0
    ? x * x + y * y <= (light.width / 2) ** 2
    : Math.abs(x) <= light.width / 2 && Math.abs(y) <= light.height / 2;

function axesOf(light: SetLight) {
  const [up, across] = [rad(light.up), rad(light.across)];
  const out: V = [Math.cos(up) * Math.sin(across), Math.sin(up), Math.cos(up) * Math.cos(across)];
  const level = normed(cross([0, 1, 0], out));
  return { out, level, high: cross(out, level) };
}

function reachOf(light: SetLight, at: V, away: V): number {
  const { out, level, high } = axesOf(light);
  const toward = by(away, out);
  if (toward <= 0) return Number.POSITIVE_INFINITY;
  const reach = (light.distance - by(at, out)) / toward;
  const place = plus(at, away, reach);
  const isOn = isOnFace(light, by(place, level), by(place, high));
  return reach > 0 && isOn ? reach : Number.POSITIVE_INFINITY;
}

const PATCHES = 16;

/** Light on a place, by summing over the patches of each face (Lambert's cosines, inverse square). */
function scattered(set: BruteSet, at: V, normal: V): number {
  return set.lights.reduce(
    (sum, light) =>
      sum + (light.level * givenBy(light, at, normal)) / givenBy(light, [0, 0, 0], normal),
    0,
  );
}

function givenBy(light: SetLight, at: V, normal: V): number {
  const { out, level, high } = axesOf(light);
  const tall = light.height || light.width;
  let sum = 0;
  for (let i = 0; i < PATCHES; i += 1)
    for (let j = 0; j < PATCHES; j += 1) {
      const [x, y] = [
        ((i + 0.5) / PATCHES - 0.5) * light.width,
        ((j + 0.5) / PATCHES - 0.5) * tall,
      ];
      if (light.height === 0 && x * x + y * y > (light.width / 2) ** 2) continue;
      const patch = plus(plus(plus([0, 0, 0], out, light.distance), level, x), high, y);
      const way = plus(patch, at, -1);
      const square = by(way, way);
      sum += (Math.max(0, by(way, normal)) * Math.max(0, by(way, out))) / (square * square);
    }
  return sum;
}
