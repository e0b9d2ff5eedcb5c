/** Hands a client's messages to the session, and answers for it where there is none or it fails. */
import {
  type CancellationToken,
  ErrorCodes,
  LSPErrorCodes,
  ResponseError,
} from 'vscode-languageserver';
import type { FileId } from '../shared/plan/place.ts';
import { canonicalUri } from './canonical-uri.ts';
import type { Session } from './session.ts';

export const failure = (code: number, said: string): ResponseError<never> =>
  new ResponseError(code, said);

export class Desk {
  session: Session | null = null;
  ended = false;

  #running(): Session | ResponseError<never> {
    if (this.ended) return failure(ErrorCodes.InvalidRequest, 'The server is shut down.');
    return this.session ?? failure(ErrorCodes.ServerNotInitialized, 'Not initialized yet.');
  }

  /** A request: the text as it stands, unless it was cancelled; a failure is answered as one. */
  answer<P, R>(work: (session: Session, params: P, token: CancellationToken) => R | Promise<R>) {
    return async (params: P, token: CancellationToken): Promise<R | ResponseError<never>> => {
      const current = this.#running();
      if (current instanceof ResponseError) return current;
      await current.settled();
      if (token.isCancellationRequested)
        return failure(LSPErrorCodes.RequestCancelled, 'cancelled');
      try {
        const done = await work(current, params, token);
        // What works in slices leaves off once nobody waits for it. What it has by then may be of use.
        return token.isCancellationRequested && done === null
          ? failure(LSPErrorCodes.RequestCancelled, 'cancelled')
          : done;
      } catch (cause) {
        current.log(cause);
        const said = cause instanceof Error ? cause.message : String(cause);
        return failure(ErrorCodes.InternalError, said);
      }
    };
  }

  /** A request about an open text whose words the core has; `none` is the answer for others. */
  about<P extends { textDocument: { uri: string } }, R>(
    none: R,
    work: (session: Session, file: FileId, params: P, token: CancellationToken) => R | Promise<R>,
  ) {
    return this.answer<P, R>((current, params, token) => {
      const file = canonicalUri(params.textDocument.uri);
      const { documents } = current;
      return documents.has(file) && !documents.unread(file)
        ? work(current, file, params, token)
        : none;
    });
  }

  /** A notification: there is nobody to answer, so a failure is logged. */
  heard<P>(work: (session: Session, params: P) => void) {
    return (params: P): void => {
      const { session, ended } = this;
      if (!session || ended) return;
      try {
        work(session, params);
      } catch (cause) {
        session.log(cause);
      }
    };
  }
}
