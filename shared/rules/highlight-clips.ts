import type { HighlightPlace } from '../figures/shot-figures.ts';
import { saidInFrame } from '../say/in-frame.ts';
import { message } from '../words/message.ts';
import { highlightFixes } from './highlight-fixes.ts';
import { relatedTo, type ShotRule } from './shot-rule.ts';

/** Stops over what the body records, from which on the image is a patch without detail. */
const BURNT_OUT = 1;
/** Accuracy of exposure and reflectance, at best. */
const HIGHLIGHT_DEAD_BAND = 1 / 6;

interface Facts {
  readonly light: string;
  readonly body: string;
  readonly overGreyStops: number;
  readonly latitudeStops: number;
  readonly reflectance: number;
  /** Where the subject's flat face shows it; null: not known. */
  readonly place: HighlightPlace | null;
}

const overBy = ({ overGreyStops, latitudeStops }: Facts): number => overGreyStops - latitudeStops;

export const highlightClips: ShotRule<Facts> = {
  name: 'highlight-clips',
  severity: 'warning',
  docs: {
    when: 'the image of a light in a glossy subject is brighter than the body records. A note up to 1 stop over, a warning above.',
    why: 'A glossy subject scatters light and also reflects the light like a mirror. The reflection lies log2(R·C/(K·Ω)) stops over mid-grey. R is its reflectance, Ω the projected solid angle of the light, K and C are the meter constants of ISO 2720. A larger light spreads the same exposure over a larger, darker face. Relief faces every way, so some place shows each light. A flat face (`depth: 0 mm`) shows it by the law of reflection, and a reflection outside the frame does no harm.',
    remedy:
      'Use a larger diffuser, or stand one between light and subject: its size and place are then `emitting-size` and `at` of the light. Or bring the light closer and dim it, cross polarisers on light and lens, or underexpose. Turn a flat subject until the reflection leaves the frame.',
    bad: [
      {
        says: 'a polished plate under a small panel',
        change: {
          'subjects/frost-plate/finish': 'gloss',
          'subjects/frost-plate/reflectance': '60 %',
          'kit/bodies/body-a/highlight-latitude': '3.5 stops',
        },
      },
    ],
    good: [
      {
        says: 'the same on a body that records more',
        change: {
          'subjects/frost-plate/finish': 'gloss',
          'subjects/frost-plate/reflectance': '60 %',
          'kit/bodies/body-a/highlight-latitude': '6 stops',
        },
      },
      {
        says: 'a flat plate that shows it outside the frame',
        change: {
          'subjects/frost-plate/finish': 'gloss',
          'subjects/frost-plate/depth': '0 mm',
          'subjects/frost-plate/reflectance': '60 %',
          'kit/bodies/body-a/highlight-latitude': '3.5 stops',
        },
      },
      {
        says: 'a glass plate',
        change: {
          'subjects/frost-plate/finish': 'gloss',
          'subjects/frost-plate/refractive-index': '1.5',
        },
      },
    ],
  },
  check({ bench, figures }) {
    const { highlight, highlightLatitudeStops, reflectance } = figures;
    const { body, lights } = bench;
    if (!body || !highlight.known || !highlightLatitudeStops.known || !reflectance.known) return [];
    const { light, stops } = highlight.value;
    const over = stops - highlightLatitudeStops.value;
    if (over <= HIGHLIGHT_DEAD_BAND) return [];
    const { highlightPlace } = figures;
    const place = highlightPlace.known ? highlightPlace.value : null;
    if (place?.isFlat && place.share === 0) return [];
    const inUse = lights.known ? lights.value.find(({ name }) => name === light) : undefined;
    const at = inUse?.at ?? bench.fields.light.at;
    return [
      {
        at,
        severity: over > BURNT_OUT ? 'warning' : 'note',
        facts: {
          light,
          body: body.name,
          overGreyStops: stops,
          latitudeStops: highlightLatitudeStops.value,
          reflectance: reflectance.value,
          place,
        },
        related: () => relatedTo(at, highlight),
      },
    ];
  },
  words: (facts, say) => ({
    what: message`${facts.light}'s reflection is ${say.stops(facts.overGreyStops)} over mid-grey; ${facts.body} records ${say.stops(facts.latitudeStops)}.`,
    why: message`At a reflectance of ${say.percent(facts.reflectance)} its image burns out by ${say.stops(overBy(facts))}. ${saidPlace(facts.place)}`,
  }),
  size: (facts) => ({ kind: 'stops', value: overBy(facts) }),
  numbers: ({ overGreyStops, latitudeStops, reflectance, place }) => ({
    overGreyStops,
    latitudeStops,
    reflectance,
    ...(place && { shownShare: place.share }),
  }),
  fixes: ({ facts }, { bench }) => highlightFixes(bench, facts.light, overBy(facts)),
};

function saidPlace(place: HighlightPlace | null): string {
  if (!place) return message`The larger a light looks from the subject, the darker its image.`;
  const where = saidInFrame(place);
  return place.isFlat
    ? message`It lies ${where}.`
    : message`A flat face shows it ${where}; relief shows it anywhere.`;
}
