/** The sheets that are open beside their plans, and their pages as files. */
import {
  Disposable,
  type ExtensionContext,
  l10n,
  Uri,
  type WebviewPanel,
  window,
  workspace,
} from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { LANGUAGE } from './documents.ts';
import { Initials } from './initials.ts';
import { OpenSheet, SHEET_VIEW } from './open-sheet.ts';
import { printSheet, saveSheet } from './sheet-file.ts';

export interface ShotToShow {
  /** As the server writes it. */
  readonly uri: string;
  readonly shot: string;
}

/** Sheets that are open, by the plan that they show. */
export class Sheets implements Disposable {
  readonly #context: ExtensionContext;
  readonly #client: BaseLanguageClient;
  readonly #open = new Map<string, OpenSheet>();
  readonly #initials = new Initials();
  readonly #parts: Disposable;

  constructor(context: ExtensionContext, client: BaseLanguageClient) {
    this.#context = context;
    this.#client = client;
    this.#parts = Disposable.from(
      client.onNotification('lamella/recalculated', () => {
        for (const sheet of this.#open.values()) sheet.update();
      }),
      window.registerWebviewPanelSerializer(SHEET_VIEW, {
        deserializeWebviewPanel: (panel, state: unknown) => this.#restore(panel, state),
      }),
    );
  }

  /**
   * Of the plan in the active editor; one that is open already is brought to the front.
   * @param shot left out: the sheet stays where it is
   */
  readonly show = async (shot?: ShotToShow): Promise<void> => {
    const plan = shot ? this.#client.protocol2CodeConverter.asUri(shot.uri) : activePlan();
    if (!plan || (await languageOf(plan)) !== LANGUAGE) {
      void window.showInformationMessage(l10n.t('Open a shoot plan first.'));
      return;
    }
    const open = this.#open.get(plan.toString());
    open?.reveal();
    const sheet = open ?? this.#add(plan);
    if (shot) await sheet.goTo(shot.shot);
  };

  readonly save = (): Promise<void> =>
    this.#withPlan((plan) => saveSheet(this.#context, this.#client, plan));

  readonly print = (): Promise<void> =>
    this.#withPlan((plan) => printSheet(this.#context, this.#client, plan));

  /** Of the sheet or the plan that is in front. */
  async #withPlan(work: (plan: Uri) => Promise<void>): Promise<void> {
    const inFront = [...this.#open.values()].find(({ isActive }) => isActive);
    const plan = inFront?.plan ?? activePlan();
    if (plan) await work(plan);
    else void window.showInformationMessage(l10n.t('Open a shoot plan first.'));
  }

  #add(plan: Uri, panel?: WebviewPanel): OpenSheet {
    const key = plan.toString();
    const sheet = new OpenSheet(this.#context, this.#client, plan, this.#initials, panel);
    this.#open.set(key, sheet);
    sheet.onClosed(() => this.#open.delete(key));
    return sheet;
  }

  /** A sheet that was open when the window was closed; `state` is what its page left. */
  async #restore(panel: WebviewPanel, state: unknown): Promise<void> {
    const plan = planIn(state);
    // The server knows only what is open; a plan that went away has no sheet.
    const isPlan = plan !== null && (await languageOf(plan)) === LANGUAGE;
    if (!isPlan || this.#open.has(plan.toString())) panel.dispose();
    else this.#add(plan, panel);
  }

  dispose(): void {
    this.#parts.dispose();
    for (const sheet of this.#open.values()) sheet.dispose();
  }
}

const activePlan = (): Uri | undefined => {
  const document = window.activeTextEditor?.document;
  return document?.languageId === LANGUAGE ? document.uri : undefined;
};

/** undefined: it can't be opened. */
const languageOf = async (uri: Uri): Promise<string | undefined> => {
  try {
    return (await workspace.openTextDocument(uri)).languageId;
  } catch {
    return undefined;
  }
};

function planIn(state: unknown): Uri | null {
  if (typeof state !== 'object' || state === null || !('plan' in state)) return null;
  const { plan } = state;
  return typeof plan === 'string' && plan !== '' ? Uri.parse(plan) : null;
}
