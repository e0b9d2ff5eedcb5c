/** What stood at a caret before it was taken out, among what else may stand there. */
import { inLanguage, later } from '../../words/message.ts';
import type { FormerValue } from '../../workspace/former-values.ts';
import type { Proposal } from './item.ts';
import type { Where } from './where.ts';

const AS_IT_WAS = later`previous value`;

/** Marked where it is proposed anyhow, with all that is said of it there; else behind the others. */
export function withFormer(
  { place: { entry, path } }: Where,
  former: FormerValue | null,
  found: readonly Proposal[],
): readonly Proposal[] {
  if (!former) return found;
  const { text, source } = former;
  const known = found.find((one) => one.text === text);
  const about = { kind: 'value', entry, path, text } as const;
  const own: Proposal = {
    ...(known ?? { text, rank: 0, kind: 'value', about }),
    source,
    detail: [inLanguage(AS_IT_WAS), known?.detail].filter(Boolean).join(' · '),
  };
  return known ? found.map((one) => (one === known ? own : one)) : [...found, own];
}
