/** Readings: an exposure that is correct with a light, as its EV. */
import { evOfSettings, type Settings } from '../exposure/ev.ts';
import { bareLensFNumber } from '../exposure/reading.ts';
import { ifKnown } from '../plan/field.ts';
import type { Reading } from '../plan/generated/types.ts';
import { later, message } from '../words/message.ts';
import type { Bench, LightInUse } from './bench.ts';
import {
  derive,
  type Figure,
  figureOf,
  known,
  notKnown,
  type UnknownFigure,
  unknownOf,
} from './figure.ts';
import { isoOffsetOf } from './fitted-entry.ts';
import { hasBench } from './fitted-lens.ts';
import { lensLoss } from './parts.ts';

/** What a light's reading was taken through; undefined: it has none, or it can't be read. */
export function readThrough({ fields }: LightInUse) {
  const reading = ifKnown(fields.reading);
  return reading && ifKnown(reading.through);
}

/**
 * A reading in the shot is of the shot's own subject; a reading of the light is of a diffuse
 * subject.
 */
export const isShotsOwn = ({ fields }: LightInUse, { at }: Bench): boolean =>
  fields.reading.at.entry === at.entry && fields.reading.at.file === at.file;

const nameOf = ({ name }: LightInUse): string => message`${name}'s reading`;

function settingsOf(reading: Reading, of: string): Figure<Settings> {
  const timeS = derive([figureOf(reading.shutter, of)], (it) =>
    it.kind === 'time' ? it.seconds : notKnown(message`a reading needs its shutter as a time`),
  );
  return derive(
    [figureOf(reading.aperture, of), timeS, figureOf(reading.iso, of)],
    (fNumber, time, iso) => ({ fNumber, timeS: time, iso }),
  );
}

/**
 * EV at ISO 100 of a reading by its settings alone. Glass and filters that it was taken through
 * are not counted, nor the extension of a whole rig. A shot through the same glass needs neither.
 */
export function readEv(light: LightInUse, bench: Bench): Figure<number> {
  const reading = figureOf(light.fields.reading, light.name);
  if (!reading.known) return hasWattsAlone(light) ? besideWatts(reading) : reading;
  const of = nameOf(light);
  const settings = settingsOf(reading.value, of);
  const through = figureOf(reading.value.through, of);
  if (!through.known) return through;
  const { magnification } = reading.value;
  if (through.value !== 'bare-lens' || magnification.state === 'missing')
    return derive([settings, through], (set) => evOfSettings(set));
  return derive(
    [settings, pupilRatioOf(bench), figureOf(magnification, of), through],
    (set, ratio, m) => evOfSettings({ ...set, fNumber: bareLensFNumber(set.fNumber, m, ratio) }),
  );
}

/** How bright a lamp is for its watts differs a hundredfold, so nothing is assumed. */
export const hasWattsAlone = ({ fields }: LightInUse): boolean =>
  fields.power.state === 'known' &&
  (['reading', 'illuminance', 'luminance'] as const).every(
    (key) => fields[key].state === 'missing',
  );

const WATTS = later`watts say how much it draws, not how much light it gives: \`illuminance\` at a distance or \`luminance\` will do as well`;

const besideWatts = (figure: UnknownFigure): UnknownFigure => ({
  ...figure,
  needs: figure.needs.map((need) => ({ ...need, aside: WATTS })),
});

/** The pupil ratio of the lens: as its bench shows it, or as given; left out, as usual. */
function pupilRatioOf({ lens, chainParts, constants }: Bench): Figure<number> {
  if (!lens) return unknownOf([chainParts]);
  if (hasBench(lens.fields) || constants.lensStands !== null)
    return derive(
      [chainParts],
      (parts) => parts.find((part) => part.kind === 'lens')?.pupilRatio ?? 1,
    );
  const ratio = lens.fields['pupil-ratio'];
  return ratio.state === 'missing' ? known(1) : figureOf(ratio, lens.name);
}

/**
 * EV of a diffuse subject in this light, without glass in front of it. A reading through the bare
 * lens needs the light loss of the lens for that.
 */
export function diffuseEv(light: LightInUse, bench: Bench): Figure<number> {
  switch (readThrough(light)) {
    case 'meter':
      return readEv(light, bench);
    case 'bare-lens':
      if (isShotsOwn(light, bench)) break;
      return derive(
        [readEv(light, bench), lensLossStops(bench), isoOffsetOf(bench)],
        (ev, loss, brighter) => ev + loss - brighter,
      );
  }
  return notKnown(message`the reading of ${light.name} was not taken on a matt subject`);
}

const lensLossStops = ({ lens, chainParts }: Bench): Figure<number> =>
  lens ? lensLoss(lens) : unknownOf([chainParts]);
