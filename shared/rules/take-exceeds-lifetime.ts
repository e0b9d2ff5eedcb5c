import { setTo } from '../plan/fixes.ts';
import { below } from '../plan/place.ts';
import { message } from '../words/message.ts';
import { relatedTo, type ShotRule } from './shot-rule.ts';

/** A take over twice the lifetime needs a second film in the middle. */
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
    when: 'a take with its settling time is longer than the film lasts; an error above twice as long.',
    why: 'A film drains and breaks. Typical lifetimes are 25 to 30 s upright in a smooth container. On a wire frame wrapped with absorbent strip they are 1 to 2 min. Level over a closed vessel a film lasts up to hours. `lifetime` of the subject overrides them.',
    remedy:
      'Shorten the take or the settling time, or use a holder on which the film lasts longer.',
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
    const at = bench.timeLapse
      ? bench.fields['time-lapse'].at
      : below(bench.fields.take.at, 'duration');
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
        related: () => relatedTo(at, lifeS),
      },
    ];
  },
  words: ({ lifeS, takeS, subject }, say) => ({
    what: message`The take is longer than ${subject ?? message`the film`} lasts: ${say.seconds(takeS)} including settling time, against ${say.seconds(lifeS)}.`,
  }),
  size: ({ takeS, lifeS }) => ({ kind: 'time', value: takeS - lifeS }),
  numbers: ({ lifeS, takeS }) => ({ lifeS, takeS }),
  fixes({ at, facts: { lifeS, takeS } }, { bench }) {
    const take = bench.fields.take;
    if (take.state !== 'known' || take.value.duration.state !== 'known') return [];
    const waits = takeS - take.value.duration.value;
    const seconds = Math.floor(lifeS - waits);
    if (seconds < 1) return [];
    return [setTo(message`Shorten the take to ${seconds} s`, at, `${seconds} s`)];
  },
};
