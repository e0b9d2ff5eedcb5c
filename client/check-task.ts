/** A task that says of a folder what `lamella check` says, by the server that runs already. */
import {
  CustomExecution,
  type Disposable,
  EventEmitter,
  l10n,
  type Pseudoterminal,
  Task,
  type TaskDefinition,
  TaskGroup,
  type TaskProvider,
  tasks,
  type WorkspaceFolder,
  workspace,
} from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import type { CheckedFolder } from '../server/handlers/check-folder.ts';

const TYPE = 'lamella';
const MATCHER = '$lamella';
const COULD_NOT_RUN = 2;

export const checksFolders = (client: BaseLanguageClient): Disposable =>
  tasks.registerTaskProvider(TYPE, new CheckTasks(client));

class CheckTasks implements TaskProvider {
  readonly #client: BaseLanguageClient;

  constructor(client: BaseLanguageClient) {
    this.#client = client;
  }

  /** One for each folder of the workspace. */
  provideTasks(): Task[] {
    return (workspace.workspaceFolders ?? []).map((folder) => this.#task({ type: TYPE }, folder));
  }

  /** Of a `tasks.json`, which says no more than the type. */
  resolveTask({ definition, scope }: Task): Task | undefined {
    const folder = typeof scope === 'object' ? scope : workspace.workspaceFolders?.[0];
    return folder && this.#task(definition, folder);
  }

  #task(definition: TaskDefinition, folder: WorkspaceFolder): Task {
    const run = new CustomExecution(async () => new CheckTerminal(this.#client, folder));
    const task = new Task(definition, folder, l10n.t('check'), TYPE, run, MATCHER);
    task.group = TaskGroup.Test;
    task.detail = l10n.t('Checks the plans of the folder, as saved.');
    return task;
  }
}

class CheckTerminal implements Pseudoterminal {
  readonly #client: BaseLanguageClient;
  readonly #folder: WorkspaceFolder;
  readonly #written = new EventEmitter<string>();
  readonly #closed = new EventEmitter<number>();
  readonly onDidWrite = this.#written.event;
  readonly onDidClose = this.#closed.event;

  constructor(client: BaseLanguageClient, folder: WorkspaceFolder) {
    this.#client = client;
    this.#folder = folder;
  }

  open(): void {
    void this.#run();
  }

  close(): void {
    this.#written.dispose();
    this.#closed.dispose();
  }

  async #run(): Promise<void> {
    try {
      const folder = this.#client.code2ProtocolConverter.asUri(this.#folder.uri);
      const checked = await this.#client.sendRequest<CheckedFolder>('lamella/check', { folder });
      this.#written.fire(checked.text.replaceAll('\n', '\r\n'));
      this.#closed.fire(checked.status);
    } catch (cause) {
      this.#written.fire(`${cause instanceof Error ? cause.message : String(cause)}\r\n`);
      this.#closed.fire(COULD_NOT_RUN);
    }
  }
}
