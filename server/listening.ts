/** What a client tells: texts that are opened, changed and closed, files and settings that change. */
import {
  type Connection,
  DidChangeConfigurationNotification,
  DidChangeWatchedFilesNotification,
  FileChangeType,
} from 'vscode-languageserver';
import { canonicalUri } from './canonical-uri.ts';
import type { Desk } from './desk.ts';
import type { Session } from './session.ts';
import type { SentSettings } from './settings.ts';

export function listenToTexts(connection: Connection, desk: Desk): void {
  connection.onDidOpenTextDocument(
    desk.heard((current, { textDocument: { uri, version: number, text } }) => {
      // Kept, it would stop what is said of all the others.
      if (typeof uri !== 'string' || typeof text !== 'string')
        throw new TypeError('A text was opened without its address or its words: left out.');
      const file = canonicalUri(uri);
      current.used.opened(file);
      try {
        current.documents.open(uri, number, text);
      } finally {
        current.changed(file, true);
      }
      if (!current.client.registersWatchers) current.used.changedPerhaps();
    }),
  );
  connection.onDidChangeTextDocument(
    desk.heard((current, { textDocument: { uri, version: number }, contentChanges }) => {
      const file = canonicalUri(uri);
      if (!current.documents.has(file)) {
        connection.console.warn(`Change of ${uri}, which isn't open: left out.`);
        return;
      }
      try {
        current.documents.change(uri, number, contentChanges);
      } finally {
        current.changed(file, true);
      }
    }),
  );
  connection.onDidCloseTextDocument(
    desk.heard((current, { textDocument: { uri } }) => current.closed(canonicalUri(uri))),
  );
  connection.onDidSaveTextDocument(
    desk.heard((current) => {
      if (!current.client.registersWatchers) current.used.changedPerhaps();
    }),
  );
}

export function listenToFilesAndSettings(connection: Connection, desk: Desk): void {
  connection.onDidChangeWatchedFiles(
    desk.heard((current, { changes }) => {
      for (const { uri } of changes) current.used.changed(canonicalUri(uri));
      if (changes.some(({ type }) => type !== FileChangeType.Changed)) current.listPlans();
    }),
  );
  connection.workspace.onDidRenameFiles(
    desk.heard((current) => {
      // A folder is named alone, and the plans that use what is in it were changed before it moved.
      current.used.changedPerhaps();
      current.listPlans();
    }),
  );
  connection.onDidChangeConfiguration(
    desk.heard((current, { settings }) => {
      if (current.client.answersSettings) askSettings(connection, current);
      else if (current.settings.change(settings?.lamella)) current.changedAll();
    }),
  );
}

/** What the client offers to be asked for beyond the start. */
export function register(connection: Connection, session: Session): void {
  const { client } = session;
  const attempt = (work: Promise<unknown>): void =>
    void work.catch((cause: unknown) => session.log(cause));
  if (client.workspaceFolders)
    connection.workspace.onDidChangeWorkspaceFolders(({ added, removed }) => {
      session.roots.change(
        added.map(({ uri }) => uri),
        removed.map(({ uri }) => uri),
      );
      session.core.rootsChanged();
      session.changedAll();
    });
  if (client.registersWatchers)
    attempt(
      connection.client.register(DidChangeWatchedFilesNotification.type, {
        watchers: [{ globPattern: '**/*.shootplan.yaml' }],
      }),
    );
  if (client.registersSettings)
    attempt(
      connection.client.register(DidChangeConfigurationNotification.type, { section: 'lamella' }),
    );
  if (client.answersSettings) askSettings(connection, session);
}

function askSettings(connection: Connection, session: Session): void {
  connection.workspace.getConfiguration('lamella').then(
    (lamella: SentSettings | null) => {
      if (session.settings.change(lamella)) session.changedAll();
    },
    (cause: unknown) => session.log(cause),
  );
}
