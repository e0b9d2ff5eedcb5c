import { message } from '../words/message.ts';
import type { PlanRule } from './plan-rule.ts';
import type { Observation } from './rule.ts';

interface Facts {
  readonly subject: string;
  readonly holder: string;
  /** Holders that keep a film of this stance longer. */
  readonly longer: readonly string[];
  readonly rear: boolean;
}

export const holderWorksAgainst: PlanRule<Facts> = {
  name: 'holder-works-against',
  severity: 'note',
  docs: {
    when: 'the holder of a film shortens its life, or adds a reflection of its own behind it.',
    why: 'Common practice: a smooth container lets a film drain in half a minute where a wrapped wire frame keeps it for one or two; a wall behind the film shows the lights a second time.',
    remedy:
      'Take a holder that keeps it longer and is open behind, or know what will show and hide it.',
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
      ...(longer.length > 0 ? [message`shortens the film’s life`] : []),
      ...(rear ? [message`adds a reflection behind it`] : []),
    ];
    return {
      what: message`A ${holder} ${against.join(message` and `)}.`,
      ...(longer.length > 0 && { why: message`It lasts longer on: ${longer.join(', ')}.` }),
    };
  },
};
