import { anyOf } from '../words/listed.ts';
import { message } from '../words/message.ts';
import type { PlanRule } from './plan-rule.ts';
import type { Observation } from './rule.ts';

interface Facts {
  readonly subject: string;
  readonly holder: string;
  /** Holders on which a film of this orientation lasts longer. */
  readonly longer: readonly string[];
  readonly rear: boolean;
}

export const holderWorksAgainst: PlanRule<Facts> = {
  name: 'holder-works-against',
  severity: 'note',
  docs: {
    when: 'the holder of a film shortens its lifetime, or adds a reflection behind it.',
    why: 'In a smooth container a film lasts half a minute, on a wrapped wire frame one or two. A wall behind the film adds a second reflection of the lights.',
    remedy:
      'Use a holder on which the film lasts longer and which is open behind. Or find the second reflection and hide it.',
    bad: [{ says: 'a smooth container', change: { 'subjects/soap/holder': 'smooth-container' } }],
    good: [{ says: 'a wicking frame', change: { 'subjects/soap/holder': 'wicking-frame' } }],
  },
  check({ shots }) {
    const seen = new Set<string>();
    return shots.flatMap(({ holder }): Observation<Facts>[] => {
      if (!holder || (holder.longer.length === 0 && !holder.rear)) return [];
      const { at, subject, longer, rear } = holder;
      const key = `${at.file} ${at.entry}`;
      if (seen.has(key)) return [];
      seen.add(key);
      return [{ at, facts: { subject, holder: holder.holder, longer, rear } }];
    });
  },
  words({ holder, longer, rear }) {
    const against = [
      ...(longer.length > 0 ? [message`shortens the film's lifetime`] : []),
      ...(rear ? [message`adds a reflection behind it`] : []),
    ];
    return {
      what: message`A ${holder} ${against.join(message` and `)}.`,
      ...(longer.length > 0 && { why: message`The film lasts longer on ${anyOf(longer)}.` }),
    };
  },
};
