/** What an editor asks while a plan is written: completion, hover, navigation, fixes, findings. */
import { type Connection, ErrorCodes, LSPErrorCodes } from 'vscode-languageserver';
import { workAhead } from './ahead.ts';
import { canonicalUri } from './canonical-uri.ts';
import { type Desk, failure } from './desk.ts';
import { actions } from './handlers/actions.ts';
import { colours } from './handlers/colours.ts';
import { completion, resolveCompletion } from './handlers/completion.ts';
import { format, formatOnType, formatRange } from './handlers/format.ts';
import { hints } from './handlers/hints.ts';
import { hover } from './handlers/hover.ts';
import { lenses, resolveLens } from './handlers/lenses.ts';
import { editsForMoved } from './handlers/moved-files.ts';
import { tokens } from './handlers/name-tokens.ts';
import {
  definition,
  entries,
  highlights,
  links,
  prepareRename,
  references,
  rename,
  selections,
} from './handlers/navigation.ts';
import { symbols } from './handlers/symbols.ts';
import type { Host } from './host.ts';

export function answerWhileWriting(connection: Connection, desk: Desk): void {
  connection.onCompletion(
    desk.about({ isIncomplete: false, items: [] }, ({ core, client }, file, { position }) =>
      completion(core, client, file, position),
    ),
  );
  connection.onCompletionResolve(
    desk.answer(({ core, client }, item) => resolveCompletion(core, client, item)),
  );
  connection.onHover(
    desk.about(null, ({ core, client, standBack }, file, { position }, token) =>
      hover(core, client, file, position, token, standBack),
    ),
  );
  connection.languages.inlayHint.on(
    desk.about([], ({ core, settings }, file, { range }) => hints(core, settings, file, range)),
  );
  connection.onCodeLens(
    desk.about([], ({ core, settings }, file) => (settings.showsLenses ? lenses(core, file) : [])),
  );
  connection.onCodeLensResolve(desk.answer((session, lens) => resolveLens(session, lens)));
  connection.onDocumentColor(desk.about([], ({ core }, file) => colours(core, file)));
  // A colour can't be chosen: it follows from the thickness.
  connection.onColorPresentation(() => []);
  connection.onDocumentFormatting(
    desk.about([], ({ core, settings }, file, { options }) =>
      format(core, settings, file, options),
    ),
  );
  connection.onDocumentRangeFormatting(
    desk.about([], ({ core, settings }, file, { range, options }) =>
      formatRange(core, settings, file, range, options),
    ),
  );
  connection.onDocumentOnTypeFormatting(
    desk.about([], ({ core }, file, { position }) => formatOnType(core, file, position)),
  );
  connection.onCodeAction(
    desk.about([], (current, file, params, token) => actions(current, file, params, token)),
  );
}

export function answerWhereThingsAre(connection: Connection, host: Host, desk: Desk): void {
  connection.workspace.onWillRenameFiles(
    desk.answer((current, { files }) => editsForMoved(current, host, files)),
  );
  connection.onDefinition(
    desk.about(null, ({ core, documents }, file, { position }) =>
      definition(core, documents, file, position),
    ),
  );
  connection.onReferences(
    desk.about([], ({ core, documents }, file, { position, context }) =>
      references(core, documents, file, position, context.includeDeclaration),
    ),
  );
  connection.onDocumentHighlight(
    desk.about([], ({ core }, file, { position }) => highlights(core, file, position)),
  );
  connection.onDocumentLinks(
    desk.about([], ({ core, documents }, file) => links(core, documents, file)),
  );
  connection.onPrepareRename(
    desk.about(null, ({ core }, file, { position }) => prepareRename(core, file, position)),
  );
  connection.onRenameRequest(
    desk.about(null, ({ core, client, documents }, file, params) =>
      rename(core, client, documents, file, params),
    ),
  );
  connection.onSelectionRanges(
    desk.about([], ({ core }, file, { positions }) => selections(core, file, positions)),
  );
  connection.onWorkspaceSymbol(
    desk.answer(({ core, documents }, { query }) => entries(core, documents, query)),
  );
  connection.languages.semanticTokens.on(
    desk.about({ data: [] }, ({ core }, file) => tokens(core, file)),
  );
  connection.languages.semanticTokens.onRange(
    desk.about({ data: [] }, ({ core }, file, { range }) => tokens(core, file, range)),
  );
  connection.onDocumentSymbol(
    desk.about([], ({ core, client }, file, { textDocument }) =>
      symbols(core, client, file, textDocument.uri),
    ),
  );
}

export function answerWithFindings(connection: Connection, desk: Desk): void {
  connection.languages.diagnostics.on(
    desk.answer(
      async ({ core, pulled, used }, { textDocument: { uri }, previousResultId }, token) => {
        if (!pulled) return failure(ErrorCodes.MethodNotFound, 'Findings are sent.');
        const file = canonicalUri(uri);
        await used.ready(file);
        await workAhead(core, file, () => token.isCancellationRequested);
        if (token.isCancellationRequested)
          return failure(LSPErrorCodes.RequestCancelled, 'cancelled');
        return pulled.document(uri, previousResultId);
      },
    ),
  );
  connection.languages.diagnostics.onWorkspace(
    desk.answer(({ pulled }, { previousResultIds }, token) =>
      pulled
        ? pulled.workspace(previousResultIds, token)
        : failure(ErrorCodes.MethodNotFound, 'Findings are sent.'),
    ),
  );
}
