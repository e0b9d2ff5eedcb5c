import type { PolariserInUse } from '../figures/polariser.ts';
import { natureOf } from '../figures/subject-kinds.ts';
import { message } from '../words/message.ts';
import { polariserRule, withPolariser } from './polarisers.ts';
import type { ShotRule } from './shot-rule.ts';

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
        change: withPolariser({
          'kit/bodies/body-a/iso/usable-to': '12800',
          'lights/strip/polarised': 'crossed',
        }),
      },
    ],
    good: [
      {
        says: 'parallel to the light',
        change: withPolariser({
          'lights/strip/polarised': 'parallel',
        }),
      },
    ],
  },
  ...polariserRule(({ polarised, swingStops }, { bench }) => {
    // The reflection in a metal mirror has no interference colours to lose.
    if (natureOf(bench.subject)?.isClear === false || polarised?.how === 'parallel') return false;
    return polarised?.how === 'crossed' || (swingStops !== undefined && swingStops >= PALE_STOPS);
  }),
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
};
