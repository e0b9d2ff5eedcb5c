/** A plan against how it was before: texts of then from the client, who knows its repositories. */

import type { CancellationToken } from 'vscode-languageserver';
import type { ComparedPlan } from '../../shared/api/compared.ts';
import type { Core } from '../../shared/api/facade.ts';
import type { FileId } from '../../shared/plan/place.ts';
import { comparing } from '../../shared/report/compare/compare.ts';
import { comparisonDocument } from '../../shared/report/compare/document.ts';
import { markdownText } from '../../shared/report/document/markdown.ts';
import { Say } from '../../shared/say/say.ts';
import { canonicalUri } from '../canonical-uri.ts';
import type { Session } from '../session.ts';
import { inSlices } from '../slices.ts';

export interface CompareParams {
  readonly textDocument: { readonly uri: string };
  /** Text by URI as it was before; null: it was not there. */
  readonly before: Readonly<Record<string, string | null>>;
}

/** Answer to `lamella/compare`: the comparison, or the files of then that it still needs. */
export type ComparedBefore = { readonly wanted: readonly string[] } | { readonly markdown: string };

export async function compareBefore(
  session: Session,
  file: FileId,
  before: CompareParams['before'],
  token: CancellationToken,
): Promise<ComparedBefore | null> {
  const { core, createCore, roots, settings, standBack } = session;
  const old = createCore({
    rootOf: (each) => roots.of(each),
    otherRoots: (each) => roots.beside(each),
    get lengths() {
      return settings.lengths;
    },
  });
  const texts = new Map(Object.entries(before).map(([uri, text]) => [canonicalUri(uri), text]));
  if (!texts.has(file)) return { wanted: [file] };
  old.give(file, texts.get(file) ?? '');
  for (let wanted = old.wanted(file); wanted.length > 0; wanted = old.wanted(file)) {
    const unknown = wanted.filter((each) => !texts.has(each));
    if (unknown.length > 0) return { wanted: unknown };
    for (const each of wanted) {
      const text = texts.get(each);
      if (typeof text === 'string') old.give(each, text);
      else old.refuse(each, 'not-found');
    }
  }
  const made = async (of: Core): Promise<ComparedPlan | null> => {
    const making = of.startComparing(file);
    return (await inSlices((until) => making.work(until), token, standBack))?.answer ?? null;
  };
  // The present one last: it is about the text as it is then.
  const [then, now] = [await made(old), await made(core)];
  if (then === null || now === null) return null;
  const making = comparing(then, now);
  const comparison = await inSlices(
    (until) => {
      for (;;) {
        const { done, value } = making.next();
        if (done) return value;
        if (until()) return null;
      }
    },
    token,
    standBack,
  );
  if (comparison === null) return null;
  const say = new Say(() => settings.lengths);
  return { markdown: markdownText(comparisonDocument(comparison, say, 'page')) };
}
