/** What Lamella's own editor asks beyond the protocol: `lamella/…`. */
import {
  type TextDocumentPositionParams,
  WorkDoneProgress,
  type WorkspaceEdit,
} from 'vscode-languageserver';
import type { PageFrame } from '../shared/api/frame.ts';
import type { TimelineFile } from '../shared/api/timeline.ts';
import { rulePage } from '../shared/report/rule-page.ts';
import { ruleNamed } from '../shared/rules/registry.ts';
import { canonicalUri } from './canonical-uri.ts';
import type { Desk } from './desk.ts';
import {
  type BringBackAnswer,
  type BringBackParams,
  bringBackAnswer,
} from './handlers/bring-back.ts';
import { type ClipsInEditor, type ClipsParams, clipsInEditor } from './handlers/clips.ts';
import { type ComparedBefore, type CompareParams, compareBefore } from './handlers/compare.ts';
import { type FrameParams, shotFrame } from './handlers/frame.ts';
import {
  canReadAnswer,
  type NewPlanParams,
  newPlanText,
  type SheetAnswerParams,
} from './handlers/new-plan.ts';
import {
  liveSheet,
  type PlaceParams,
  placeInSheet,
  type SetParams,
  type SheetParams,
  setInSheet,
} from './handlers/sheet.ts';
import { type SolveAnswer, type SolveParams, solveAnswer } from './handlers/solve.ts';
import { type TimelineParams, timelineFile } from './handlers/timeline.ts';
import type { CheckOptions } from './media/check-clips.ts';
import { type AboutReport, reportOf } from './report.ts';
import type { SessionOptions } from './session.ts';

export function answerOwnRequests({ connection, host }: SessionOptions, desk: Desk): void {
  connection.onRequest(
    'lamella/sheet',
    desk.about(null, ({ core, settings }, file, { known }: SheetParams) =>
      liveSheet(core, settings, file, known),
    ),
  );
  connection.onRequest<PageFrame | null, never>(
    'lamella/frame',
    desk.about<FrameParams, PageFrame | null>(null, ({ core }, file, params, token) =>
      shotFrame(core, file, params, token),
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
  connection.onRequest(
    'lamella/shotAt',
    desk.about(null, ({ core }, file, { position }: TextDocumentPositionParams) =>
      core.shotAt(file, position),
    ),
  );
  connection.onRequest<ComparedBefore | null, never>(
    'lamella/compare',
    desk.about<CompareParams, ComparedBefore | null>(null, (current, file, { before }) =>
      compareBefore(current, file, before),
    ),
  );
  connection.onRequest<BringBackAnswer | null, never>(
    'lamella/bringBack',
    desk.about<BringBackParams, BringBackAnswer | null>(null, bringBackAnswer),
  );
  connection.onRequest<ClipsInEditor | null, never>(
    'lamella/clips',
    desk.answer<ClipsParams, ClipsInEditor | null>(
      async (current, { textDocument: { uri }, workDoneToken }, token) => {
        const file = canonicalUri(uri);
        const { documents } = current;
        if (!documents.has(file) || documents.unread(file)) return null;
        await current.used.ready(file);
        const progress: CheckOptions['progress'] = (done, of, clip) => {
          if (workDoneToken === undefined) return;
          const message = `${done + 1} of ${of}: ${clip}`;
          void connection.sendProgress(WorkDoneProgress.type, workDoneToken, {
            kind: 'report',
            message,
          });
        };
        return clipsInEditor(current, host, file, token, progress);
      },
    ),
  );
  connection.onRequest<SolveAnswer | null, never>(
    'lamella/solve',
    desk.about<SolveParams, SolveAnswer | null>(
      null,
      ({ core, client, documents }, file, { shot }) =>
        solveAnswer(core, client, documents, file, shot),
    ),
  );
  connection.onRequest<TimelineFile | null, never>(
    'lamella/timeline',
    desk.about<TimelineParams, TimelineFile | null>(null, ({ core }, file, params) =>
      timelineFile(core, file, params),
    ),
  );
  connection.onRequest<string | null, never>(
    'lamella/newPlan',
    desk.answer<NewPlanParams, string | null>(({ createCore }, params) =>
      newPlanText(createCore, params),
    ),
  );
  connection.onRequest<boolean, never>(
    'lamella/sheetAnswer',
    desk.answer<SheetAnswerParams, boolean>((_, params) => canReadAnswer(params)),
  );
  connection.onRequest<string | null, never>(
    'lamella/rule',
    desk.answer<{ readonly rule: string }, string | null>((_, { rule }) => {
      const found = ruleNamed(rule);
      return found ? rulePage(found) : null;
    }),
  );
  connection.onRequest(
    'lamella/report',
    desk.about<AboutReport, string | null>(null, (current, file, { facts }) =>
      reportOf(current.core, current.createCore, file, facts),
    ),
  );
}
