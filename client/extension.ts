/**
 * What both hosts share: the language client with its commands and its status item. The hosts
 * differ only in how a server is started, which node.ts and browser.ts bring.
 */
import { commands, type ExtensionContext, window, workspace } from 'vscode';
import type { BaseLanguageClient, LanguageClientOptions } from 'vscode-languageclient';
import { bringBack } from './bring-back.ts';
import { checksFolders } from './check-task.ts';
import { ClipFindings } from './clips.ts';
import { compareWithCommit } from './compare.ts';
import { documentSelector } from './documents.ts';
import { takesClips } from './drop-clips.ts';
import { LanguageStatus } from './language-status.ts';
import { answerPlanFiles } from './list-plans.ts';
import { openNewPlan } from './new-plan.ts';
import { Pages } from './pages.ts';
import { PlanStates } from './plan-states.ts';
import { answerFileReads } from './read-file.ts';
import { copyReport } from './report.ts';
import { keepErrorsInLog, RestartUnlessHopeless } from './restarts.ts';
import { RULE_PAGE, showsRules } from './rule-pages.ts';
import { openSample } from './samples.ts';
import { Sheets, type ShotToShow } from './sheet.ts';
import { type ShotToSolve, solveShot } from './solve.ts';
import { SolvePreview } from './solve-preview.ts';
import { StatusItem } from './status.ts';
import { Swatches } from './swatches.ts';
import { exportTimeline } from './timeline.ts';
import { translationFor } from './translation.ts';

/** Also the prefix of the settings: the client reads `lamella.trace.server` by it. */
export const CLIENT_ID = 'lamella';
export const CLIENT_NAME = 'Lamella';

/** Settings of how things are shown; the server asks for them again when they change. */
const SHOWN = ['lengths', 'codeLens', 'codeLenses', 'hints', 'align'];

/** A copy: the editor's own objects can't be sent to a worker. */
function shownSettings(): object {
  const settings = workspace.getConfiguration('lamella');
  return JSON.parse(
    JSON.stringify(Object.fromEntries(SHOWN.map((name) => [name, settings.get(name)]))),
  );
}

type ClientFactory = (options: LanguageClientOptions) => BaseLanguageClient;

/** Starts the client; resolves when the server has answered, or the start has failed. */
export const start = async (
  context: ExtensionContext,
  createClient: ClientFactory,
): Promise<BaseLanguageClient> => {
  const log = window.createOutputChannel(CLIENT_NAME, { log: true });
  const status = new StatusItem();
  const restarts = new RestartUnlessHopeless(CLIENT_NAME);
  const swatches = new Swatches();
  const client = createClient({
    documentSelector: documentSelector(),
    outputChannel: log,
    errorHandler: restarts,
    middleware: { provideDocumentColors: swatches.provideDocumentColors },
    // Said by `restarts`, once, where it comes to nothing.
    initializationFailedHandler: () => false,
    // Watching plans and the settings is asked for by the server, once it is up.
    initializationOptions: {
      ...shownSettings(),
      rulePage: RULE_PAGE,
      state: true,
      solving: true,
      sheets: true,
      images: true,
      asksAgain: true,
      listsPlans: true,
      translation: await translationFor(context.extensionUri, log),
    },
  });
  keepErrorsInLog(client);
  const states = new PlanStates(client);
  const sheets = new Sheets(context, client);
  const pages = new Pages();
  const clips = new ClipFindings();
  const solving = new SolvePreview();
  context.subscriptions.push(
    log,
    sheets,
    status,
    swatches,
    states,
    states.onSaid(() => restarts.worked()),
    status.follow(states),
    new LanguageStatus(client, states),
    answerFileReads(client),
    answerPlanFiles(client),
    commands.registerCommand('lamella.newPlan', () => openNewPlan(client)),
    commands.registerCommand('lamella.openSample', () => openSample(context.extensionUri)),
    commands.registerCommand('lamella.openSheet', (shot?: ShotToShow) => sheets.show(shot)),
    commands.registerCommand('lamella.saveSheet', sheets.save),
    commands.registerCommand('lamella.printSheet', sheets.print),
    workspace.registerTextDocumentContentProvider(Pages.scheme, pages),
    clips,
    showsRules(client, pages),
    takesClips(client),
    checksFolders(client),
    commands.registerCommand('lamella.compareWithCommit', () => compareWithCommit(client, pages)),
    commands.registerCommand('lamella.checkClips', () => clips.check(client, pages)),
    commands.registerCommand('lamella.lookAtClips', () => clips.check(client, pages, true)),
    commands.registerCommand('lamella.bringBack', () => bringBack(client, pages)),
    workspace.registerTextDocumentContentProvider(SolvePreview.scheme, solving),
    commands.registerCommand('lamella.solveShot', (shot?: ShotToSolve) =>
      solveShot(client, solving, shot),
    ),
    commands.registerCommand('lamella.exportTimeline', () => exportTimeline(client)),
    commands.registerCommand('lamella.copyReport', () => copyReport(context, client)),
    commands.registerCommand('lamella.showLog', () => log.show()),
    commands.registerCommand('lamella.restart', async () => {
      status.forget();
      restarts.startedByHand();
      // One that never came up can't be stopped, only started.
      await client.stop().catch(() => undefined);
      await restarts.start(client);
    }),
  );
  await restarts.start(client);
  return client;
};
