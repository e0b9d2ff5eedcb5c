import { Disposable, l10n, StatusBarAlignment, window } from 'vscode';
import { LANGUAGE } from './documents.ts';
import type { PlanState, PlanStates } from './plan-states.ts';

/** "3 of 4 shots clear" for the plan in the active editor; hidden where there is none. */
export class StatusItem implements Disposable {
  readonly #item = window.createStatusBarItem('lamella.shots', StatusBarAlignment.Right, 100);
  readonly #states = new Map<string, PlanState>();
  readonly #editors = window.onDidChangeActiveTextEditor(() => this.#show());

  constructor() {
    this.#item.name = l10n.t('Lamella: Shots Clear');
    this.#item.command = 'workbench.actions.view.problems';
  }

  follow(states: PlanStates): Disposable {
    return states.onSaid((state) => {
      this.#states.set(state.uri.toString(), state);
      this.#show();
    });
  }

  /** What the server said is void once it is stopped. */
  forget(): void {
    this.#states.clear();
    this.#show();
  }

  dispose(): void {
    Disposable.from(this.#editors, this.#item).dispose();
  }

  #show(): void {
    const document = window.activeTextEditor?.document;
    const state = document && this.#states.get(document.uri.toString());
    if (document?.languageId !== LANGUAGE || !state) {
      this.#item.hide();
      return;
    }
    const { ready, shots, errors = 0, takesToGo } = state;
    const sign = errors > 0 ? '$(error)' : ready < shots ? '$(warning)' : '$(pass)';
    const found = errors === 0 ? '' : ` · ${errorWording(errors)}`;
    const takes = takesToGo === undefined ? '' : ` · ${takeWording(takesToGo)}`;
    this.#item.text = `${sign} ${wording(ready, shots)}${found}${takes}`;
    this.#item.tooltip = l10n.t(
      'A shot is clear when it has no errors or warnings, lists its checks, and its depth of field and exposure are known. Click to see the findings.',
    );
    this.#item.show();
  }
}

const errorWording = (errors: number): string =>
  errors === 1 ? l10n.t('{0} error', errors) : l10n.t('{0} errors', errors);

const takeWording = (toGo: number): string =>
  toGo === 1 ? l10n.t('{0} take to go', toGo) : l10n.t('{0} takes to go', toGo);

const wording = (ready: number, shots: number): string =>
  shots === 0
    ? l10n.t('No shots yet')
    : shots === 1
      ? l10n.t('{0} of {1} shot clear', ready, shots)
      : l10n.t('{0} of {1} shots clear', ready, shots);
