/** Pages that are read, not written: documents of their own kind, that nobody has to save. */
import {
  commands,
  EventEmitter,
  type TextDocumentContentProvider,
  Uri,
  ViewColumn,
  window,
} from 'vscode';

export class Pages implements TextDocumentContentProvider {
  static readonly scheme = 'lamella-page';
  /** By path: one of each kind for each plan, the latest. */
  readonly #shown = new Map<string, string>();
  readonly #changed = new EventEmitter<Uri>();
  readonly onDidChange = this.#changed.event;

  provideTextDocumentContent(uri: Uri): string {
    return this.#shown.get(uri.path) ?? '';
  }

  /**
   * Rendered where the editor has its Markdown preview, else as text.
   *
   * @param about what the page says of the plan: "since its last commit"
   */
  async show(plan: Uri, about: string, markdown: string): Promise<void> {
    await this.open(`${plan.path.slice(plan.path.lastIndexOf('/') + 1)} ${about}`, markdown);
  }

  /** The same of what is about no plan. */
  async open(title: string, markdown: string): Promise<void> {
    const uri = Uri.from({ scheme: Pages.scheme, path: `/${title}.md` });
    this.#shown.set(uri.path, markdown);
    this.#changed.fire(uri);
    // What is open follows the change by itself.
    if (isOpen(title)) return;
    try {
      await commands.executeCommand('markdown.showPreviewToSide', uri);
    } catch {
      await window.showTextDocument(uri, { preview: true, viewColumn: ViewColumn.Beside });
    }
  }
}

const isOpen = (title: string): boolean =>
  window.tabGroups.all.some(({ tabs }) => tabs.some(({ label }) => label.includes(title)));
