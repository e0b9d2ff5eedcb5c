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
    message`${body.name} records ${atLeast(untimed, say.seconds(recordedS))}`,
    ...(isWeighed ? [atLeast(unweighed, say.bytes(bytes))] : []),
  ].join(', ');
  const needs = [
    ...(cards === null || !body.card ? [] : [cardsWords(cards, say.bytes(body.card.value))]),
    ...(batteries === null || !body.battery
      ? []
      : [batteriesWords(batteries, say.seconds(body.battery.value))]),
  ];
  const without = [...new Set([...untimed, ...unweighed])];
  return [
    `${recorded}${needs.length > 0 ? `: ${needs.join(message` and `)}` : ''}.`,
    without.length > 0 ? message` Not counted in full: ${allOf(without)}.` : '',
  ].join('');
}

const atLeast = (without: readonly string[], words: string): string =>
  without.length > 0 ? message`at least ${words}` : words;

const cardsWords = (count: number, size: string): string =>
  count === 1 ? message`${count} card of ${size}` : message`${count} cards of ${size}`;

const batteriesWords = (count: number, size: string): string =>
  count === 1 ? message`${count} battery of ${size}` : message`${count} batteries of ${size}`;
