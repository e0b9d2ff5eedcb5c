/** What rules about a polariser on the lens share. */
import { type PolariserInUse, polariserOn } from '../figures/polariser.ts';
import { setTo } from '../plan/fixes.ts';
import { message } from '../words/message.ts';
import type { Example } from './rule.ts';
import { relatedTo, type ShotRule, type ShotView } from './shot-rule.ts';

/** The finding is at the polariser, if the condition holds. Its fix removes the polariser. */
export const polariserRule = (
  does: (polariser: PolariserInUse, view: ShotView) => boolean,
): Pick<ShotRule<PolariserInUse>, 'check' | 'fixes'> => ({
  check(view) {
    const polariser = polariserOn(view.bench);
    if (!polariser || !does(polariser, view)) return [];
    const { at } = polariser;
    const { tiltRad } = view.bench;
    return [{ at, facts: polariser, related: tiltRad.known ? relatedTo(at, tiltRad) : [] }];
  },
  fixes({ facts: { filter, others } }, { bench }) {
    return [setTo(message`Remove ${filter}`, bench.fields.filters.at, `[${others.join(', ')}]`)];
  },
});

/** For examples: a polariser on the film, and what else there is. */
export const withPolariser = (more: Example['change']): Example['change'] => ({
  'kit/filters': '\n    polariser: { kind: polariser, loss: 1.5 stops }',
  'shots/skin/filters': '[polariser]',
  'shots/skin/iso': 'auto',
  ...more,
});
