import type { Where } from './where.ts';

/** A body and a lens: the least that makes a rig; null where one of them is lacking. */
export function partsOf({ context, file }: Where): string | null {
  const { names } = context.analysis;
  const [body] = names.namesIn(file, 'bodies');
  const [lens] = names.namesIn(file, 'lenses');
  return body !== undefined && lens !== undefined ? `[${body}, ${lens}]` : null;
}
