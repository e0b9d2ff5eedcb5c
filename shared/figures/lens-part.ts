/** A lens as a part of the optical chain: as its bench shows it to be, else by its data alone. */
import { lensAt } from '../lens-fit/fit.ts';
import type { ChainPart } from '../optics/parts.ts';
import { ifKnown } from '../plan/field.ts';
import type { Body, Lens } from '../plan/generated/types.ts';
import { closestDistanceOf, closestMagnificationOf, orAssumed } from './assumed.ts';
import { derive, type Figure, figureOf, known, silent } from './figure.ts';
import { fittedLens } from './fitted-lens.ts';
import type { Finder, Named } from './named.ts';
import { withFrom } from './plain-part.ts';

/** @param body of the rig, as far as it is known */
export function lensPart(
  finder: Finder,
  lens: Named<Lens>,
  body: Body | undefined,
): Figure<ChainPart> {
  const { name, fields } = lens;
  const { 'focal-length': focal, length, extends: grows } = fields;
  const pupilRatio = fields['pupil-ratio'];
  const closestField = fields.closest;
  const { irisKeepsSize, lensStands } = finder.constants;
  if ([closestField, length, grows, pupilRatio].some((field) => field.state === 'invalid'))
    return silent;
  const closest = ifKnown(closestField);
  const inputs = closest
    ? derive(
        [
          orAssumed(closest['from-sensor'], name, closestDistanceOf(fields)),
          orAssumed(closest.magnification, name, closestMagnificationOf(fields)),
        ],
        (fromSensorMm, magnification) => ({ fromSensorMm, magnification }),
      )
    : known(undefined);
  const fit = fittedLens(finder, lens, body, lensStands !== null);
  const figure = derive([figureOf(focal, name), inputs], (focalMm, nearest) =>
    fit
      ? {
          ...lensAt(fit, lensStands ?? []),
          lengthMm: ifKnown(length),
          growsMm: ifKnown(grows),
        }
      : {
          kind: 'lens' as const,
          focalMm,
          closest: nearest,
          lengthMm: ifKnown(length),
          growsMm: ifKnown(grows),
          pupilRatio: ifKnown(pupilRatio),
          irisKeepsSize,
        },
  );
  return withFrom(figure, [length, grows, pupilRatio, ...(fit ? [fields.bench] : [])]);
}
