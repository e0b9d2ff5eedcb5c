/** What the live sheet asks, and the page that it is saved as: `lamella/…`. */
import type { Connection, TextDocumentPositionParams, WorkspaceEdit } from 'vscode-languageserver';
import type { PageFrame } from '../shared/api/frame.ts';
import type { ShownAt } from '../shared/api/sheet.ts';
import type { Desk } from './desk.ts';
import { type FrameParams, shotFrame } from './handlers/frame.ts';
import {
  type LiveSheet,
  liveSheet,
  type PlaceParams,
  placeInSheet,
  type SetParams,
  type SheetParams,
  setInSheet,
  type TickParams,
  tickInSheet,
} from './handlers/sheet.ts';
import { type SheetPageParams, sheetPageOf } from './handlers/sheet-page.ts';

export function answerSheetRequests(connection: Connection, desk: Desk): void {
  connection.onRequest(
    'lamella/sheet',
    desk.about<SheetParams, LiveSheet | null>(null, (current, file, { known }, token) =>
      liveSheet(current, file, known, token),
    ),
  );
  connection.onRequest<PageFrame | null, never>(
    'lamella/frame',
    desk.about<FrameParams, PageFrame | null>(null, ({ core, standBack }, file, params, token) =>
      shotFrame(core, file, params, token, standBack),
    ),
  );
  connection.onRequest(
    'lamella/placeInSheet',
    desk.about(null, ({ core, documents }, file, params: PlaceParams) =>
      placeInSheet(core, documents, file, params),
    ),
  );
  connection.onRequest<WorkspaceEdit | null, never>(
    'lamella/setInSheet',
    desk.about<SetParams, WorkspaceEdit | null>(null, (current, file, params) =>
      setInSheet(current, file, params),
    ),
  );
  connection.onRequest<WorkspaceEdit | null, never>(
    'lamella/tickInSheet',
    desk.about<TickParams, WorkspaceEdit | null>(null, (current, file, params) =>
      tickInSheet(current, file, params),
    ),
  );
  connection.onRequest(
    'lamella/shotAt',
    desk.about(null, ({ core }, file, { position }: TextDocumentPositionParams) =>
      core.shotAt(file, position),
    ),
  );
  connection.onRequest<string | null, never>(
    'lamella/sheetPage',
    desk.about<SheetPageParams, string | null>(null, (current, file, params, token) =>
      sheetPageOf(current, file, params, token),
    ),
  );
  connection.onRequest<ShownAt | null, never>(
    'lamella/shownAt',
    desk.about<TextDocumentPositionParams, ShownAt | null>(null, ({ core }, file, { position }) =>
      core.shownAt(file, position),
    ),
  );
}
