/** What the day records, in lines: how much, on how many cards and batteries. */
import type { BodySums } from '../../figures/recording-sums.ts';
import type { Say } from '../../say/say.ts';
import { allOf } from '../../words/listed.ts';
import { message } from '../../words/message.ts';

/** One line a body that takes are planned on. */
export const recordingLines = (sums: readonly BodySums[], say: Say): readonly string[] =>
  sums.flatMap((of) => (of.shots.every((shot) => isUnknown(shot.takeS)) ? [] : [lineOf(of, say)]));

const isUnknown = (value: number | null): boolean => value === null;

function lineOf(sums: BodySums, say: Say): string {
  const { body, recordedS, bytes, cards, batteries, untimed, unweighed } = sums;
  const isWeighed = unweighed.length < sums.shots.length;
  const recorded = [
    message`\`${body.name}\` records ${atLeast(untimed, say.seconds(recordedS))}`,
    ...(isWeighed ? [atLeast(unweighed, say.bytes(bytes))] : []),
  ].join(', ');
  const needs = [
    ...(cards === null || !body.card ? [] : [cardsWords(cards, say.bytes(body.card.value))]),
    ...(batteries === null || !body.battery
      ? []
      : [
          sums.shots.some(({ timeLapse }) => timeLapse !== null)
            ? chargesWords(batteries)
            : batteriesWords(batteries, body.battery.value, say),
        ]),
  ];
  const without = [...new Set([...untimed, ...unweighed])];
  return [
    `${recorded}${needs.length > 0 ? `: ${needs.join(', ')}` : ''}.`,
    batteries !== null && body.battery
      ? message` The battery counts rolling and waiting only, not standby or focusing.`
      : '',
    without.length > 0 ? message` Not counted in full: ${allOf(without)}.` : '',
  ].join('');
}

const atLeast = (without: readonly string[], words: string): string =>
  without.length > 0 ? message`at least ${words}` : words;

const cardsWords = (count: number, size: string): string =>
  count === 1 ? message`one ${size} card` : message`${count} cards of ${size}`;

/** At intervals one lasts longer than its minutes. */
const chargesWords = (count: number): string =>
  count === 1 ? message`one battery` : message`${count} batteries`;

/** A battery is known by its minutes. */
const batteriesWords = (count: number, seconds: number, say: Say): string => {
  const minutes = Math.round(seconds / 60);
  if (count === 1 && minutes > 0) return message`one ${minutes}-minute battery`;
  return count === 1
    ? message`one battery of ${say.seconds(seconds)}`
    : message`${count} batteries of ${say.seconds(seconds)}`;
};
