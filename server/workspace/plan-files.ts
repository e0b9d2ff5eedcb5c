/**
 * Which plans lie in the client's folders, for a plan that may use them: request
 * `lamella/planFiles`, answered with their URIs, of a client that said `listsPlans`.
 */
import { type Connection, RequestType0 } from 'vscode-languageserver';
import type { FileId } from '../../shared/plan/place.ts';
import { canonicalUri } from '../canonical-uri.ts';

const planFiles = new RequestType0<unknown, void>('lamella/planFiles');

/** More than these are no list to choose from. */
const MOST_CHOICES = 200;
/** As many as are looked at where a file moves. */
export const MOST_FILES = 2_000;
/** Somebody waits for what is done with them. */
const MOST_WAIT_MS = 5_000;

export class PlanFiles {
  readonly #connection: Connection;
  readonly #answers: boolean;
  #known: readonly FileId[] = [];

  constructor(connection: Connection, answers: boolean) {
    this.#connection = connection;
    this.#answers = answers;
  }

  get known(): readonly FileId[] {
    return this.#known.slice(0, MOST_CHOICES);
  }

  /** All that the client names now, or knew when it takes too long. */
  async all(): Promise<readonly FileId[]> {
    let timer: ReturnType<typeof setTimeout> | undefined;
    const late = new Promise<void>((resolve) => {
      timer = setTimeout(resolve, MOST_WAIT_MS);
    });
    await Promise.race([this.ask(), late]);
    clearTimeout(timer);
    return this.#known;
  }

  /** Asks anew; until the answer is here, what was known stays. */
  async ask(): Promise<void> {
    if (!this.#answers) return;
    await this.#connection.sendRequest(planFiles).then(
      (uris) => {
        if (!Array.isArray(uris)) return;
        const texts = uris.filter((uri): uri is string => typeof uri === 'string');
        this.#known = texts.slice(0, MOST_FILES).map(canonicalUri);
      },
      // A client that is gone, or doesn't know the request after all: there is nothing to choose.
      () => undefined,
    );
  }
}
