/**
 * What both hosts share: the language client with its commands and its status item. The hosts
 * differ only in how a server is started, which node.ts and browser.ts bring.
 */
import { commands, type ExtensionContext, window, workspace } from 'vscode';
import type { BaseLanguageClient, LanguageClientOptions } from 'vscode-languageclient';
import { compareWithCommit } from './compare.ts';
import { documentSelector } from './documents.ts';
import { openNewPlan } from './new-plan.ts';
import { Pages } from './pages.ts';
import { answerFileReads, answerPlanFiles } from './read-file.ts';
import { copyReport } from './report.ts';
import { RestartUnlessHopeless } from './restarts.ts';
import { type ShotToSettle, settleShot } from './settle.ts';
import { Sheets, type ShotToShow } from './sheet.ts';
import { StatusItem } from './status.ts';
import { exportTimeline } from './timeline.ts';
import { ClipFindings } from './verify.ts';

/** Also the prefix of the settings: the client reads `lamella.trace.server` by it. */
export const CLIENT_ID = 'lamella';
export const CLIENT_NAME = 'Lamella';

export type ClientFactory = (options: LanguageClientOptions) => BaseLanguageClient;

/** Starts the client; resolves when the server has answered. Disposed of with the context. */
export const start = async (
  context: ExtensionContext,
  createClient: ClientFactory,
): Promise<BaseLanguageClient> => {
  const log = window.createOutputChannel(CLIENT_NAME, { log: true });
  const status = new StatusItem();
  const client = createClient({
    documentSelector: documentSelector(),
    outputChannel: log,
    errorHandler: new RestartUnlessHopeless(CLIENT_NAME),
    // Watching plans and the settings is asked for by the server, once it is up.
    initializationOptions: {
      lengths: workspace.getConfiguration('lamella').get('lengths'),
      lenses: workspace.getConfiguration('lamella').get('lenses'),
      state: true,
      settling: true,
      sheets: true,
      asksAgain: true,
      listsPlans: true,
    },
  });
  const sheets = new Sheets(context, client);
  const pages = new Pages();
  const clips = new ClipFindings();
  context.subscriptions.push(
    log,
    sheets,
    status,
    status.follow(client),
    answerFileReads(client),
    answerPlanFiles(client),
    commands.registerCommand('lamella.newPlan', () => openNewPlan(client)),
    commands.registerCommand('lamella.openSheet', (shot?: ShotToShow) => sheets.show(shot)),
    workspace.registerTextDocumentContentProvider(Pages.scheme, pages),
    clips,
    commands.registerCommand('lamella.compareWithCommit', () => compareWithCommit(client, pages)),
    commands.registerCommand('lamella.verifyClips', () => clips.verify(client, pages)),
    commands.registerCommand('lamella.settleShot', (shot?: ShotToSettle) =>
      settleShot(client, shot),
    ),
    commands.registerCommand('lamella.exportTimeline', () => exportTimeline(client)),
    commands.registerCommand('lamella.copyReport', () => copyReport(context, client)),
    commands.registerCommand('lamella.showLog', () => log.show()),
    commands.registerCommand('lamella.restart', async () => {
      status.forget();
      await client.stop();
      await client.start();
    }),
  );
  await client.start();
  return client;
};
