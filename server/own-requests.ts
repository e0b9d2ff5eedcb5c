/** What Lamella's own editor asks beyond the protocol: `lamella/…`. */
import { WorkDoneProgress } from 'vscode-languageserver';
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
import {
  type CheckedFolder,
  type CheckFolderParams,
  checkFolder,
} from './handlers/check-folder.ts';
import { type ClipsInEditor, type ClipsParams, clipsInEditor } from './handlers/clips.ts';
import { type ComparedBefore, type CompareParams, compareBefore } from './handlers/compare.ts';
import {
  type DropClipsAnswer,
  type DropClipsParams,
  dropClipsAnswer,
} from './handlers/drop-clips.ts';
import {
  canReadAnswer,
  type NewPlanParams,
  newPlanText,
  type SheetAnswerParams,
} from './handlers/new-plan.ts';
import { type SolveAnswer, type SolveParams, solveAnswer } from './handlers/solve.ts';
import { type SolvedPartly, type SolvePartlyParams, solvePartly } from './handlers/solve-partly.ts';
import { type TimelineParams, timelineFile } from './handlers/timeline.ts';
import { progressWords } from './looking/progress-words.ts';
import type { CheckOptions } from './media/check-clips.ts';
import { type AboutReport, reportOf } from './report.ts';
import type { SessionOptions } from './session.ts';
import { answerSheetRequests } from './sheet-requests.ts';

export function answerOwnRequests({ connection, host }: SessionOptions, desk: Desk): void {
  answerSheetRequests(connection, desk);
  connection.onRequest<ComparedBefore | null, never>(
    'lamella/compare',
    desk.about<CompareParams, ComparedBefore | null>(null, (current, file, { before }, token) =>
      compareBefore(current, file, before, token),
    ),
  );
  connection.onRequest<BringBackAnswer | null, never>(
    'lamella/bringBack',
    desk.about<BringBackParams, BringBackAnswer | null>(null, bringBackAnswer),
  );
  connection.onRequest<ClipsInEditor | null, never>(
    'lamella/clips',
    desk.answer<ClipsParams, ClipsInEditor | null>(
      async (current, { textDocument: { uri }, workDoneToken, look = false }, token) => {
        const file = canonicalUri(uri);
        const { documents } = current;
        if (!documents.has(file) || documents.unread(file)) return null;
        await current.used.ready(file);
        const progress: CheckOptions['progress'] = (done, of, clip, looked) => {
          if (workDoneToken === undefined) return;
          const message = progressWords(done, of, clip, looked);
          void connection.sendProgress(WorkDoneProgress.type, workDoneToken, {
            kind: 'report',
            message,
          });
        };
        return clipsInEditor(current, host, file, look, token, progress);
      },
    ),
  );
  connection.onRequest<SolveAnswer | null, never>(
    'lamella/solve',
    desk.about<SolveParams, SolveAnswer | null>(null, (current, file, { shot }, token) =>
      solveAnswer(current, file, shot, token),
    ),
  );
  connection.onRequest<SolvedPartly | null, never>(
    'lamella/solvePartly',
    desk.about<SolvePartlyParams, SolvedPartly | null>(null, solvePartly),
  );
  connection.onRequest<CheckedFolder | null, never>(
    'lamella/check',
    desk.answer<CheckFolderParams, CheckedFolder | null>((current, params, token) =>
      checkFolder(current, host, params, token),
    ),
  );
  connection.onRequest<DropClipsAnswer | null, never>(
    'lamella/dropClips',
    desk.about<DropClipsParams, DropClipsAnswer | null>(null, dropClipsAnswer),
  );
  connection.onRequest<TimelineFile | null, never>(
    'lamella/timeline',
    desk.about<TimelineParams, TimelineFile | null>(null, (current, file, params, token) =>
      timelineFile(current, host, file, params, token),
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
