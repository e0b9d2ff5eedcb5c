/** What the day records, in lines: how much, on how many cards and batteries. */
import type { BodySums } from '../../figures/recording-sums.ts';
import type { Say } from '../../rules/say.ts';
import { listed } from './said.ts';

/** One line a body that takes are planned on. */
export const recordingLines = (sums: readonly BodySums[], say: Say): readonly string[] =>
  sums.flatMap((of) => (of.shots.every((shot) => isUnknown(shot.takeS)) ? [] : [lineOf(of, say)]));

const isUnknown = (value: number | null): boolean => value === null;

function lineOf(sums: BodySums, say: Say): string {
  const { body, recordedS, bytes, cards, batteries, untimed, unweighed } = sums;
  const isWeighed = unweighed.length < sums.shots.length;
  const recorded = [
    `${body.name} records ${atLeast(untimed)}${say.seconds(recordedS)}`,
    ...(isWeighed ? [`${atLeast(unweighed)}${say.bytes(bytes)}`] : []),
  ].join(', ');
  const needs = [
    ...(cards === null || !body.card ? [] : [counted(cards, 'card', say.bytes(body.card.value))]),
    ...(batteries === null || !body.battery
      ? []
      : [counted(batteries, 'battery', say.seconds(body.battery.value))]),
  ];
  const without = [...new Set([...untimed, ...unweighed])];
  return [
    `${recorded}${needs.length > 0 ? `: ${needs.join(' and ')}` : ''}.`,
    without.length > 0 ? ` Not all is known of ${listed(without)}.` : '',
  ].join('');
}

const atLeast = (without: readonly string[]): string => (without.length > 0 ? 'at least ' : '');

const PLURAL: Readonly<Record<string, string>> = { card: 'cards', battery: 'batteries' };

const counted = (count: number, of: string, size: string): string =>
  `${count} ${count === 1 ? of : PLURAL[of]} of ${size}`;
