import { type PolariserInUse, polariserOn } from '../figures/polariser.ts';
import { ifKnown } from '../plan/field.ts';
import { message } from '../words/message.ts';
import { relatedTo, type ShotRule, setTo } from './shot-rule.ts';

/** So much of the reflection lost by turning the filter leaves the colours pale. */
const PALE_STOPS = 2;

export const polariserTakesTheColour: ShotRule<PolariserInUse> = {
  name: 'polariser-takes-the-colour',
  severity: 'warning',
  docs: {
    when: 'a polariser on the lens is crossed with a polarised light on a film, or a film is seen near Brewster’s angle through one.',
    why: 'A film’s colours are its reflection. Light from a polarised source stays polarised when it is thrown back near the normal, and a crossed filter takes all of it; at Brewster’s angle, 53° for water, the reflection is polarised by itself (Fresnel’s equations, Malus’s law).',
    remedy: 'Take the polariser off, or set light and filter in line.',
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
        says: 'in line with the light',
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
        what: message`${filter} takes the film’s colours: it is crossed with ${polarised.light}.`,
        why: message`The film throws polarised light back polarised, and its colours are what it throws back.`,
      };
    return {
      what: message`${filter} can take the film’s colours: its reflection is polarised here.`,
      why: message`Seen ${say.angle(angleRad ?? 0)} off its normal, turning the filter takes up to ${say.stops(swingStops ?? 0)} more of the reflection.`,
    };
  },
  fixes({ facts: { filter, others } }, { bench }) {
    return [setTo(message`Take ${filter} off`, bench.fields.filters.at, `[${others.join(', ')}]`)];
  },
};
