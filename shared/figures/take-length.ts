/** Length and number of a shot's takes in real time. */
import type { Take } from '../plan/generated/types.ts';
import { message } from '../words/message.ts';
import type { Bench } from './bench.ts';
import { type Figure, figureOf, known, notKnown } from './figure.ts';

const recordOf = (take: Bench['fields']['take']): Figure<Take> =>
  take.state === 'missing' ? notKnown(message`no take is planned`) : figureOf(take, 'take');

/** Real time of one take, s; of a time-lapse the time from its first frame to its last. */
export function takeLengthOf({ fields, shot, timeLapse }: Bench): Figure<number> {
  if (timeLapse) return timeLapse.spanS;
  const take = recordOf(fields.take);
  return take.known ? figureOf(take.value.duration, message`${shot}'s take`) : take;
}

/** How many takes there are; one where the plan doesn't say. */
export function takesOf({ fields, shot, timeLapse, stack }: Bench): Figure<number> {
  if ((timeLapse || stack?.isStills) && fields.take.state === 'missing') return known(1);
  const take = recordOf(fields.take);
  if (!take.known) return take;
  const { count } = take.value;
  return count.state === 'missing' ? known(1) : figureOf(count, message`${shot}'s take`);
}
