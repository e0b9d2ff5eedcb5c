/**
 * How bright the picture is: mid-grey is where the exposure figures have it, and a subject that is
 * exposed right lies on it.
 */
import { evOfLuminance } from '../exposure/ev.ts';
import { evAskedFor } from '../exposure/reading.ts';
import type { Bench, LightInUse } from '../figures/bench.ts';
import { derive, type Figure, notKnown } from '../figures/figure.ts';
import { errorBy } from '../figures/light.ts';
import type { ShotFigures } from '../figures/shot-figures.ts';
import { message } from '../words/message.ts';

/**
 * Linear light of mid-grey, the screen's white 1: the 18 % of a grey card (ISO 12232:2019 relates
 * exposure to it, from memory).
 */
export const MID_GREY = 0.18;

/** ISO that the shot is recorded at; with `auto` the one that the body chooses. */
export function isoOf({ iso }: Bench, figures: ShotFigures): Figure<number> {
  if (!iso.known || iso.value !== 'auto') return iso as Figure<number>;
  return figures.isoNeeded.known ? figures.isoNeeded : figures.shownLight.isoNeeded;
}

/** Linear light of the subject by one light alone, where it is mid-grey to that exposure. */
export const levelBy = (light: LightInUse, bench: Bench, figures: ShotFigures): Figure<number> =>
  derive(
    [errorBy(light, bench, figures, figures.shutterSeconds), isoOf(bench, figures)],
    (at100, iso) => finite(MID_GREY * 2 ** (at100 + Math.log2(iso / 100))),
  );

/** Linear light from which the body records no more. */
export const clipsAt = (latitudeStops: number): number => MID_GREY * 2 ** latitudeStops;

/** Linear light of a surface of luminance 1 cd/m². */
export const levelOfLuminance = (bench: Bench, figures: ShotFigures): Figure<number> =>
  derive(
    [
      figures.effectiveFNumber,
      figures.shutterSeconds,
      isoOf(bench, figures),
      figures.glassLossStops,
    ],
    (fNumber, timeS, iso, loss) =>
      finite(
        MID_GREY *
          2 **
            (evOfLuminance(1, bench.constants.reflected) -
              evAskedFor({ fNumber, timeS, iso }, loss)),
      ),
  );

const finite = (level: number) =>
  Number.isFinite(level) ? level : notKnown(message`no ISO is high enough`);
