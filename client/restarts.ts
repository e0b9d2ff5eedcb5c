import { l10n } from 'vscode';
import {
  CloseAction,
  type CloseHandlerResult,
  ErrorAction,
  type ErrorHandler,
  type ErrorHandlerResult,
} from 'vscode-languageclient';
import { FailedStarts, MOST_FAILED_STARTS } from './failed-starts.ts';

/**
 * Starts the server again however often it ends, unless it no longer comes up at all: somebody
 * in the middle of a plan loses nothing, and a server that can't start doesn't spin.
 */
export class RestartUnlessHopeless implements ErrorHandler {
  readonly #name: string;
  readonly #starts = new FailedStarts(Date.now());

  constructor(name: string) {
    this.#name = name;
  }

  worked(): void {
    this.#starts.worked();
  }

  startedByHand(): void {
    this.#starts.startedByHand(Date.now());
  }

  /**
   * A message that did not get through is left to `closed`. Between a server's end and the news of
   * it every key that is pressed is such a message; the client told to stop after a few of them, as it
   * is by default, never starts again. What was typed is in the text that the next server is given.
   */
  error(): ErrorHandlerResult {
    return { action: ErrorAction.Continue, handled: true };
  }

  async closed(): Promise<CloseHandlerResult> {
    const next = this.#starts.ended(Date.now());
    // A start that the end has cut short fails first, and its failure would undo the next start.
    await new Promise((resolve) => setTimeout(resolve, 0));
    if (next === 'start again') return { action: CloseAction.Restart, handled: true };
    return {
      action: CloseAction.DoNotRestart,
      message: l10n.t(
        'The {0} language server stopped {1} times in a row before it could check a plan. See its log. To try again, run "{0}: Restart the Language Server".',
        this.#name,
        MOST_FAILED_STARTS,
      ),
    };
  }
}
