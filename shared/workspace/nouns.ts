/** What the groups' entries are called in a sentence. */
import type { Group } from '../plan/shape.ts';

export const NOUN: Readonly<Record<Group, string>> = {
  bodies: 'body',
  lenses: 'lens',
  tubes: 'tube',
  converters: 'converter',
  'close-ups': 'close-up lens',
  filters: 'filter',
  heads: 'head',
  stands: 'stand',
  rigs: 'rig',
  lights: 'light',
  subjects: 'subject',
  shots: 'shot',
  recordings: 'recording setting',
};
