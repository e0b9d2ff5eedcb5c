import type { ChainPart } from '../../../shared/optics/parts.ts';
import {
  back,
  type Element,
  heightAt,
  imageOf,
  randomConverter,
  randomLens,
  type TwoGroupLens,
  toward,
} from './bench.ts';
import { type Random, randomFrom } from './random.ts';

/**
 * Brute force, apart from the code: random lenses of two thin groups with a stop between them, tubes,
 * converters and a close-up in random order, marginal rays followed from element to element.
 * Source of the ray trace: W. J. Smith, Modern Optical Engineering, paraxial ray tracing.
 */
export interface RigOnBench {
  readonly parts: ChainPart[];
  readonly ring: number;
  readonly fNumber: number;
  /** From the sensor: converters, rear group | front group, close-up. */
  readonly behindStop: Element[];
  readonly aheadOfStop: Element[];
  readonly stop: number;
  readonly stopRadius: number;
  readonly lens: TwoGroupLens;
  /** The lens's own rim, where a close-up stands. */
  readonly rim: number;
  /** The frontmost rim: a close-up has a ring before it. */
  readonly front: number;
}

/** Whether tubes may stand behind a converter: then only a thin converter is what the model says. */
export type Converters = 'two groups, tubes ahead only' | 'thin, any order' | 'none';

function randomRig(random: Random, converters: Converters, closeUp: boolean): RigOnBench {
  const lens = randomLens(random);
  const ring = random.pick([0, random.between(0.01, 1)]);
  const flangeMm = random.between(16, 50);
  const behindStop: Element[] = [];
  const parts: ChainPart[] = [{ kind: 'body', flangeMm }];
  let datum = 0;
  const add = (kind: 'tube' | 'thin' | 'two groups') => {
    if (kind === 'tube') {
      const lengthMm = random.between(5, 80);
      parts.push({ kind: 'tube', lengthMm });
      datum += lengthMm;
      return;
    }
    const made = kind === 'thin' ? thinConverter(random) : randomConverter(random);
    parts.push({ kind: 'converter', factor: made.factor, lengthMm: made.length });
    // Its groups are measured from where the image would be without it: the datum ahead of it.
    datum += made.length;
    behindStop.push(...made.elements.map(({ z, focal }) => ({ z: datum + z, focal })));
  };
  if (converters === 'two groups, tubes ahead only') {
    for (let n = random.whole(1, 2); n > 0; n--) add('two groups');
    for (let n = random.whole(0, 3); n > 0; n--) add('tube');
  } else {
    const kinds = converters === 'none' ? (['tube'] as const) : (['tube', 'tube', 'thin'] as const);
    for (let n = random.whole(converters === 'none' ? 0 : 1, 4); n > 0; n--)
      add(random.pick(kinds));
  }
  const principal = datum + lens.focal * (1 + ring);
  behindStop.push({ z: principal + lens.rear.z, focal: lens.rear.focal });
  const aheadOfStop = [{ z: principal + lens.front.z, focal: lens.front.focal }];
  const lengthMm = principal + lens.front.z + random.between(5, 60) - datum - flangeMm;
  const fromSensorMm = lens.focal * (2 + 1 + 1);
  const closest = { fromSensorMm, magnification: 1 };
  const rimInModel = datum + flangeMm + lengthMm;
  // The model lets the principal planes coincide; on the bench the front one stands `hiatus` further on.
  const rim = rimInModel + lens.hiatus;
  parts.push({
    kind: 'lens',
    focalMm: lens.focal,
    closest,
    lengthMm: Math.max(lengthMm, 1),
    pupilRatio: lens.pupilRatio,
  });
  let front = rim;
  if (closeUp) {
    const powerDpt = random.between(0.5, 8);
    const lengthMm = 1 + powerDpt;
    front += lengthMm;
    parts.push({ kind: 'close-up', powerDpt, lengthMm });
    aheadOfStop.push({ z: rim, focal: 1000 / powerDpt });
  }
  const fNumber = random.spread(2, 64);
  const stopRadius = (lens.focal / fNumber / 2) * lens.stopScale;
  const stop = principal + lens.stop;
  return { parts, ring, fNumber, behindStop, aheadOfStop, stop, stopRadius, lens, rim, front };
}

/** One thin negative lens that lengthens by `length` and magnifies by `factor`: image less object distance. */
function thinConverter(random: Random) {
  const factor = random.between(1.2, 2.6);
  const ahead = random.between(15, 60);
  const image = factor * ahead;
  const element = { z: ahead, focal: 1 / (1 / image - 1 / ahead) };
  return { factor, length: image - ahead, elements: [element] };
}

/** What the bench shows: the subject's place, its magnification and the marginal ray at the sensor. */
export function measured(bench: RigOnBench) {
  const all = [...bench.behindStop, ...bench.aheadOfStop];
  const subject = imageOf(0, all);
  const tall = toward({ z: 0, y: 1, slope: 0 }, all);
  const magnification = -1 / heightAt(tall, subject);
  const marginal = throughStopEdge(bench, { z: 0, y: 0 });
  return { all, subject, magnification, effectiveFNumber: 1 / (2 * Math.abs(marginal.slope)) };
}

/** The ray from a point that passes the stop's edge, as it leaves that point; found from two trial rays. */
export function throughStopEdge(bench: RigOnBench, from: { z: number; y: number }) {
  const behind = from.z < bench.stop;
  const reach = (slope: number) => {
    const ray = { z: from.z, y: from.y, slope };
    const there = behind ? toward(ray, bench.behindStop) : back(ray, bench.aheadOfStop);
    return heightAt(there, bench.stop);
  };
  const none = reach(0);
  return { ...from, slope: (bench.stopRadius - none) / (reach(1) - none) };
}

/** Diameter on the sensor of the blur of a point of the axis at `z`. */
export function blurOf(bench: RigOnBench, z: number): number {
  const leaving = throughStopEdge(bench, { z, y: 0 });
  const all = [...bench.behindStop, ...bench.aheadOfStop];
  return 2 * Math.abs(heightAt(back(leaving, all), 0));
}

/**
 * Random rigs that can stand: the close-up ahead of the glass, the subject ahead of both, at a distance
 * that doubles can resolve.
 */
export function randomRigs(
  seed: number,
  count: number,
  converters: Converters,
  closeUp: boolean,
): RigOnBench[] {
  const random = randomFrom(seed);
  const rigs: RigOnBench[] = [];
  while (rigs.length < count) {
    const bench = randomRig(random, converters, closeUp);
    const places = bench.aheadOfStop.map((element) => element.z);
    const front = Math.max(...places, bench.stop);
    const lens = bench.parts.find((part) => part.kind === 'lens');
    const { subject } = measured(bench);
    if (lens?.lengthMm === undefined || lens.lengthMm <= 1 || places.at(-1) !== front) continue;
    // A stop behind the sensor is no camera's; rays are followed from the sensor forward.
    if (bench.stop <= 0) continue;
    if (subject > front + 1 && subject < 1e5) rigs.push(bench);
  }
  return rigs;
}

/** Which converters, and whether a close-up. */
export const KINDS_OF_RIG: readonly [Converters, boolean][] = [
  ['none', false],
  ['none', true],
  ['two groups, tubes ahead only', false],
  ['two groups, tubes ahead only', true],
  ['thin, any order', false],
  ['thin, any order', true],
];
