/** Light from behind: what a clear subject lets through, and how much of the frame it fills. */
import { evOfLuminance } from '../exposure/ev.ts';
import { polariserStops } from '../exposure/polariser.ts';
import { MOST_RETARDATION_NM, meanTransmission, retardationColour } from '../film/retardation.ts';
import { filledFromBehind, isBehind } from '../mirror/behind.ts';
import { ifKnown } from '../plan/field.ts';
import { message } from '../words/message.ts';
import type { Bench, LightInUse } from './bench.ts';
import { derive, type Figure, figureOf, known, notKnown } from './figure.ts';
import { balanceOf } from './film.ts';
import { type Makers, once } from './lazily.ts';
import { atItsBrightest, luminanceOf, sourceOf, spotOf } from './light-source.ts';
import { mirrorKind } from './mirror-kind.ts';
import { isNo } from './not-applicable.ts';
import { pupilDistanceMm } from './optical.ts';
import type {
  Backlight,
  OpticalFigures,
  RetardationColours,
  ThroughFigures,
} from './shot-figures.ts';

/** The subject says that light passes through it. */
export const isClear = (bench: Bench): boolean =>
  mirrorKind(bench) === undefined &&
  bench.subject !== undefined &&
  (bench.subject.fields.transmittance.state !== 'missing' ||
    bench.subject.fields.birefringence.state !== 'missing');

/** Whether the light stands behind a subject that it shines through, whatever the size of its face. */
export function shinesThrough(light: LightInUse, bench: Bench): boolean {
  if (!isClear(bench)) return false;
  const spot = spotOf(light);
  return spot.known && isBehind(spot.value);
}

/** Steps over a range of retardations: enough that neighbours look alike. */
const SWATCHES = 24;
/** An order of colour ends at whole wavelengths of this light, nm (Michel-Lévy). */
export const ORDER_NM = 550;

/** Makers of the figures, each called when its figure is asked for. */
export function throughFigures(bench: Bench, optical: OpticalFigures): Makers<ThroughFigures> {
  const clear = isClear(bench);
  const where = <V>(make: () => Figure<V>) =>
    once((): Figure<V> => (clear ? make() : isNo('clear')));
  return {
    backlight: where(() => backlightOf(bench, optical)),
    passedShare: where(() => {
      const light = behind(bench)[0];
      return light ? passedShare(light, bench) : isNo('clear');
    }),
    retardationNm: where(() => retardationOf(bench)),
    retardationColours: where(() => coloursOf(bench)),
  };
}

const behind = (bench: Bench): readonly LightInUse[] =>
  bench.lights.known ? bench.lights.value.filter((light) => shinesThrough(light, bench)) : [];

/** The light that fills most of the frame from behind. */
function backlightOf(bench: Bench, optical: OpticalFigures): Figure<Backlight> {
  if (!bench.lights.known) return bench.lights;
  const lights = behind(bench);
  if (lights.length === 0) return isNo('clear');
  return derive(
    lights.map((light) => filledBy(light, bench, optical)),
    (...shares) => {
      const most = shares.indexOf(Math.max(...shares));
      return { light: lights[most]!.name, share: shares[most]! };
    },
  );
}

/** Share of the frame before which the light stands. */
export function filledBy(light: LightInUse, bench: Bench, optical: OpticalFigures): Figure<number> {
  const { fieldMm, pupilDiameterMm } = optical;
  return derive(
    [fieldMm, pupilDistanceMm(bench, optical), pupilDiameterMm, sourceOf(light)],
    ([widthMm, heightMm], distance, pupilMm, source) =>
      filledFromBehind({ widthMm, heightMm, pupilDistanceMm: distance, pupilMm }, source),
  );
}

/** Less than this of the frame nobody sees lit: a dark field. */
export const DARK_FIELD = 0.01;

/**
 * EV of the light as it comes through the subject: L·τ·T. In a dark field only what the subject
 * scatters is seen, and nothing says how much that is.
 *
 * @param read EV of a reading of the light on a diffuse subject
 */
export function throughEv(
  light: LightInUse,
  bench: Bench,
  optical: OpticalFigures,
  read: Figure<number>,
): Figure<number> {
  return derive(
    [
      filledBy(light, bench, optical),
      passedShare(light, bench),
      luminanceOf(atItsBrightest(light), bench, read),
      analyserStops(light, bench),
    ],
    (filled, share, luminance, kept) =>
      filled < DARK_FIELD
        ? notKnown(
            message`${light.name} is behind, outside the field; scattered light needs a reading \`through: this-rig\``,
          )
        : share > 0
          ? evOfLuminance(luminance * share, bench.constants.reflected) + kept
          : notKnown(message`crossed polarisers pass no light through ${bench.subject!.name}`),
  );
}

export type Sheets = 'none' | 'crossed' | 'parallel';

/** How the sheet on the light stands to the polariser on the lens; none where either is missing. */
export function sheetsOf({ name, fields }: LightInUse, { filters }: Bench): Figure<Sheets> {
  if (fields.polarised.state === 'missing') return known('none');
  return derive(
    [filters, figureOf(fields.polarised, name)],
    (all, how): Sheets =>
      all.some((one) => ifKnown(one.fields.kind) === 'polariser') ? how : 'none',
  );
}

/** The polariser's own loss is that of unpolarised light, half of which it stops (Malus). */
const analyserStops = (light: LightInUse, bench: Bench): Figure<number> =>
  derive([sheetsOf(light, bench)], (how) => (how === 'none' ? 0 : polariserStops(0).unpolarised));

/** τ·T, T on average over the thickness at 45° to the polarisers. */
export function passedShare(light: LightInUse, bench: Bench): Figure<number> {
  const { fields, name } = bench.subject!;
  const clear =
    fields.transmittance.state === 'missing' ? known(1) : figureOf(fields.transmittance, name);
  const sheets = sheetsOf(light, bench);
  if (!sheets.known) return sheets;
  if (sheets.value === 'none') return derive([clear, sheets], (share) => share);
  // Nothing turns the light's polarisation: it passes whole, or not at all.
  if (fields.birefringence.state === 'missing')
    return derive([clear, sheets], (share, how) => (how === 'crossed' ? 0 : share));
  return derive(
    [clear, retardationOf(bench), figureOf(light.fields['colour-temperature'], light.name), sheets],
    (share, [from, to], lightK, how) => {
      try {
        const turned = meanTransmission(lightK, from, to);
        return share * (how === 'crossed' ? turned : 1 - turned);
      } catch (error) {
        if (error instanceof RangeError) return notKnown(error.message);
        throw error;
      }
    },
  );
}

/** Γ = Δn·d at both ends of the thickness, nm. */
export function retardationOf({ subject }: Bench): Figure<readonly [number, number]> {
  if (!subject) return isNo('clear');
  const { birefringence, thickness } = subject.fields;
  return derive(
    [figureOf(birefringence, subject.name), figureOf(thickness, subject.name)],
    (difference, { from, to }) => [difference * from, difference * to] as const,
  );
}

function coloursOf(bench: Bench): Figure<RetardationColours> {
  return derive([retardationOf(bench), crossedLight(bench)], ([from, to], lightK) => {
    if (to > MOST_RETARDATION_NM || from > to)
      return notKnown(message`retardations over 20 µm show no colours`);
    const steps = from === to ? 2 : SWATCHES;
    return withinRange(() => ({
      swatches: swatches(bench, lightK, [from, to], steps),
      orders: [1 + Math.floor(from / ORDER_NM), 1 + Math.floor(to / ORDER_NM)] as const,
    }));
  });
}

/**
 * Colours from no retardation on, for a chart that the subject's own are found in.
 *
 * @param toNm where it ends, nm, up to 20 000
 */
export const retardationChart = (
  bench: Bench,
  toNm: number,
  steps: number,
): Figure<RetardationColours['swatches']> =>
  derive([crossedLight(bench)], (lightK) =>
    withinRange(() => swatches(bench, lightK, [0, toNm], steps)),
  );

/** Colour temperature of the light behind, where it is between crossed polarisers. */
function crossedLight(bench: Bench): Figure<number> {
  const light = behind(bench)[0];
  if (!light) return isNo('clear');
  return derive(
    [figureOf(light.fields['colour-temperature'], light.name), sheetsOf(light, bench)],
    (lightK, how) =>
      how === 'crossed' ? lightK : notKnown(message`the polarisers are not crossed`),
  );
}

/** Spectra are calculated for some colours of light alone. */
function withinRange<T>(make: () => T): T | ReturnType<typeof notKnown> {
  try {
    return make();
  } catch (error) {
    if (error instanceof RangeError) return notKnown(error.message);
    throw error;
  }
}

const swatches = (
  bench: Bench,
  lightK: number,
  [from, to]: readonly [number, number],
  steps: number,
): RetardationColours['swatches'] =>
  Array.from({ length: steps }, (_, at) => {
    const retardationNm = from + ((to - from) * at) / (steps - 1);
    const { xyz, screen } = retardationColour(lightK, balanceOf(bench) ?? lightK, retardationNm);
    return { retardationNm, hex: screen.hex, xyz: [xyz.x, xyz.y, xyz.z] as const };
  });
