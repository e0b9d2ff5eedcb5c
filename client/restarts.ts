import {
  CloseAction,
  type CloseHandlerResult,
  ErrorAction,
  type ErrorHandler,
  type ErrorHandlerResult,
  type Message,
} from 'vscode-languageclient';

/** A server that ends sooner than this after its start has not come up. */
const CAME_UP_MS = 1_000;
const MOST_FAILED_STARTS = 4;

/**
 * Starts the server again however often it ends, unless it no longer comes up at all: somebody
 * in the middle of a plan loses nothing, and a server that can't start doesn't spin.
 */
export class RestartUnlessHopeless implements ErrorHandler {
  readonly #name: string;
  #lastStart = Date.now();
  #failedStarts = 0;

  constructor(name: string) {
    this.#name = name;
  }

  error(_error: Error, _message: Message | undefined, count: number | undefined) {
    const action = (count ?? 0) <= 3 ? ErrorAction.Continue : ErrorAction.Shutdown;
    return { action } satisfies ErrorHandlerResult;
  }

  closed(): CloseHandlerResult {
    const now = Date.now();
    this.#failedStarts = now - this.#lastStart < CAME_UP_MS ? this.#failedStarts + 1 : 0;
    this.#lastStart = now;
    if (this.#failedStarts <= MOST_FAILED_STARTS) return { action: CloseAction.Restart };
    const times = MOST_FAILED_STARTS + 1;
    return {
      action: CloseAction.DoNotRestart,
      message: `The ${this.#name} language server ended ${times} times in a row within ${CAME_UP_MS / 1000} s of its start. Its log says why; the command "${this.#name}: Restart the Language Server" tries again.`,
    };
  }
}
