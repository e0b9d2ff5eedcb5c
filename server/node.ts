/** The language server as a process of Node. */
import path from 'node:path';
import { createConnection } from 'vscode-languageserver/node';
import { version } from '../package.json';
import { createCore } from '../shared/core/core.ts';
import { READS_FIRST } from './first-message.ts';
import { nodeHost } from './node-host.ts';
import { startServer } from './server.ts';
import { stdioConnection } from './stdio.ts';

const HELP = `lamella-language-server: the language server for *.shootplan.yaml.

An editor starts it, and says how they talk:
  --stdio            standard input and output (default)
  --node-ipc         Node's own channel to the process that started it
  --socket=PORT      a TCP port of this machine
  --pipe=NAME        a named pipe or a socket file
  --version, --help
`;

const CHANNELS = /^--(stdio|node-ipc|socket|pipe)(=|$)/;
const args = process.argv.slice(2);

if (args.includes('--version')) process.stdout.write(`${version}\n`);
else if (args.includes('--help')) process.stdout.write(HELP);
else {
  // Read from the process's own arguments by the connection.
  if (!args.some((argument) => CHANNELS.test(argument))) process.argv.push('--stdio');
  const connection = process.argv.includes('--stdio')
    ? stdioConnection()
    : createConnection(READS_FIRST);
  startServer({
    connection,
    host: nodeHost(
      connection,
      path.join(__dirname, 'media-reader.cjs'),
      path.join(__dirname, '..', 'shared', 'rules', 'RULES.md'),
    ),
    createCore,
  });
  connection.listen();
}
