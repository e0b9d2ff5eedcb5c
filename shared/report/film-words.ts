/** The colours of a film in words. */
import { message } from '../words/message.ts';

/** "order 2", "grey": a band as figures name it, in the language in force. */
export function bandWords(band: string): string {
  const [, order] = /^order (\d+)$/.exec(band) ?? [];
  if (order !== undefined) return message`order ${order}`;
  return band === 'black' ? message`black` : message`grey`;
}
