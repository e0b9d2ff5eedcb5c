import { type PolariserInUse, polariserOn } from '../figures/polariser.ts';
import { ifKnown } from '../plan/field.ts';
import { message } from '../words/message.ts';
import { relatedTo, type ShotRule, setTo } from './shot-rule.ts';

/** Above this loss of the reflection by turning the filter, the colours are pale. */
const PALE_STOPS = 2;

export const polariserTakesTheColour: ShotRule<PolariserInUse> = {
  name: 'polariser-takes-the-colour',
  severity: 'warning',
  docs: {
    when: "a polariser on the lens is crossed with a polarised light on a film. Or a film is seen through one near Brewster's angle.",
    why: "The colours of a film are its reflection. Polarised light stays polarised when it is reflected near the normal, so a crossed filter removes all of it. At Brewster's angle, 53° for water, the reflection itself is polarised (Fresnel's equations, Malus's law).",
    remedy: 'Remove the polariser, or set light and filter parallel.',
    bad: [
      {
        says: 'crossed with the light',
        change: {
          'kit/filters': '\n    polariser: { kind: polariser, loss: 1.5 stops }',
          'shots/skin/filters': '[polariser]',
          'shots/skin/iso': 'auto',
          'kit/bodies/body-a/iso/usable-to': '12800',
          'lights/strip/polarised': 'crossed',
        },
      },
    ],
    good: [
      {
        says: 'parallel to the light',
        change: {
          'kit/filters': '\n    polariser: { kind: polariser, loss: 1.5 stops }',
          'shots/skin/filters': '[polariser]',
          'shots/skin/iso': 'auto',
          'lights/strip/polarised': 'parallel',
        },
      },
    ],
  },
  check({ bench }) {
    const polariser = polariserOn(bench);
    // What a metal mirror shows has no colours of its own to lose.
    if (!polariser || ifKnown(bench.subject!.fields.kind) === 'solid') return [];
    const { polarised, swingStops, at } = polariser;
    const isCrossed = polarised?.how === 'crossed';
    if (!isCrossed && !(swingStops !== undefined && swingStops >= PALE_STOPS)) return [];
    if (polarised?.how === 'parallel') return [];
    return [
      { at, facts: polariser, related: bench.tiltRad.known ? relatedTo(at, bench.tiltRad) : [] },
    ];
  },
  words({ filter, polarised, angleRad, swingStops }, say) {
    if (polarised)
      return {
        what: message`${filter} removes the film's colours: it is crossed with ${polarised.light}.`,
        why: message`The film reflects polarised light without depolarising it. Its colours are that reflection, so a crossed polariser removes them.`,
      };
    return {
      what: message`${filter} can remove the film's colours: their reflection is polarised here.`,
      why: message`At ${say.angle(angleRad ?? 0)} off the normal, turning the filter removes up to ${say.stops(swingStops ?? 0)} more of the reflection.`,
    };
  },
  fixes({ facts: { filter, others } }, { bench }) {
    return [setTo(message`Remove ${filter}`, bench.fields.filters.at, `[${others.join(', ')}]`)];
  },
};
