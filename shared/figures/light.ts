/** The exposure: what the lights give against what the settings ask for. */
import { evOfIlluminance, evOfSettings, evTogether, type Settings } from '../exposure/ev.ts';
import { bareLensFNumber, evAskedFor, exposureErrorStops, isoNeeded } from '../exposure/reading.ts';
import { traceChain } from '../optics/chain.ts';
import { ringFor } from '../optics/reach.ts';
import { ifKnown } from '../plan/field.ts';
import type { Reading } from '../plan/generated/types.ts';
import { message } from '../words/message.ts';
import type { Bench, LightInUse } from './bench.ts';
import { derive, type Figure, figureOf, known, notKnown, unknownOf } from './figure.ts';
import { mirrorKind } from './mirror-kind.ts';
import { shownEv, showsLight } from './mirror-light.ts';
import { litEv, movedStops } from './moved-light.ts';
import { sheetStops } from './polariser.ts';
import type { OpticalFigures, ShownLight, TimeFigures } from './shot-figures.ts';

export function lightFigures(
  bench: Bench,
  optical: OpticalFigures,
  { shutterSeconds }: TimeFigures,
): ShownLight {
  const { iso } = bench;
  const glass = glassLossStops(bench);
  const scene = sceneEv(bench, optical, glass);
  const settings = derive([optical.effectiveFNumber, shutterSeconds], (fNumber, timeS) => ({
    fNumber,
    timeS,
  }));
  const needed = derive([scene, settings, glass], (...all) => {
    const speed = isoNeeded(...all);
    return Number.isFinite(speed) ? speed : notKnown(message`no ISO is high enough`);
  });
  const error =
    iso.known && iso.value === 'auto'
      ? derive([needed, iso], () => 0)
      : derive([scene, settings, iso, glass], (ev, set, speed, loss) =>
          exposureErrorStops(ev, evAskedFor({ ...set, iso: speed as number }, loss)),
        );
  return { exposureErrorStops: error, isoNeeded: needed, glassLossStops: glass };
}

/** Glass of lens, converters and close-ups, and the filters of rig and shot, stops. */
function glassLossStops(bench: Bench): Figure<number> {
  const { parts, filters } = bench;
  if (!parts.known) return parts;
  if (!filters.known) return filters;
  const losses = [
    ...parts.value.map((part) => part.lossStops),
    ...filters.value.map(({ fields, name }) => figureOf(fields.loss, name)),
  ];
  return derive(losses, (...stops) => stops.reduce((sum: number, lost) => sum + lost, 0));
}

/** EV at ISO 100 that all the lights of the shot give together on the subject. */
function sceneEv(bench: Bench, optical: OpticalFigures, glass: Figure<number>): Figure<number> {
  const { lights } = bench;
  if (!lights.known) return lights;
  if (lights.value.length === 0) return notKnown(message`the shot has no light`);
  const each = lights.value.map((light) =>
    derive(
      [readNowEv(light, bench, optical, glass), light.dimmedStops],
      (ev, dimmed) => ev - dimmed,
    ),
  );
  const unknown = each.filter((figure) => !figure.known);
  if (unknown.length > 0) return unknownOf(unknown);
  // Each place of a mirror shows one light; lights on a diffuse subject add up.
  const together =
    mirrorKind(bench) === undefined ? evTogether : (evs: readonly number[]) => Math.max(...evs);
  return derive(each, (...evs) => together(evs));
}

/** As it was read or measured, from where it stands now. */
const readNowEv = (...args: Parameters<typeof givenEv>): Figure<number> =>
  derive([givenEv(...args), movedStops(args[0], args[1])], (ev, stops) => ev + stops);

/** One light, by the reading that was taken of it, else by its illuminance at the subject. */
function givenEv(
  light: LightInUse,
  bench: Bench,
  optical: OpticalFigures,
  glass: Figure<number>,
): Figure<number> {
  // A mirror shows the light's own face; only a reading of the subject itself holds as it is.
  if (showsLight(light, bench))
    return derive([shownEv(light, bench), sheetStops(light, bench)], (ev, kept) => ev + kept);
  const { name, fields } = light;
  if (fields.reading.state !== 'missing') {
    const reading = figureOf(fields.reading, name);
    return reading.known ? readEv(reading.value, name, bench, optical, glass) : reading;
  }
  if (fields.illuminance.state !== 'missing')
    return derive([figureOf(fields.illuminance, name)], evOfIlluminance);
  // A face's luminance is the same wherever it stands; what it gives follows from where it is.
  if (fields.luminance.state !== 'missing') return litEv(light, bench);
  return figureOf(fields.reading, name) as Figure<never>;
}

function readEv(
  reading: Reading,
  light: string,
  bench: Bench,
  optical: OpticalFigures,
  glass: Figure<number>,
): Figure<number> {
  const of = message`${light}’s reading`;
  const { shutter } = reading;
  const timeS = derive([figureOf(shutter, of)], (it) =>
    it.kind === 'time' ? it.seconds : notKnown(message`a reading needs its shutter as a time`),
  );
  const through = figureOf(reading.through, of);
  if (!through.known) return through;
  const settings: Figure<Settings> = derive(
    [figureOf(reading.aperture, of), timeS, figureOf(reading.iso, of)],
    (fNumber, time, iso) => ({ fNumber, timeS: time, iso }),
  );
  switch (through.value) {
    case 'meter':
      return derive([settings, through], (set) => evOfSettings(set));
    case 'bare lens':
      return derive(
        [settings, bareLens(bench), lensLoss(bench), optionalNumber(reading, of), through],
        (set, pupilRatio, loss, m) =>
          evOfSettings({ ...set, fNumber: bareLensFNumber(set.fNumber, m, pupilRatio) }) + loss,
      );
    case 'this rig':
      return derive(
        [settings, rigRatio(reading, optical, bench), glass, through],
        (set, ratio, loss) => evOfSettings({ ...set, fNumber: set.fNumber * ratio }) + loss,
      );
  }
}

const optionalNumber = ({ magnification }: Reading, of: string): Figure<number> =>
  magnification.state === 'missing' ? known(0) : figureOf(magnification, of);

/** The pupil ratio of the lens; left out, 1. */
function bareLens({ lens, chainParts }: Bench): Figure<number> {
  if (!lens) return unknownOf([chainParts]);
  const ratio = lens.fields['pupil-ratio'];
  return ratio.state === 'missing' ? known(1) : figureOf(ratio, lens.name);
}

function lensLoss({ lens, chainParts }: Bench): Figure<number> {
  return lens ? figureOf(lens.fields.loss, lens.name) : unknownOf([chainParts]);
}

/** N_eff/N at which a reading through the rig was taken: at its own magnification where it says. */
function rigRatio(reading: Reading, optical: OpticalFigures, { marked }: Bench): Figure<number> {
  const at = ifKnown(reading.magnification);
  if (at === undefined)
    return derive([optical.effectiveFNumber, marked], (effective, set) => effective / set);
  return derive([optical.chain], (chain) => {
    const ring = ringFor(chain, at);
    if (ring === undefined || ring.beyond !== undefined)
      return notKnown(message`the reading’s magnification is out of the rig’s reach`);
    return traceChain(chain, ring.ringMagnification).fNumberRatio;
  });
}
