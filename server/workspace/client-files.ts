/**
 * Files through the client, which knows places that are not on this machine's disk: request
 * `lamella/readFile` with `{ uri }`, answered with `{ text }`, or with `{ error }` where `error`
 * is one of the reasons below; any other reason counts as 'unreadable'.
 */
import { type Connection, RequestType } from 'vscode-languageserver';
import type { Refusal } from '../../shared/api/facade.ts';
import type { FileId } from '../../shared/plan/place.ts';
import type { HostText } from '../host.ts';
import { MOST_UNITS } from './documents.ts';

type Answer = { readonly text?: unknown; readonly error?: unknown } | null;

const readFile = new RequestType<{ uri: string }, Answer, void>('lamella/readFile');

const REASONS: readonly Refusal[] = [
  'not-found',
  'outside-workspace',
  'too-large',
  'not-text',
  'unreadable',
];

export const readThroughClient =
  (connection: Connection) =>
  async (uri: FileId): Promise<HostText> => {
    try {
      const answer = await connection.sendRequest(readFile, { uri });
      if (typeof answer?.text === 'string')
        return answer.text.length > MOST_UNITS
          ? { ok: false, why: 'too-large' }
          : { ok: true, text: answer.text };
      return { ok: false, why: REASONS.find((why) => why === answer?.error) ?? 'unreadable' };
    } catch {
      // A client that doesn't know the request, or is gone.
      return { ok: false, why: 'unreadable' };
    }
  };
