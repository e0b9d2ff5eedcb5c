/** Standard input and output as a connection. */
import { type Connection, createConnection, StreamMessageWriter } from 'vscode-languageserver/node';
import { READS_FIRST } from './first-message.ts';
import { JsonOfMessages } from './json-of-messages.ts';

export function stdioConnection(): Connection {
  // Whatever else is printed must not land between messages.
  console.log = console.error;
  console.info = console.error;
  console.debug = console.error;
  const json = new JsonOfMessages();
  const contentTypeEncoder = {
    name: 'application/json',
    encode: (message: object) => Promise.resolve(Buffer.from(json.of(message), 'utf8')),
  };
  const writer = new StreamMessageWriter(process.stdout, { charset: 'utf-8', contentTypeEncoder });
  // A stream beside a writer is taken as well, though not declared: a reader of our own would leave
  // it to us to end when the editor is gone.
  const output = writer as unknown as NodeJS.WritableStream;
  return createConnection(process.stdin, output, READS_FIRST);
}
