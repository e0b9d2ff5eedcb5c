/** What the groups' entries are called in a sentence. */
import type { Group } from '../plan/shape.ts';
import { later } from '../words/message.ts';

export const NOUN: Readonly<Record<Group, string>> = {
  bodies: later`body`,
  lenses: later`lens`,
  tubes: later`tube`,
  converters: later`converter`,
  'close-ups': later`close-up lens`,
  filters: later`filter`,
  heads: later`head`,
  stands: later`stand`,
  rigs: later`rig`,
  lights: later`light`,
  subjects: later`subject`,
  shots: later`shot`,
  recordings: later`recording setting`,
};
