/** What all takes of a plan come to on a body: its figures beside those of the shots. */
import { later } from '../../words/message.ts';
import type { BodySumsJson } from '../recording-json.ts';
import type { Told } from './declaration.ts';
import { number, type Shape } from './shape.ts';

const sum = (label: string, is: Shape) => ({ kind: 'figure' as const, label, is });

export const SUMS = {
  recordedS: sum(later`recorded time`, number('seconds')),
  withSettlingS: sum(later`with settling`, number('seconds')),
  recordedBytes: sum(later`recorded data`, number('bytes')),
  leastRecordedS: sum(later`recorded time, at least`, number('seconds')),
  leastRecordedBytes: sum(later`recorded data, at least`, number('bytes')),
  cardBytes: sum(later`card`, number('bytes')),
  batteryS: sum(later`battery`, number('seconds')),
  cards: sum(later`cards`, number('number')),
  batteries: sum(later`batteries`, number('number')),
} satisfies Readonly<Record<keyof BodySumsJson, Told>>;
