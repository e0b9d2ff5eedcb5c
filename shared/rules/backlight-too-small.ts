import { type Bench, type LightInUse, substitute } from '../figures/bench.ts';
import { figuresOf } from '../figures/compute.ts';
import { DARK_FIELD } from '../figures/through.ts';
import { ifKnown, type Known } from '../plan/field.ts';
import { below } from '../plan/place.ts';
import type { PlanFix } from '../plan/problem.ts';
import { message } from '../words/message.ts';
import { relatedTo, type ShotRule } from './shot-rule.ts';

/** Share of the frame that may be without the light behind it unseen: the frame's very edge. */
const SEEN = 0.01;
/** Nearer than this a diffuser shows its own structure through the subject, mm. */
const NEAREST_MM = 30;
const STEP_MM = 10;

interface Facts {
  readonly light: string;
  readonly share: number;
}

export const backlightTooSmall: ShotRule<Facts> = {
  name: 'backlight-too-small',
  severity: 'warning',
  docs: {
    when: 'a light behind a clear subject fills some of the frame, but not all of it: more than 1% is missing.',
    why: 'Through a clear subject the camera sees the face of the light itself. Where it stands, the field is bright; beside it, dark. A bright field needs a face behind the whole frame, a dark field none behind any of it. The face is cut out by straight rays from the entrance pupil.',
    remedy:
      'Centre the light behind the frame, bring it closer, or use a larger one. For a dark field move it out of the frame.',
    bad: [
      {
        says: 'a small lamp far behind a crystal',
        change: {
          'subjects/frost-plate/transmittance': '90 %',
          'lights/panel':
            '{ kind: led, emitting-size: 80 x 60 mm, at: { distance: 200 mm, azimuth: 180 deg }, colour-temperature: 5600 K, modulation: none, supply: low-voltage, luminance: 1200 cd/m2 }',
          'shots/frost/iso': 'auto',
        },
      },
    ],
    good: [
      {
        says: 'the same close behind it',
        change: {
          'subjects/frost-plate/transmittance': '90 %',
          'lights/panel':
            '{ kind: led, emitting-size: 80 x 60 mm, at: { distance: 30 mm, azimuth: 180 deg }, colour-temperature: 5600 K, modulation: none, supply: low-voltage, luminance: 1200 cd/m2 }',
          'shots/frost/iso': 'auto',
        },
      },
    ],
  },
  check({ bench, figures }) {
    const { backlight } = figures;
    if (!backlight.known) return [];
    const { light, share } = backlight.value;
    if (share >= 1 - SEEN || share < DARK_FIELD) return [];
    const at = lightIn(bench, light)?.at ?? bench.fields.light.at;
    return [{ at, facts: { light, share }, related: () => relatedTo(at, backlight) }];
  },
  words: ({ light, share }, say) => ({
    what: message`${light} lights ${say.percent(share)} of the frame from behind; the rest is dark.`,
    why: message`A bright field needs its face behind the whole frame.`,
  }),
  size: ({ share }) => ({ kind: 'percent', value: 1 - share }),
  numbers: ({ share }) => ({ backlitShare: share }),
  fixes: ({ facts: { light } }, { bench }) => nearer(bench, light),
};

const lightIn = ({ lights }: Bench, light: string): LightInUse | undefined =>
  lights.known ? lights.value.find(({ name }) => name === light) : undefined;

/** The farthest distance at which the light fills the frame. */
function nearer(bench: Bench, name: string): readonly PlanFix[] {
  const light = lightIn(bench, name);
  const at = light && ifKnown(light.fields.at);
  const now = at && ifKnown(at.distance);
  if (!light || !at || now === undefined || bench.fields.relight.state === 'invalid') return [];
  const fills = (distanceMm: number): boolean => {
    const distance = { ...at.distance, value: distanceMm } as Known<number> as typeof at.distance;
    const place = { ...light.fields.at, value: { ...at, distance } } as typeof light.fields.at;
    const there = { ...light, fields: { ...light.fields, at: place } };
    const lights = bench.lights.known ? bench.lights.value : [];
    const { backlight } = figuresOf(
      substitute(bench, {
        lights: {
          known: true,
          value: lights.map((each) => (each === light ? there : each)),
          from: [],
        },
      }),
    );
    return backlight.known && backlight.value.share >= 1 - SEEN;
  };
  for (let mm = Math.floor((now - 1) / STEP_MM) * STEP_MM; mm >= NEAREST_MM; mm -= STEP_MM)
    if (fills(mm))
      return [
        {
          title: message`Move ${name} in from ${Math.round(now)} mm to ${mm} mm`,
          edits: [
            {
              op: 'set',
              at: below(bench.fields.relight.at, name, 'at', 'distance'),
              text: `${mm} mm`,
            },
          ],
        },
      ];
  return [];
}
