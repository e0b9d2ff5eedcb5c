import { message } from '../words/message.ts';
import { relatedTo, type ShotRule, setTo } from './shot-rule.ts';

/** A take over twice the life needs a second film in the middle of it. */
const HOPELESS = 2;

interface Facts {
  readonly share: number;
  readonly lifeS: number;
  readonly takeS: number;
  /** null: not named. */
  readonly subject: string | null;
}

export const takeExceedsLifetime: ShotRule<Facts> = {
  name: 'take-exceeds-lifetime',
  severity: 'warning',
  docs: {
    when: 'a take and the settling before it last longer than the film; an error over twice as long.',
    why: 'A film drains and breaks. Common practice: upright in a smooth container 25 to 30 s, on a wire frame wrapped with absorbent strip 1 to 2 min, level over a closed vessel up to hours; `lasts` of the subject goes before all of them.',
    remedy: 'Shorten the take, wait less, or give the film a holder that keeps it longer.',
    bad: [
      {
        says: 'longer than it lasts',
        change: { 'shots/skin/take': '{ duration: 50 s, settle: 5 s }' },
      },
    ],
    good: [
      {
        says: 'shorter than it lasts',
        change: { 'shots/skin/take': '{ duration: 20 s, settle: 5 s }' },
      },
    ],
  },
  check({ bench, figures }) {
    const { shareOfLife, lifeS } = figures;
    if (!shareOfLife.known || !lifeS.known || shareOfLife.value <= 1) return [];
    const take = bench.fields.take;
    const at = { ...take.at, path: [...take.at.path, 'duration'] };
    return [
      {
        at,
        severity: shareOfLife.value > HOPELESS ? 'error' : 'warning',
        facts: {
          share: shareOfLife.value,
          lifeS: lifeS.value,
          takeS: shareOfLife.value * lifeS.value,
          subject: bench.subject?.name ?? null,
        },
        related: relatedTo(at, lifeS),
      },
    ];
  },
  words: ({ lifeS, takeS, subject }, say) => ({
    what: message`The take outlasts ${subject ?? message`the film`}: ${say.seconds(takeS)} with its settling, it lasts ${say.seconds(lifeS)}.`,
  }),
  size: ({ takeS, lifeS }) => ({ kind: 'time', value: takeS - lifeS }),
  numbers: ({ lifeS, takeS }) => ({ lifeS, takeS }),
  fixes({ at, facts: { lifeS, takeS } }, { bench }) {
    const take = bench.fields.take;
    if (take.state !== 'known' || take.value.duration.state !== 'known') return [];
    const waits = takeS - take.value.duration.value;
    const seconds = Math.floor(lifeS - waits);
    if (seconds < 1) return [];
    return [setTo(message`Take ${seconds} s, what is left of it`, at, `${seconds} s`)];
  },
};
