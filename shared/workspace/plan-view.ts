/** The input of rules about a whole plan, gathered from entries and summaries. */
import { benchReport } from '../figures/bench-report.ts';
import type { Named } from '../figures/named.ts';
import type { PlanReader } from '../figures/reader.ts';
import { plainId } from '../plan/entry-id.ts';
import { ifKnown } from '../plan/field.ts';
import { ENTRIES } from '../plan/generated/entries.ts';
import type { EntryId, FileId } from '../plan/place.ts';
import { loadsOf } from '../rules/loads.ts';
import type { PlanView, ShotSummary } from '../rules/plan-rule.ts';
import { RESERVED_NAMES, ruleNamed } from '../rules/registry.ts';
import type { EntryRef } from './entries.ts';
import { isShared } from './entry-kinds.ts';

const WITH_BENCH = ['lenses', 'lights', 'bodies', 'converters', 'close-up-lenses'] as const;

export function planView(
  file: FileId,
  shots: readonly ShotSummary[],
  entries: readonly EntryRef[],
  used: ReadonlySet<EntryId>,
  reader: PlanReader,
  of: Pick<PlanView, 'edit' | 'day'>,
): Omit<PlanView, 'unsure'> {
  const named = entries.flatMap(({ id, kind }) => {
    // Entries that shots and rigs can refer to; nothing has to refer to shots, cuts and clips.
    if (kind.kind !== 'entry' || !isShared(kind.home.group) || id !== plainId(id)) return [];
    const { noun } = ENTRIES[kind.home.group];
    return [{ id, name: kind.name, noun, used: used.has(id) }];
  });
  const allowed = [...(ifKnown(reader.plan('allow')) ?? [])].flatMap(([rule, field]) =>
    isJudged(rule) ? [{ rule, at: { ...field.at, part: 'key' as const } }] : [],
  );
  const carried = loadsOf(shots.map((shot) => shot.carried));
  const preflight = reader.plan('preflight');
  const benches = entries.flatMap(({ id, kind }) => {
    if (kind.kind !== 'entry' || id !== plainId(id)) return [];
    const group = WITH_BENCH.find((one) => one === kind.home.group);
    const entry: Named<object> | undefined = group && reader.find(group, kind.name);
    return (entry && benchReport(reader, entry)) ?? [];
  });
  return {
    file,
    shots,
    carried,
    entries: named,
    allow: allowed,
    preflight,
    benches,
    accepted: [],
    ...of,
  };
}

/** What only a request finds, or no rule finds any more, is not missed where it isn't found. */
const isJudged = (rule: string): boolean =>
  ruleNamed(rule)?.onRequest !== true && !RESERVED_NAMES.includes(rule);
