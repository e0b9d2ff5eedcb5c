/** Shutter and flicker. */
import {
  bandRollHz,
  bandsInFrame,
  flickerResidual,
  lampFrequencyHz,
  mostFlicker,
} from '../exposure/flicker.ts';
import { shutterAngleDeg, shutterTimeS } from '../exposure/shutter.ts';
import { ifKnown } from '../plan/field.ts';
import { message } from '../words/message.ts';
import type { Bench, LightInUse } from './bench.ts';
import { derive, type Figure, figureOf, known, notKnown, unknownOf, withValue } from './figure.ts';
import type { LampFlicker, TimeFigures } from './shot-figures.ts';

export function timeFigures(bench: Bench): TimeFigures {
  const { shutter, recordRate } = bench;
  const shutterSeconds: Figure<number> =
    shutter.known && shutter.value.kind === 'time'
      ? withValue(shutter, shutter.value.seconds)
      : derive([shutter, recordRate], (it, rate) =>
          it.kind === 'time' ? it.seconds : shutterTimeS((it.angle * 180) / Math.PI, rate),
        );
  const worstFlicker = worstOf(bench, shutterSeconds);
  return {
    shutterSeconds,
    shutterAngleDeg: derive([shutterSeconds, recordRate], shutterAngleDeg),
    flickerResidual: derive([worstFlicker], (it) => it.residual),
    worstFlicker,
  };
}

function worstOf(bench: Bench, seconds: Figure<number>): Figure<LampFlicker> {
  const { lights } = bench;
  if (!lights.known) return lights;
  if (lights.value.length === 0) return notKnown(message`the shot has no light`);
  const each = lights.value.map((light) => flickerOf(light, bench, seconds));
  const unknown = each.filter((figure) => !figure.known);
  if (unknown.length > 0) return unknownOf(unknown);
  return derive(each, (...flickers) =>
    flickers.reduce((worst, next) => (next.residual > worst.residual ? next : worst)),
  );
}

function flickerOf(light: LightInUse, bench: Bench, seconds: Figure<number>): Figure<LampFlicker> {
  const depth = light.fields['modulation-depth'];
  const depthFigure = depth.state === 'missing' ? known(1) : figureOf(depth, light.name);
  // Bands don't roll through frames that are seconds apart: each lies where it falls.
  const rate = bench.timeLapse ? null : bench.recordRate;
  const readoutS = bench.body && ifKnown(bench.body.fields.readout);
  return derive(
    [modulationHz(light, bench), seconds, depthFigure, courseOf(light)],
    (lampHz, time, modulationDepth, course) => ({
      light: light.name,
      lampHz,
      residual:
        lampHz === 0
          ? 0
          : course === 'sine'
            ? flickerResidual(lampHz, time, modulationDepth)
            : mostFlicker(lampHz, time, modulationDepth),
      course,
      rollHz: rate?.known && lampHz > 0 ? bandRollHz(lampHz, rate.value) : null,
      bandsInFrame:
        readoutS === undefined
          ? null
          : bandsInFrame(lampHz, readoutS, rate?.known ? rate.value : undefined),
      depthAssumed: depth.state === 'missing',
    }),
  );
}

/**
 * The waveform of the light: as stated, and a sine for a filament on the mains, whose power is a
 * sine that its heat smooths further. For other lamps it is unknown.
 */
function courseOf({ name, fields }: LightInUse): Figure<LampFlicker['course']> {
  const { waveform, kind, modulation } = fields;
  if (waveform.state !== 'missing') return figureOf(waveform, name);
  const isFilament = ifKnown(kind) === 'tungsten' && modulation.state === 'missing';
  return known(isFilament ? 'sine' : 'unknown');
}

/**
 * Frequency of the light's pulses; 0: it doesn't pulse. A frequency that isn't stated is unknown,
 * never assumed to be harmless.
 */
export function modulationHz({ name, fields }: LightInUse, bench: Bench): Figure<number> {
  const { modulation } = fields;
  if (modulation.state !== 'missing')
    return derive([figureOf(modulation, name)], (it) => (it === 'none' ? 0 : it));
  const kind = figureOf(fields.kind, name);
  if (!kind.known) return kind;
  if (kind.value === 'daylight') return known(0, kind.from);
  const supply = figureOf(fields.supply, name);
  if (!supply.known) return supply;
  // A driver on a battery may pulse at any frequency; one on the mains at worst as the mains does.
  if (kind.value === 'led' && supply.value !== 'mains')
    return figureOf(modulation, name) as Figure<never>;
  if (supply.value === 'battery') return known(0, supply.from);
  if (supply.value === 'low-voltage') return figureOf(modulation, name) as Figure<never>;
  return derive([bench.mainsHz, supply], (mainsHz) => lampFrequencyHz(mainsHz));
}
