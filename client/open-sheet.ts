/** One sheet beside the text: it follows cursor and edits, and a click in it goes to the line. */
import {
  Disposable,
  type ExtensionContext,
  l10n,
  Range,
  Selection,
  type TextEditor,
  TextEditorRevealType,
  Uri,
  ViewColumn,
  type WebviewPanel,
  window,
  workspace,
} from 'vscode';
import type { BaseLanguageClient, WorkspaceEdit as ProtocolEdit } from 'vscode-languageclient';
import type { LiveSheet } from '../server/handlers/sheet.ts';
import type { PageFrame } from '../shared/api/frame.ts';
import type { ShownAt } from '../shared/api/sheet.ts';
import { LANGUAGE } from './documents.ts';
import type { Initials } from './initials.ts';
import { LiveFrame } from './live-frame.ts';
import type { FromView, ToView } from './view/messages.ts';

/** The kind of its panel, by which the editor restores it. */
export const SHEET_VIEW = 'lamella.sheet';

/** Typing is let settle this long before the sheet is asked for again, ms. */
const PAUSE_MS = 60;

export class OpenSheet implements Disposable {
  readonly #client: BaseLanguageClient;
  readonly #panel: WebviewPanel;
  readonly #parts: Disposable[] = [];
  readonly #script: Uri;
  readonly #initials: Initials;
  /** What the page looks like comes from the server, which may be away while the page is made. */
  #isStyled = false;
  /** Marks of what the view shows; null: it shows nothing yet. */
  #known: Record<string, string> | null = null;
  #isReady = false;
  #waiting: ReturnType<typeof setTimeout> | undefined;
  /** One request at a time; what changes meanwhile is asked for after it. */
  #asking = false;
  #isStale = false;
  readonly #frame = new LiveFrame(
    (shot, width) =>
      this.#client
        .sendRequest<PageFrame | null>('lamella/frame', {
          textDocument: this.#textDocument(),
          shot,
          width,
        })
        .catch(() => null),
    (shot, frame) => void this.#post({ kind: 'frame', shot, frame }),
  );

  /** @param panel one that the editor restored; left out: a new one beside the text */
  constructor(
    context: ExtensionContext,
    client: BaseLanguageClient,
    readonly plan: Uri,
    initials: Initials,
    panel?: WebviewPanel,
  ) {
    this.#client = client;
    this.#initials = initials;
    const scripts = Uri.joinPath(context.extensionUri, 'dist');
    const options = { enableScripts: true, localResourceRoots: [scripts] };
    this.#panel =
      panel ??
      window.createWebviewPanel(
        SHEET_VIEW,
        l10n.t('Shot Sheet: {0}', nameOf(plan)),
        { viewColumn: ViewColumn.Beside, preserveFocus: true },
        options,
      );
    this.#panel.webview.options = options;
    this.#panel.iconPath = Uri.joinPath(context.extensionUri, 'client/media/lamella.png');
    this.#script = this.#panel.webview.asWebviewUri(Uri.joinPath(scripts, 'sheet-view.js'));
    this.#parts.push(
      this.#panel.webview.onDidReceiveMessage((message: FromView) => this.#hear(message)),
      workspace.onDidChangeTextDocument((change) => {
        // A file that the plan uses changes it, too.
        if (change.document.languageId === LANGUAGE) this.update();
      }),
      window.onDidChangeTextEditorSelection(({ textEditor }) => void this.#follow(textEditor)),
    );
    void this.#start();
  }

  onClosed(closed: () => void): void {
    this.#panel.onDidDispose(() => {
      clearTimeout(this.#waiting);
      this.#frame.dispose();
      Disposable.from(...this.#parts).dispose();
      closed();
    });
  }

  get isActive(): boolean {
    return this.#panel.active;
  }

  reveal(): void {
    this.#panel.reveal(undefined, true);
  }

  /** The sheet follows the cursor, so that is what goes there. */
  goTo(shot: string): Promise<void> {
    return this.#go({ shot, key: '' });
  }

  dispose(): void {
    this.#panel.dispose();
  }

  /** The page with its style, which comes from where the drawings come from. */
  async #start(): Promise<void> {
    const sheet = await this.#ask(null);
    this.#isStyled = sheet !== null;
    const { webview } = this.#panel;
    const nonce = nonceOf();
    const policy = `default-src 'none'; img-src data:; style-src 'nonce-${nonce}'; script-src 'nonce-${nonce}'`;
    webview.html = `<!doctype html>
<html lang="${sheet?.language ?? 'en'}"><head><meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<title>${l10n.t('Shot Sheet')}</title><style nonce="${nonce}">${sheet?.style ?? ''}</style></head>
<body><main data-plan="${attribute(this.plan.toString())}"></main><script nonce="${nonce}" src="${this.#script}"></script></body></html>`;
  }

  #hear(message: FromView): void {
    if (message.kind === 'go') void this.#go({ shot: message.shot, key: message.key });
    else if (message.kind === 'go-to-cut') void this.#go({ cut: message.cut });
    else if (message.kind === 'set') void this.#set(message);
    else if (message.kind === 'tick') void this.#tick(message);
    else {
      // Also said by a view that was hidden and begins anew.
      this.#isReady = true;
      this.#known = null;
      void this.#update();
    }
  }

  /** The plan may be another: what is shown of it is asked for again. */
  update(): void {
    clearTimeout(this.#waiting);
    this.#waiting = setTimeout(() => void this.#update(), PAUSE_MS);
  }

  async #update(): Promise<void> {
    if (!this.#isReady) return;
    if (this.#asking) {
      this.#isStale = true;
      return;
    }
    this.#asking = true;
    try {
      const sheet = await this.#ask(this.#known);
      // The page says when it is ready, and what it shows is asked for then.
      if (sheet && !this.#isStyled) await this.#start();
      else if (sheet) {
        const { patterns, head, shots } = sheet;
        this.#known = Object.fromEntries(shots.map(({ name, mark }) => [name, mark]));
        await this.#post({
          kind: 'sheet',
          head,
          shots,
          ...(patterns !== undefined && { patterns }),
        });
      }
    } finally {
      this.#asking = false;
    }
    const editor = this.#editor();
    if (editor) await this.#follow(editor, true);
    if (this.#isStale) {
      this.#isStale = false;
      await this.#update();
    }
  }

  /** null where the server has nothing to say: it is starting anew, or the plan is closed. */
  async #ask(known: Record<string, string> | null): Promise<LiveSheet | null> {
    const params = { textDocument: this.#textDocument(), ...(known && { known }) };
    try {
      return await this.#client.sendRequest<LiveSheet | null>('lamella/sheet', params);
    } catch {
      return null;
    }
  }

  async #follow(editor: TextEditor, isNew = false): Promise<void> {
    if (!this.#isOf(editor) || !this.#isReady) return;
    const { line, character } = editor.selection.active;
    const params = { textDocument: this.#textDocument(), position: { line, character } };
    const shown = await this.#client
      .sendRequest<ShownAt | null>('lamella/shownAt', params)
      .catch(() => null);
    const { shot, key, cut } = shown ?? { shot: null, key: null, cut: null };
    await this.#post({ kind: 'follow', shot, key, cut });
    // Not waited for: what changes meanwhile goes first.
    void this.#frame.follow(shot, isNew);
  }

  async #go(
    to: { readonly shot: string; readonly key: string } | { readonly cut: string },
  ): Promise<void> {
    const params = { textDocument: this.#textDocument(), ...to };
    const place = await this.#client
      .sendRequest<{ uri: string; range: Range } | null>('lamella/placeInSheet', params)
      .catch(() => null);
    if (!place) return;
    const { start, end } = place.range;
    const range = new Range(start.line, start.character, end.line, end.character);
    const shown = this.#editor();
    const editor = await window.showTextDocument(this.plan, {
      ...(shown?.viewColumn && { viewColumn: shown.viewColumn }),
    });
    editor.selection = new Selection(range.start, range.end);
    editor.revealRange(range, TextEditorRevealType.InCenterIfOutsideViewport);
  }

  /** One edit of the plan, to be undone as one. */
  async #set({ shot, key, value }: Extract<FromView, { kind: 'set' }>): Promise<void> {
    const params = { textDocument: this.#textDocument(), shot, key, value };
    await this.#change('lamella/setInSheet', params);
  }

  /** Likewise; the box follows the plan, so it stays as it was where nothing is changed. */
  async #tick({ shot, check, done }: Extract<FromView, { kind: 'tick' }>): Promise<void> {
    const what = done ? { done: today(), by: await this.#initials.get() } : {};
    const params = { textDocument: this.#textDocument(), shot, check, ...what };
    await this.#change('lamella/tickInSheet', params);
  }

  async #change(request: string, params: object): Promise<void> {
    const edit = await this.#client
      .sendRequest<ProtocolEdit | null>(request, params)
      .catch(() => null);
    if (edit)
      await workspace.applyEdit(await this.#client.protocol2CodeConverter.asWorkspaceEdit(edit));
  }

  #isOf({ document }: TextEditor): boolean {
    return document.uri.toString() === this.plan.toString();
  }

  #editor(): TextEditor | undefined {
    return window.visibleTextEditors.find((editor) => this.#isOf(editor));
  }

  #textDocument(): { readonly uri: string } {
    return { uri: this.#client.code2ProtocolConverter.asUri(this.plan) };
  }

  #post(message: ToView): Thenable<boolean> {
    return this.#panel.webview.postMessage(message);
  }
}

const attribute = (text: string): string =>
  text.replace(/[&<>"']/g, (sign) => `&#${sign.charCodeAt(0)};`);

/** The day by the clock of who ticks: "2027-03-02". */
const today = (): string => {
  const now = new Date();
  const two = (number: number): string => String(number).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
};

const nameOf = ({ path }: Uri): string => path.slice(path.lastIndexOf('/') + 1);

/** Said once for each page: what has none of it neither styles nor runs. */
const nonceOf = (): string =>
  Array.from(crypto.getRandomValues(new Uint8Array(18)), (byte) =>
    byte.toString(16).padStart(2, '0'),
  ).join('');
