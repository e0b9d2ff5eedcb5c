/** Where names are defined and used, and what another name would change. */
import {
  type DocumentHighlight,
  DocumentHighlightKind,
  type DocumentLink,
  ErrorCodes,
  type Location,
  type Position,
  ResponseError,
  type SelectionRange,
  SymbolKind,
  type WorkspaceEdit,
  type WorkspaceSymbol,
} from 'vscode-languageserver';
import type { Core } from '../../shared/api/facade.ts';
import type { LocatedPlace } from '../../shared/api/located.ts';
import type { FileId } from '../../shared/plan/place.ts';
import { inertLine } from '../../shared/report/inert.ts';
import type { ClientFeatures } from '../client-features.ts';
import type { Documents } from '../workspace/documents.ts';
import { workspaceEdit } from './workspace-edit.ts';

const location = (documents: Documents, { file, range }: LocatedPlace): Location => ({
  uri: documents.uri(file),
  range,
});

export function definition(
  core: Core,
  documents: Documents,
  file: FileId,
  position: Position,
): Location | null {
  const found = core.definition(file, position);
  return found && location(documents, found);
}

export function references(
  core: Core,
  documents: Documents,
  file: FileId,
  position: Position,
  withDefinition: boolean,
): Location[] {
  const found = core.references(file, position);
  return found.slice(withDefinition ? 0 : 1).map((place) => location(documents, place));
}

export const highlights = (core: Core, file: FileId, position: Position): DocumentHighlight[] =>
  core.references(file, position).flatMap((place, index) =>
    place.file === file
      ? [
          {
            range: place.range,
            kind: index === 0 ? DocumentHighlightKind.Write : DocumentHighlightKind.Read,
          },
        ]
      : [],
  );

export const links = (core: Core, documents: Documents, file: FileId): DocumentLink[] =>
  core.links(file).map(({ range, file: target }) => ({ range, target: documents.uri(target) }));

export function prepareRename(core: Core, file: FileId, position: Position) {
  const found = core.renamable(file, position);
  return found && { range: found.range, placeholder: found.name };
}

export function rename(
  core: Core,
  client: ClientFeatures,
  documents: Documents,
  file: FileId,
  { position, newName }: { position: Position; newName: string },
): WorkspaceEdit | ResponseError {
  const renaming = core.rename(file, position, newName);
  return renaming.ok
    ? workspaceEdit(renaming.edits, client, documents)
    : new ResponseError(ErrorCodes.InvalidRequest, inertLine(renaming.why));
}

export const selections = (core: Core, file: FileId, positions: readonly Position[]) =>
  positions.map((position): SelectionRange => {
    const ranges = core.selection(file, position);
    const nested = ranges.reduceRight<SelectionRange | undefined>(
      (parent, range) => ({ range, ...(parent && { parent }) }),
      undefined,
    );
    return nested ?? { range: { start: position, end: position } };
  });

export const entries = (core: Core, documents: Documents, query: string): WorkspaceSymbol[] =>
  core.findEntries(query).map((found) => ({
    name: found.name,
    kind: SymbolKind.Struct,
    containerName: found.noun,
    location: location(documents, found),
  }));
