/** Lenses over shots: where they stand at once, their words for those that are shown. */
import type { CodeLens } from 'vscode-languageserver';
import type { Core } from '../../shared/api/facade.ts';
import type { FileId } from '../../shared/plan/place.ts';
import { inertLine } from '../../shared/report/inert.ts';
import { message } from '../../shared/words/message.ts';
import type { Session } from '../session.ts';

/** What a lens carries until it is shown. */
interface Carried {
  readonly file: FileId;
  readonly shot: string;
}

export const lenses = (core: Core, file: FileId): CodeLens[] =>
  core.lenses(file).map(({ shot, range }) => {
    const data: Carried = { file, shot };
    return { range, data };
  });

/** A click opens the sheet at the shot where the client has one; to others a lens is words alone. */
export function resolveLens(
  { core, client, documents, settings }: Session,
  lens: CodeLens,
): CodeLens {
  const { file, shot } = (lens.data ?? {}) as Partial<Carried>;
  if (typeof file !== 'string' || typeof shot !== 'string' || !documents.has(file)) return lens;
  const words = core.lensWords(file, shot, settings.lensesLeftOut);
  if (words === null) return lens;
  const title = words === '' ? message`nothing to say` : inertLine(words);
  const command = client.showsSheets
    ? {
        title,
        tooltip: inertLine(message`Show the sheet at ${shot}`),
        command: 'lamella.openSheet',
        arguments: [{ uri: documents.uri(file), shot }],
      }
    : { title, command: '' };
  return { ...lens, command };
}
