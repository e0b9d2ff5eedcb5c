/** What this server offers to a client that can do what `client` says. */
import {
  CodeActionKind,
  PositionEncodingKind,
  type ServerCapabilities,
  TextDocumentSyncKind,
} from 'vscode-languageserver';
import type { ClientFeatures } from './client-features.ts';
import { TRIGGERS } from './handlers/completion.ts';
import { FIX_ALL } from './handlers/fix-all.ts';
import { LINE_BREAK } from './handlers/format.ts';
import { MOVED } from './handlers/moved-files.ts';
import { LEGEND } from './handlers/name-tokens.ts';

export const serverCapabilities = (client: ClientFeatures): ServerCapabilities => ({
  // Every client speaks UTF-16, whatever else it offers.
  positionEncoding: PositionEncodingKind.UTF16,
  textDocumentSync: {
    openClose: true,
    change: TextDocumentSyncKind.Incremental,
    save: { includeText: false },
  },
  completionProvider: {
    resolveProvider: true,
    triggerCharacters: TRIGGERS,
    completionItem: { labelDetailsSupport: true },
  },
  hoverProvider: true,
  inlayHintProvider: { resolveProvider: false },
  codeLensProvider: { resolveProvider: true },
  colorProvider: true,
  definitionProvider: true,
  referencesProvider: true,
  documentHighlightProvider: true,
  renameProvider: client.preparesRename ? { prepareProvider: true } : true,
  semanticTokensProvider: { legend: LEGEND, full: true, range: true },
  documentLinkProvider: {},
  documentFormattingProvider: true,
  documentRangeFormattingProvider: true,
  documentOnTypeFormattingProvider: { firstTriggerCharacter: LINE_BREAK },
  selectionRangeProvider: true,
  workspaceSymbolProvider: true,
  documentSymbolProvider: { label: 'Lamella' },
  ...(client.codeActions && {
    codeActionProvider: { codeActionKinds: [CodeActionKind.QuickFix, FIX_ALL] },
  }),
  ...(client.pullsDiagnostics && {
    diagnosticProvider: {
      identifier: 'lamella',
      interFileDependencies: true,
      workspaceDiagnostics: true,
    },
  }),
  ...((client.workspaceFolders || client.renamesFiles) && {
    workspace: {
      ...(client.workspaceFolders && {
        workspaceFolders: { supported: true, changeNotifications: true },
      }),
      ...(client.renamesFiles && { fileOperations: { willRename: MOVED, didRename: MOVED } }),
    },
  }),
});
