/** The language server over any connection: which message goes to which part of the session. */
import {
  ErrorCodes,
  type InitializeError,
  type InitializeParams,
  type InitializeResult,
  ResponseError,
} from 'vscode-languageserver';
import { version } from '../package.json';
import { message } from '../shared/words/message.ts';
import { answerWhereThingsAre, answerWhileWriting, answerWithFindings } from './answering.ts';
import { optionsOf } from './client-features.ts';
import { Desk } from './desk.ts';
import { unreadableOf } from './first-message.ts';
import { listenToFilesAndSettings, listenToTexts, register } from './listening.ts';
import { answerOwnRequests } from './own-requests.ts';
import { serverCapabilities } from './server-capabilities.ts';
import { Session, type SessionOptions } from './session.ts';
import { useTranslation } from './translation.ts';

/** Says nothing until `connection.listen()`. */
export function startServer(options: SessionOptions): void {
  const { connection } = options;
  const desk = new Desk();

  connection.onInitialize(
    (params: InitializeParams): InitializeResult | ResponseError<InitializeError> => {
      // What is open and what was said belongs to the session that there is (LSP 3.17, "initialize").
      if (desk.session)
        return new ResponseError(
          ErrorCodes.InvalidRequest,
          message`The server is initialized already.`,
          { retry: false },
        );
      const unreadable = unreadableOf(params);
      if (unreadable !== undefined)
        return new ResponseError(ErrorCodes.InvalidParams, unreadable, { retry: false });
      // Before anything is said: what was said once is kept.
      for (const refused of useTranslation(optionsOf(params).translation, params.locale))
        connection.console.warn(refused);
      const session = new Session(options, params);
      desk.session = session;
      return {
        capabilities: serverCapabilities(session.client),
        serverInfo: { name: 'Lamella', version },
      };
    },
  );
  connection.onInitialized(() => {
    const { session } = desk;
    if (!session) return;
    register(connection, session);
    session.listPlans();
  });
  connection.onShutdown(() => {
    desk.ended = true;
    desk.session?.end();
  });

  listenToTexts(connection, desk);
  listenToFilesAndSettings(connection, desk);
  answerWhileWriting(connection, desk);
  answerWhereThingsAre(connection, options.host, desk);
  answerOwnRequests(options, desk);
  answerWithFindings(connection, desk);
}
