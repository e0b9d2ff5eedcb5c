/** Words that people write where the language has no key for them, and what to write instead. */
import { inLanguage, later } from '../words/message.ts';
import type { DefName } from './generated/names.ts';

const PARTS = later`List it in \`parts\`, from the sensor toward the subject.`;
const FILTER = later`Write the filter thread as \`filter-thread\`. List filters in use in the rig or the shot.`;
const SENSOR = later`Write the size of the sensor as \`sensor\`, and the crop of a mode in its \`recording-modes\`.`;
const GEL = later`Write the \`colour-temperature\` of the light with the gel on, and measure its light that way.`;
const DENSITY = later`Write \`loss\` in stops: a density of 0.3 is 1 stop.`;

const each = (words: string, text: string): Readonly<Record<string, string>> =>
  Object.fromEntries(words.split(' ').map((word) => [word, text]));

export const INSTEAD: Readonly<Partial<Record<DefName, Readonly<Record<string, string>>>>> = {
  rig: each('body camera lens tube ext spacer converter extender tc', PARTS),
  lens: each('filter filters', FILTER),
  body: each('crop crop-factor', SENSOR),
  filter: each('density optical-density', DENSITY),
  light: each('cto ctb gel gels filter filters', GEL),
};

/** What to write instead of `word` in a record, in the language in force. */
export function insteadOf(def: DefName, word: string): string | undefined {
  const texts = INSTEAD[def];
  return texts && Object.hasOwn(texts, word) ? inLanguage(texts[word]!) : undefined;
}
