// A file system for the workbench without a machine behind it: web-folder://plans/x is GET or PUT of
// /files/x on the server that the page came from, which keeps real files.
const vscode = require('vscode');

exports.activate = (context) => {
  const base = context.extensionUri.with({ path: '/files' }).toString(true);
  const changes = new vscode.EventEmitter();
  const call = async (uri, options, query = '') => {
    const answer = await fetch(base + uri.path + query, options);
    if (answer.status === 404) throw vscode.FileSystemError.FileNotFound(uri);
    if (!answer.ok) throw vscode.FileSystemError.Unavailable(uri);
    return answer;
  };
  const refuse = () => {
    throw vscode.FileSystemError.NoPermissions();
  };
  const provider = {
    onDidChangeFile: changes.event,
    watch: () => new vscode.Disposable(() => {}),
    stat: async (uri) => (await call(uri, {}, '?stat')).json(),
    readDirectory: async (uri) => (await call(uri, {}, '?list')).json(),
    readFile: async (uri) => new Uint8Array(await (await call(uri)).arrayBuffer()),
    writeFile: async (uri, content) => {
      await call(uri, { method: 'PUT', body: content });
      changes.fire([{ type: vscode.FileChangeType.Changed, uri }]);
    },
    createDirectory: refuse,
    delete: refuse,
    rename: refuse,
  };
  context.subscriptions.push(
    vscode.workspace.registerFileSystemProvider('web-folder', provider, { isCaseSensitive: true }),
  );
};
