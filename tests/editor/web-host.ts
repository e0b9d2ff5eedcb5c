/**
 * The workbench with no machine behind it: extensions run in a worker of the page. A small file
 * server hands out the editor, the extension as installed, and a test file system's files.
 */
import { existsSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import path from 'node:path';
import { inject } from 'vitest';
import { Folder, SETTINGS, type StartHost } from './host.ts';
import { freePort } from './node-host.ts';
import { WEB_FOLDER_EXTENSION } from './paths.ts';

const TYPES: Record<string, string> = {
  '.css': 'text/css',
  '.html': 'text/html',
  '.js': 'text/javascript',
  '.json': 'application/json',
  '.mjs': 'text/javascript',
  '.png': 'image/png',
  '.svg': 'image/svg+xml',
  '.ttf': 'font/ttf',
  '.wasm': 'application/wasm',
};

const WORKBENCH = '/static/out/vs/code/browser/workbench/workbench.js';

export const startWebHost: StartHost = async (
  files,
  { settings, extensions: installed = inject('extensions') } = {},
) => {
  const folder = new Folder(files);
  const port = await freePort();
  const editor = inject('editor');
  const extensions: Record<string, string> = {
    lamella: path.join(installed, path.basename(inject('lamella'))),
    'web-folder': WEB_FOLDER_EXTENSION,
  };
  const page = pageOf(editor, port, Object.keys(extensions), { ...SETTINGS, ...settings });
  const workbench = withoutRemote(readFileSync(path.join(editor, WORKBENCH.slice(8)), 'utf8'));
  const server = createServer((request, response) => {
    const url = new URL(request.url ?? '/', 'http://localhost');
    const at = decodeURIComponent(url.pathname);
    if (at === '/') return send(response, 200, page, 'text/html');
    if (at === WORKBENCH) return send(response, 200, workbench, 'text/javascript');
    if (at.startsWith('/static/')) return sendFile(response, path.join(editor, at.slice(8)));
    const [, kind, name = '', ...rest] = at.split('/');
    const extension = extensions[name];
    if (kind === 'extension' && extension) {
      return sendFile(response, path.join(extension, ...rest));
    }
    if (kind === 'files') {
      return answerFiles(request, response, path.join(folder.path, name, ...rest), url.search);
    }
    send(response, 404, '');
  });
  await new Promise<void>((resolve) => server.listen(port, '127.0.0.1', resolve));
  return {
    folder,
    address: (file) => {
      const query = new URLSearchParams({ folder: 'web-folder://plans/' });
      if (file) query.set('payload', JSON.stringify([['openFile', `web-folder://plans/${file}`]]));
      return `http://127.0.0.1:${port}/?${query}`;
    },
    stop: async () => {
      server.closeAllConnections();
      await new Promise((resolve) => server.close(resolve));
      folder.remove();
    },
  };
};

const send = (to: ServerResponse, status: number, body: string | Buffer, type = 'text/plain') => {
  to.writeHead(status, {
    'content-type': type,
    'access-control-allow-origin': '*',
    'cache-control': 'no-cache',
  });
  to.end(body);
};

const sendFile = (to: ServerResponse, file: string): void => {
  if (existsSync(file) && statSync(file).isFile()) {
    send(to, 200, readFileSync(file), TYPES[path.extname(file)] ?? 'application/octet-stream');
  } else send(to, 404, '');
};

/** What web-folder/extension.js asks for: a file, `?stat`, `?list`, or to write one. */
const answerFiles = (
  request: IncomingMessage,
  response: ServerResponse,
  file: string,
  search: string,
): void => {
  const typeOf = (entry: { isDirectory(): boolean }): number => (entry.isDirectory() ? 2 : 1);
  if (request.method === 'PUT') {
    const parts: Buffer[] = [];
    request.on('data', (part: Buffer) => parts.push(part));
    request.on('end', () => {
      writeFileSync(file, Buffer.concat(parts));
      send(response, 200, '');
    });
  } else if (!existsSync(file)) {
    send(response, 404, '');
  } else if (search === '?stat') {
    const stat = statSync(file);
    const { ctimeMs: ctime, mtimeMs: mtime, size } = stat;
    send(response, 200, JSON.stringify({ type: typeOf(stat), ctime, mtime, size }));
  } else if (search === '?list') {
    const entries = readdirSync(file, { withFileTypes: true });
    send(response, 200, JSON.stringify(entries.map((each) => [each.name, typeOf(each)])));
  } else sendFile(response, file);
};

/**
 * The server's build of the workbench assumes a machine behind it and keeps the user's data
 * there: both are undone here, in the exact words of the version that get-editor.mjs names.
 */
const withoutRemote = (script: string): string => {
  const changes: [string, string][] = [
    ['remoteAuthority:location.host', ''],
    [
      'N.file(this.userDataPath).with({scheme:K.vscodeRemote})',
      'N.file(this.userDataPath).with({scheme:K.vscodeUserData})',
    ],
  ];
  return changes.reduce((text, [from, to]) => {
    if (text.split(from).length !== 2) throw new Error(`The workbench no longer holds ${from}`);
    return text.replace(from, () => to);
  }, script);
};

const pageOf = (
  editor: string,
  port: number,
  extensions: string[],
  settings: Record<string, unknown>,
): string => {
  const product = JSON.parse(readFileSync(path.join(editor, 'product.json'), 'utf8'));
  const configuration = {
    additionalBuiltinExtensions: extensions.map((name) => ({
      scheme: 'http',
      authority: `127.0.0.1:${port}`,
      path: `/extension/${name}`,
    })),
    configurationDefaults: settings,
    enableWorkspaceTrust: false,
    isEnabledCoderGettingStarted: false,
    isEnabledFileDownloads: true,
    isEnabledFileUploads: true,
    productConfiguration: { ...product, extensionsGallery: undefined, serviceWorker: undefined },
    userDataPath: '/',
    webviewEndpoint: '/static/out/vs/workbench/contrib/webview/browser/pre',
  };
  const attribute = JSON.stringify(configuration)
    .replaceAll('&', '&amp;')
    .replaceAll('"', '&quot;');
  return `<!DOCTYPE html><html><head><meta charset="utf-8">
<meta id="vscode-workbench-web-configuration" data-settings="${attribute}">
<meta id="vscode-workbench-auth-session" data-settings="">
<link rel="stylesheet" href="/static/out/vs/code/browser/workbench/workbench.css"></head>
<body aria-label=""></body>
<script>globalThis._VSCODE_FILE_ROOT = location.origin + '/static/out/';</script>
<script type="module" src="/static/out/nls.messages.js"></script>
<script type="module" src="${WORKBENCH}"></script></html>`;
};
