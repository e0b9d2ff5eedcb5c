/** What a client says of itself first: read before the library reads it, which takes its shape for granted. */
import type { ConnectionOptions, InitializeParams, Message } from 'vscode-languageserver';
import { message } from '../shared/words/message.ts';
import { clientFeatures } from './client-features.ts';

/** Parameters that stand in for those that can't be read, and say why. */
interface Unreadable extends InitializeParams {
  readonly unreadable: string;
}

/** For every connection: `initialize` arrives in a shape that can be read, whatever was sent. */
export const READS_FIRST: ConnectionOptions = {
  messageStrategy: {
    handleMessage(sent, next) {
      const unreadable = isInitialize(sent) ? faultOf(sent.params) : null;
      if (unreadable === null) return next(sent);
      const params: Unreadable = { processId: null, rootUri: null, capabilities: {}, unreadable };
      return next({ ...sent, params } as Message);
    },
  },
};

/** Why the parameters that were sent can't be read; undefined: they can. */
export const unreadableOf = (params: InitializeParams): string | undefined =>
  (params as Partial<Unreadable>).unreadable;

const isInitialize = (sent: Message): sent is Message & { params?: unknown } =>
  (sent as { method?: unknown }).method === 'initialize';

/** By LSP 3.17, "initialize"; null also where it leaves only an absent value. */
function faultOf(params: unknown): string | null {
  if (!isObject(params)) return message`initialize needs its parameters as an object.`;
  const { capabilities, workspaceFolders, rootUri } = params;
  if (!isObject(capabilities))
    return message`initialize needs \`capabilities\` as an object; it may be empty.`;
  for (const group of ['workspace', 'textDocument', 'window', 'general', 'notebookDocument'])
    if (!isAbsent(capabilities[group]) && !isObject(capabilities[group]))
      return message`\`capabilities.${group}\` must be an object.`;
  if (!isAbsent(rootUri) && typeof rootUri !== 'string')
    return message`\`rootUri\` must be an address or null.`;
  const isListOfFolders =
    Array.isArray(workspaceFolders) &&
    workspaceFolders.every((folder) => isObject(folder) && typeof folder.uri === 'string');
  if (!isAbsent(workspaceFolders) && !isListOfFolders)
    return message`\`workspaceFolders\` must be a list of folders, each with its \`uri\`.`;
  try {
    clientFeatures(params as unknown as InitializeParams, {});
  } catch {
    return message`\`capabilities\` has a value of the wrong kind in it.`;
  }
  return null;
}

const isAbsent = (value: unknown): boolean => value === undefined || value === null;

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
