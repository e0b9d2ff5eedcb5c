/** The exposure: the light that the lamps give, compared with what the settings need. */
import { evOfIlluminance, evTogether } from '../exposure/ev.ts';
import { evAskedFor, exposureErrorStops, isoClosing } from '../exposure/reading.ts';
import { isBehind } from '../mirror/behind.ts';
import { traceChain } from '../optics/chain.ts';
import { ringFor } from '../optics/reach.ts';
import { ifKnown } from '../plan/field.ts';
import { message } from '../words/message.ts';
import { filterLoss, orAssumed } from './assumed.ts';
import type { Bench, LightInUse } from './bench.ts';
import { derive, type Figure, figureOf, known, notKnown, unknownOf } from './figure.ts';
import { isoOffsetOf } from './fitted-entry.ts';
import { readEv, readThrough } from './light-reading.ts';
import { sourceOf } from './light-source.ts';
import { mirrorKind } from './mirror-kind.ts';
import { goesBy, shownEv, showsLight } from './mirror-light.ts';
import { litEv, movedStops, scatters } from './moved-light.ts';
import type { NamedPart } from './parts.ts';
import { sheetStops } from './polariser.ts';
import type { OpticalFigures, ShownLight, TimeFigures } from './shot-figures.ts';
import { natureOf } from './subject-kinds.ts';
import { shinesThrough, throughEv } from './through.ts';

export function lightFigures(
  bench: Bench,
  optical: OpticalFigures,
  { shutterSeconds }: TimeFigures,
): ShownLight {
  const { iso } = bench;
  const at100 = errorAt100(bench, optical, shutterSeconds);
  const needed = derive([at100], (stops) => {
    const speed = isoClosing(stops);
    return Number.isFinite(speed) ? speed : notKnown(message`no ISO is high enough`);
  });
  const error =
    iso.known && iso.value === 'auto'
      ? derive([needed, iso], () => 0)
      : derive([at100, iso], (stops, speed) => stops + Math.log2((speed as number) / 100));
  return {
    exposureErrorStops: error,
    isoNeeded: needed,
    glassLossStops: glassLossStops(bench, () => true),
  };
}

/** Glass of lens, converters and close-up lenses that `counts`, and the filters of rig and shot, stops. */
function glassLossStops(
  { parts, filters }: Bench,
  counts: (part: NamedPart) => boolean,
): Figure<number> {
  if (!parts.known) return parts;
  if (!filters.known) return filters;
  const losses = [
    ...parts.value.filter(counts).map((part) => part.lossStops),
    ...filters.value.map(({ fields, name }) => orAssumed(fields.loss, name, filterLoss(fields))),
  ];
  return derive(losses, (...stops) => stops.reduce((sum: number, lost) => sum + lost, 0));
}

/** How far the exposure would be off at ISO 100 by all the lights of the shot together, stops. */
function errorAt100(
  bench: Bench,
  optical: OpticalFigures,
  shutterSeconds: Figure<number>,
): Figure<number> {
  const { lights } = bench;
  if (!lights.known) return lights;
  if (lights.value.length === 0) return notKnown(message`the shot has no light`);
  const each = lights.value.map((light) => errorBy(light, bench, optical, shutterSeconds));
  const unknown = each.filter((figure) => !figure.known);
  if (unknown.length > 0) return unknownOf(unknown);
  // Each place of a mirror shows one light; lights on a diffuse subject add up.
  const together =
    mirrorKind(bench) === undefined ? evTogether : (evs: readonly number[]) => Math.max(...evs);
  return derive(each, (...errors) => together(errors));
}

/**
 * Exposure error at ISO 100 with this light alone. If reading and shot go through the same glass,
 * its loss cancels and needs no data: that of the whole rig, or of the bare lens.
 */
export function errorBy(
  light: LightInUse,
  bench: Bench,
  optical: OpticalFigures,
  shutterSeconds: Figure<number>,
): Figure<number> {
  const given = derive(
    [givenEv(light, bench, optical), movedStops(light, bench), light.dimmedStops, light.gelStops],
    (ev, moved, dimmed, gels) => ev + moved - dimmed - gels,
  );
  const asked = (fNumber: Figure<number>, loss: Figure<number>): Figure<number> =>
    derive([fNumber, shutterSeconds, loss], (n, timeS, stops) =>
      evAskedFor({ fNumber: n, timeS, iso: 100 }, stops),
    );
  const through = goesBy(light, bench) === 'reading' ? readThrough(light) : undefined;
  if (through === 'this-rig')
    return derive(
      [given, rigStops(light, optical, bench), asked(bench.marked, known(0))],
      (ev, more, wanted) => exposureErrorStops(ev + more, wanted),
    );
  const counts = (part: NamedPart): boolean => through !== 'bare-lens' || part.kind !== 'lens';
  // What was read through the body itself has its offset in it.
  const offset = through === 'bare-lens' ? known(0) : isoOffsetOf(bench);
  return derive(
    [given, asked(optical.effectiveFNumber, glassLossStops(bench, counts)), offset],
    (ev, wanted, brighter) => exposureErrorStops(ev, wanted) + brighter,
  );
}

/** A light behind a solid shows through it, or not at all: only its `transmittance` tells. */
function neededFromBehind(light: LightInUse, { subject }: Bench): Figure<number> | undefined {
  if (!subject || ifKnown(subject.fields.kind) !== 'solid') return undefined;
  const { transmittance } = subject.fields;
  const source = sourceOf(light);
  return transmittance.state === 'missing' && source.known && isBehind(source.value)
    ? figureOf(transmittance, subject.name)
    : undefined;
}

/** EV that a light gives the subject, as read or measured, without the glass of the reading. */
function givenEv(light: LightInUse, bench: Bench, optical: OpticalFigures): Figure<number> {
  if (shinesThrough(light, bench) && readThrough(light) !== 'this-rig')
    return throughEv(light, bench, optical, readEv(light, bench));
  // A mirror shows the light's own face. A reading counts unchanged only if it is of the subject
  // itself.
  if (showsLight(light, bench))
    return derive(
      [shownEv(light, bench, readEv(light, bench)), sheetStops(light, bench)],
      (ev, kept) => ev + kept,
    );
  const { name, fields } = light;
  switch (goesBy(light, bench)) {
    case 'illuminance':
      return derive([figureOf(fields.illuminance, name), finished(bench)], (lux) =>
        evOfIlluminance(lux, bench.constants.incident),
      );
    // The luminance of a face is the same at any distance; the light that it gives depends on its
    // position.
    case 'luminance':
      return neededFromBehind(light, bench) ?? litEv(light, bench);
    default:
      return readThrough(light) === 'this-rig'
        ? readEv(light, bench)
        : derive([readEv(light, bench), finished(bench)], (ev) => ev);
  }
}

/**
 * Lux and readings of the light alone expose a subject that scatters it. Of a liquid's surface its
 * finish has to say so: still water shows the lamp, or nothing.
 */
const finished = (bench: Bench): Figure<unknown> =>
  natureOf(bench.subject)?.asksFinish ? scatters(bench) : known(null);

/**
 * Additional stops of light loss of the rig at the magnification of the reading, against the shot:
 * 2·log2 of the ratio of N_eff/N. 0 if the reading was taken with the rig as it is.
 */
function rigStops(
  { name, fields }: LightInUse,
  optical: OpticalFigures,
  { marked, wantedMagnification: wanted }: Bench,
): Figure<number> {
  const field = ifKnown(fields.reading)?.magnification;
  if (!field || field.state === 'missing') return known(0);
  const at = figureOf(field, message`${name}'s reading`);
  if (at.known && wanted.known && at.value === wanted.value) return known(0);
  const then = derive([optical.chain, at], (chain, magnification) => {
    const ring = ringFor(chain, magnification);
    if (ring === undefined || ring.beyond !== undefined)
      return notKnown(message`the magnification of the reading is outside the range of the rig`);
    return traceChain(chain, ring.ringMagnification).fNumberRatio;
  });
  return derive(
    [then, optical.effectiveFNumber, marked],
    (ratio, effective, set) => 2 * Math.log2((ratio * set) / effective),
  );
}
