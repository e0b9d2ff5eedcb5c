/** The redacted report of a plan that is open, checked again as it is reported. */

import type { Core, CoreOptions } from '../shared/api/facade.ts';
import type { FileId } from '../shared/plan/place.ts';
import { redactedReport } from '../shared/report/redact/report.ts';

export interface AboutReport {
  readonly textDocument: { readonly uri: string };
  /** Program and version, platform, editor: one fact a line. */
  readonly facts: readonly string[];
}

/** A folder that is nowhere, deep enough for paths that climb. */
const NOWHERE = 'file:///a/b/c/d/e/f/';

/** null: the core was not given the plan. */
export function reportOf(
  core: Core,
  createCore: (options: CoreOptions) => Core,
  file: FileId,
  facts: readonly string[],
): string | null {
  const given = core.reaches(file).filter((each) => core.text(each) !== undefined);
  if (!given.includes(file)) return null;
  return redactedReport({
    facts,
    files: given.map((each) => ({ name: relativeTo(file, each), text: core.text(each)! })),
    rules: given.flatMap((each) => core.findings(each).map(({ rule }) => rule)),
    check(files) {
      const redacted = createCore({ rootOf: () => 'file:///' });
      const ids = files.map(({ name }) => new URL(name, NOWHERE).href);
      files.forEach(({ text }, index) => {
        redacted.give(ids[index]!, text);
      });
      for (const wanted of redacted.wanted(ids[0]!)) redacted.refuse(wanted, 'not-found');
      return ids.flatMap((id) => redacted.findings(id));
    },
  });
}

/** From the plan's folder to another file, as `use` would name it. */
function relativeTo(plan: FileId, file: FileId): string {
  const [from, to] = [plan, file].map((id) => decoded(id).split('/'));
  let same = 0;
  while (same < from!.length - 1 && from![same] === to![same]) same++;
  const up = Array.from({ length: from!.length - 1 - same }, () => '..');
  return [...up, ...to!.slice(same)].join('/');
}

function decoded(id: FileId): string {
  try {
    return decodeURI(id);
  } catch {
    return id;
  }
}
