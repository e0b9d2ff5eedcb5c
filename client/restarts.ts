import { commands, l10n, window } from 'vscode';
import {
  type BaseLanguageClient,
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
  /** Somebody has been told since the server last worked. */
  #told = false;
  #ends = 0;

  constructor(name: string) {
    this.#name = name;
  }

  worked(): void {
    this.#told = false;
    this.#starts.worked();
  }

  startedByHand(): void {
    this.#told = false;
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
    this.#ends++;
    const next = this.#starts.ended(Date.now());
    // A start that the end has cut short fails first, and its failure would undo the next start.
    await new Promise((resolve) => setTimeout(resolve, 0));
    if (next === 'start again') return { action: CloseAction.Restart, handled: true };
    const message = l10n.t(
      'The {0} language server stopped {1} times in a row before it could check a plan. Plans are not checked. Restart it, or see its log.',
      this.#name,
      MOST_FAILED_STARTS,
    );
    this.#tell(message);
    return { action: CloseAction.DoNotRestart, handled: true, message };
  }

  /** Starts the server; one that can't even be begun is told once, in words that say what to do. */
  async start(client: BaseLanguageClient): Promise<void> {
    const ends = this.#ends;
    try {
      await client.start();
    } catch {
      // One that ended while starting is started again, or given up, by `closed`.
      await new Promise((resolve) => setTimeout(resolve, 1_000));
      if (this.#ends === ends && !client.isRunning())
        this.#tell(
          l10n.t(
            'The {0} language server could not be started. Plans are not checked. Restart it, or see its log.',
            this.#name,
          ),
        );
    }
  }

  #tell(message: string): void {
    if (this.#told) return;
    this.#told = true;
    const [restart, log] = [l10n.t('Restart'), l10n.t('Show Log')];
    void window.showErrorMessage(message, restart, log).then((chosen) => {
      if (chosen === restart) return commands.executeCommand('lamella.restart');
      return chosen === log ? commands.executeCommand('lamella.showLog') : undefined;
    });
  }
}

/** What the client would show of its own errors goes to the log: none of it says what to do. */
export const keepErrorsInLog = (client: BaseLanguageClient): void => {
  const log = client.error.bind(client);
  client.error = (message, data) => log(message, data, false);
};
