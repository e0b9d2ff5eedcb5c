/** Names that people write for rules and checks, each with the one that is in force. */
import { plain } from '../plan/nearest.ts';

const RULES: Readonly<Record<string, string>> = {
  'aperture-behind-converter': 'effective-aperture',
  smear: 'motion-blur',
  'lens-in-the-mirror': 'lens-reflected',
  'outlasts-the-film': 'take-exceeds-lifetime',
  'better-setting-idle': 'better-recording-mode',
  'order-matters': 'rig-order',
};

const CHECKS: Readonly<Record<string, string>> = { 'lamps-safe': 'flicker-checked' };

const found = (names: Readonly<Record<string, string>>, name: string): string | undefined => {
  const word = plain(name);
  return Object.hasOwn(names, word) ? names[word] : undefined;
};

export const ruleMeant = (name: string): string | undefined => found(RULES, name);

export const checkMeant = (name: string): string | undefined => found(CHECKS, name);
