/** What stands behind the braces in the status bar: whether the server works, and what it has read. */
import {
  type Disposable,
  type LanguageStatusItem,
  LanguageStatusSeverity,
  l10n,
  languages,
  window,
} from 'vscode';
import {
  type BaseLanguageClient,
  type Disposable as Listening,
  State,
} from 'vscode-languageclient';
import { LANGUAGE } from './documents.ts';
import type { PlanState, PlanStates } from './plan-states.ts';

export class LanguageStatus implements Disposable {
  readonly #client: BaseLanguageClient;
  readonly #server: LanguageStatusItem;
  readonly #listening: readonly (Disposable | Listening)[];
  readonly #states = new Map<string, PlanState>();

  constructor(client: BaseLanguageClient, states: PlanStates) {
    this.#client = client;
    this.#server = languages.createLanguageStatusItem('lamella.server', { language: LANGUAGE });
    this.#server.name = l10n.t('Lamella: Language Server');
    this.#listening = [
      client.onDidChangeState(({ newState }) => this.#show(newState)),
      window.onDidChangeActiveTextEditor(() => this.#show(client.state)),
      states.onSaid((state) => {
        this.#states.set(state.uri.toString(), state);
        this.#show(State.Running);
      }),
    ];
    this.#show(State.Starting);
  }

  dispose(): void {
    for (const one of this.#listening) one.dispose();
    this.#server.dispose();
  }

  #show(state: State): void {
    const item = this.#server;
    item.busy = state === State.Starting;
    if (state === State.Running) {
      const version = this.#client.initializeResult?.serverInfo?.version ?? '';
      item.text = l10n.t('Lamella {0} is running', version);
      item.detail = this.#readWords();
      item.severity = LanguageStatusSeverity.Information;
      item.command = { command: 'lamella.showLog', title: l10n.t('Show Log') };
      return;
    }
    this.#states.clear();
    item.text = item.busy ? l10n.t('Lamella is starting') : l10n.t('Lamella has stopped');
    item.detail = item.busy ? '' : l10n.t('Plans are not checked.');
    item.severity = item.busy ? LanguageStatusSeverity.Information : LanguageStatusSeverity.Error;
    item.command = { command: 'lamella.restart', title: l10n.t('Restart') };
  }

  #readWords(): string {
    const shown = window.activeTextEditor?.document.uri.toString() ?? '';
    const { files = 0, day } = this.#states.get(shown) ?? {};
    const read = files === 1 ? l10n.t('{0} file read', files) : l10n.t('{0} files read', files);
    const days = day
      ? [l10n.t('{0}: {1} of {2} shots recorded', day.date, day.kept, day.shots)]
      : [];
    return [files > 0 ? read : '', ...days].filter((words) => words !== '').join(' · ');
  }
}
