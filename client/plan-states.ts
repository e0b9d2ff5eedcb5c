import { Disposable, EventEmitter, type Uri } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';

export interface PlanState {
  readonly uri: Uri;
  /** As the sheet and `lamella check` count them. */
  readonly ready: number;
  readonly shots: number;
  /** Errors in the plan's text; left out: none. */
  readonly errors?: number;
  /** Files that stand behind it: the plan, and what it uses. */
  readonly files: number;
  /** Shots of the plan's day, and how many have all their takes; left out: it has no day. */
  readonly day?: { readonly date: string; readonly shots: number; readonly kept: number };
  /** Planned takes that aren't kept yet; left out: the plan lists no clips. */
  readonly takesToGo?: number;
}

/**
 * What the server says of a plan after a check, where that is new. The language client hands a
 * notification to the last who asked for it only, so all who want this one listen here.
 */
export class PlanStates implements Disposable {
  readonly #said = new EventEmitter<PlanState>();
  readonly onSaid = this.#said.event;
  readonly #listening: Disposable;

  constructor(client: BaseLanguageClient) {
    const toUri = (text: string): Uri => client.protocol2CodeConverter.asUri(text);
    this.#listening = client.onNotification(
      'lamella/state',
      ({ uri, ...state }: Omit<PlanState, 'uri'> & { readonly uri: string }) =>
        this.#said.fire({ uri: toUri(uri), ...state }),
    );
  }

  dispose(): void {
    Disposable.from(this.#listening, this.#said).dispose();
  }
}
