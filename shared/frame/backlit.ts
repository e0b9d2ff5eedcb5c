/** Lights behind a clear subject: in a bright field, and between polarisers. */

import type { Bench, LightInUse } from '../figures/bench.ts';
import {
  derive,
  type Figure,
  figureOf,
  known,
  notKnown,
  type UnknownFigure,
  unknownOf,
} from '../figures/figure.ts';
import { sourceOf } from '../figures/light-source.ts';
import { passedShare, retardationOf, type Sheets, sheetsOf } from '../figures/through.ts';
import { D65_K } from '../film/daylight.ts';
import {
  MOST_RETARDATION_NM,
  meanTransmission,
  retardationTristimulus,
} from '../film/retardation.ts';
import type { LinearColour } from '../film/screen.ts';
import { whiteOf } from '../film/tristimulus.ts';
import { planeOf, type Source } from '../mirror/source.ts';
import { message } from '../words/message.ts';
import { type Balance, kelvinOf } from './balance.ts';
import { times } from './mirrored.ts';
import type { LightBehind, Passes } from './scene.ts';

/** A fiftieth of an order of colour. */
const STEP_NM = 10;
const MOST_STEPS = 800;

const BLACK: LinearColour = [0, 0, 0];

/** @param level where the subject's mean is, in linear light */
export function behindBy(
  light: LightInUse,
  level: number,
  bench: Bench,
  balance: Balance,
): Figure<LightBehind> {
  const { subject } = bench;
  const source = sourceOf(light);
  const sheets = sheetsOf(light, bench);
  if (!subject) return unknownOf([source, sheets]);
  const white = balance.whiteOf(light);
  const it = (face: Source) => ({ name: light.name, source: face, plane: planeOf(face) });
  const { transmittance, birefringence } = subject.fields;
  const isTurning = birefringence.state !== 'missing' && sheets.known && sheets.value !== 'none';
  if (!isTurning)
    return derive(
      [source, passedShare(light, bench)],
      (face, share): LightBehind | UnknownFigure =>
        share > 0
          ? { ...it(face), past: times(white, level / share), through: evenly(times(white, level)) }
          : notKnown(message`crossed polarisers pass no light through ${subject.name}`),
    );
  const clear =
    transmittance.state === 'missing' ? known(1) : figureOf(transmittance, subject.name);
  return derive(
    [source, sheets, retardationOf(bench), clear],
    (face, how, [from, to], share): LightBehind => {
      const { mean, through } = turned(light, [from, to], how, level, balance);
      const past = how === 'crossed' ? BLACK : times(white, level / (share * mean));
      return { ...it(face), past, through };
    },
  );
}

/** Colours by retardation, so that their mean is `level`; `mean` is T on average. */
function turned(
  light: LightInUse,
  [fromNm, toNm]: readonly [number, number],
  how: Sheets,
  level: number,
  balance: Balance,
): { readonly mean: number; readonly through: Passes } {
  const lightK = kelvinOf(light) ?? D65_K;
  const crossed = meanTransmission(lightK, fromNm, toNm);
  const mean = how === 'crossed' ? crossed : 1 - crossed;
  if (toNm > MOST_RETARDATION_NM)
    return { mean, through: evenly(times(balance.whiteOf(light), level)) };
  const white = whiteOf(lightK);
  const steps = Math.max(1, Math.min(MOST_STEPS, Math.ceil((toNm - fromNm) / STEP_NM)));
  const values = new Float64Array((steps + 1) * 3);
  for (let i = 0; i <= steps; i += 1) {
    const { x, y, z } = retardationTristimulus(lightK, fromNm + ((toNm - fromNm) * i) / steps);
    const xyz =
      how === 'crossed' ? { x, y, z } : { x: white.x - x, y: white.y - y, z: white.z - z };
    values.set(balance.colourOf(xyz, level / mean, light), i * 3);
  }
  return {
    mean,
    through: {
      read(thicknessShare, out) {
        const place = thicknessShare * steps;
        const below = Math.min(steps - 1, Math.floor(place));
        const part = place - below;
        for (let c = 0; c < 3; c += 1) {
          const at = below * 3 + c;
          out[c] = values[at]! * (1 - part) + values[at + 3]! * part;
        }
      },
    },
  };
}

const evenly = (colour: LinearColour): Passes => ({ read: (_, out) => out.set(colour) });
