/** What is known of a light, a body, a converter or a close-up lens by its bench, in words. */

import { faceOnWeight } from '../../exposure/face-on.ts';
import { CONSTANTS } from '../../figures/constants.ts';
import { entryBench, fitOf, writtenOf } from '../../figures/fitted-entry.ts';
import { lightBench } from '../../figures/light-bench.ts';
import type { Named } from '../../figures/named.ts';
import { type Likely, sigmaOf } from '../../lens-fit/most-likely.ts';
import { ifKnown } from '../../plan/field.ts';
import type { Light } from '../../plan/generated/types.ts';
import { endsWords } from '../../say/between.ts';
import { exposureEnds, exposureError } from '../../say/figures.ts';
import { type Say, significant } from '../../say/say.ts';
import { shown } from '../../say/shown.ts';
import { message } from '../../words/message.ts';

/** Nearly everything lies within so many standard deviations. */
const SIGMAS = 2;
/** Where the light has no place of its own. */
const USUAL_DISTANCE_MM = 1000;

type Unknowns = readonly number[];
type Print = (value: number) => string;

/** "By 2 rows of its bench: factor 1.97x (1.95 to 1.98)."; null: nothing is known by one. */
export function benchWords(entry: Named<object>, say: Say): string | null {
  const written = writtenOf(entry);
  const bench = entryBench(entry.group, written, CONSTANTS.incident);
  const fit = bench && fitOf(bench);
  if (!fit) return null;
  const rows = new Set(bench.values.map(({ row }) => row)).size;
  const known = knownOf(entry, fit, say).join('; ');
  return rows === 1
    ? message`By its data and 1 row of its bench: ${known}.`
    : message`By its data and ${rows} rows of its bench: ${known}.`;
}

function knownOf(entry: Named<object>, fit: Likely, say: Say): readonly string[] {
  const of = (take: (unknowns: Unknowns) => number, print: Print): string =>
    around(fit, take, print);
  const loss = (): readonly string[] =>
    fit.values.length < 2
      ? []
      : [
          message`light loss ${of(
            ([, lost]) => lost!,
            (stops) => say.stops(Math.max(0, stops)),
          )}`,
        ];
  switch (entry.group) {
    case 'converters':
      return [
        message`factor ${of(
          ([factor]) => factor!,
          (value) => `${significant(value)}x`,
        )}`,
        ...loss(),
      ];
    case 'close-up-lenses':
      return [
        message`power ${of(
          ([power]) => power!,
          (value) => `${significant(value)} dpt`,
        )}`,
        ...loss(),
      ];
    case 'bodies':
      return [offsetWords(fit, say)];
    default:
      return lightWords(writtenOf(entry) as Light, fit, say);
  }
}

/** "exposure 0.29 stops under (0.09 to 0.48)" */
function offsetWords(fit: Likely, say: Say): string {
  const [offset] = fit.values as readonly [number];
  const by = SIGMAS * sigmaOf(fit, ([value]) => value!);
  const ends = exposureEnds(offset, { low: offset - by, high: offset + by }, say);
  const words = exposureError(offset, say);
  return message`exposure ${ends === '' ? words : `${words} (${ends})`}`;
}

function lightWords(light: Light, fit: Likely, say: Say): readonly string[] {
  const { at } = lightBench(light, CONSTANTS.incident)!;
  const place = ifKnown(light.at);
  const distanceMm = (place && ifKnown(place.distance)) ?? USUAL_DISTANCE_MM;
  // Both are never below 0, and more is as likely as less by a share.
  const of = (take: (unknowns: Unknowns) => number, print: Print): string =>
    around(
      fit,
      (unknowns) => Math.log(take(unknowns)),
      (log) => print(Math.exp(log)),
    );
  const lux = of(
    (unknowns) => at(unknowns).luminance * faceOnWeight(at(unknowns).face, distanceMm),
    (value) => shown('illuminance', value, say),
  );
  const { face } = at(fit.values);
  const across = (unknowns: Unknowns): number => {
    const { face: now } = at(unknowns);
    return now.shape === 'round' ? now.diameterMm : now.widthMm;
  };
  const size = of(across, (mm) => say.length(mm));
  return [
    message`${lux} at ${say.length(distanceMm)}`,
    face.shape === 'round' ? message`a round face of ${size}` : message`a face ${size} wide`,
  ];
}

/** "2 stops (1.9 to 2.1)" */
function around(fit: Likely, take: (unknowns: Unknowns) => number, print: Print): string {
  const value = take(fit.values);
  const by = SIGMAS * sigmaOf(fit, take);
  const [text, low, high] = [value, value - by, value + by].map(print) as [string, string, string];
  const ends = endsWords(text, low, high);
  return ends === '' ? text : `${text} (${ends})`;
}
