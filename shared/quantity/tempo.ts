/** Tempo of the music, beats per minute. */
import { later } from '../words/message.ts';
import type { Bpm } from './brands.ts';
import type { QuantityKind } from './kind.ts';
import { scalarKind } from './scalar.ts';

export const tempo: QuantityKind<Bpm> = scalarKind<Bpm>({
  id: 'tempo',
  title: later`tempo`,
  sign: 'positive',
  units: [{ usual: 'bpm', also: ['BPM', 'Bpm', 'beats per minute', 'beats/min'] }],
  examples: ['92 bpm', '117.55 bpm'],
});
