/**
 * Swatches beside the colours of a plan, drawn here from what the server answers. The editor's own
 * swatches open a picker, and a film's colour follows from its thickness: there is nothing to pick.
 */
import {
  type ColorInformation,
  type DecorationOptions,
  Disposable,
  type TextEditor,
  ThemeColor,
  type Uri,
  window,
  workspace,
} from 'vscode';
import type { ColorProviderMiddleware } from 'vscode-languageclient';

type Provide = NonNullable<ColorProviderMiddleware['provideDocumentColors']>;

export class Swatches {
  /** As large as the editor's own, with an edge that every theme shows. */
  readonly #look = window.createTextEditorDecorationType({
    before: {
      contentText: ' ',
      width: '0.7em',
      height: '0.7em',
      margin: '0.1em 0.3em 0 0.2em',
      border: '0.1em solid',
      borderColor: new ThemeColor('editor.foreground'),
    },
  });
  /** By the address of the plan. */
  readonly #shown = new Map<string, readonly DecorationOptions[]>();
  readonly #listening = Disposable.from(
    window.onDidChangeVisibleTextEditors((editors) => this.#draw(editors)),
    workspace.onDidCloseTextDocument(({ uri }) => this.#shown.delete(uri.toString())),
  );

  /** The editor is told of no colours; it still says when to ask, and by its setting whether to. */
  readonly provideDocumentColors: Provide = async (document, token, next) => {
    const colours = await next(document, token);
    if (!token.isCancellationRequested) this.#show(document.uri, colours ?? []);
    return [];
  };

  #show(uri: Uri, colours: readonly ColorInformation[]): void {
    this.#shown.set(uri.toString(), colours.map(swatch));
    const of = (one: TextEditor): boolean => one.document.uri.toString() === uri.toString();
    this.#draw(window.visibleTextEditors.filter(of));
  }

  #draw(editors: readonly TextEditor[]): void {
    for (const editor of editors) {
      const swatches = this.#shown.get(editor.document.uri.toString());
      if (swatches) editor.setDecorations(this.#look, swatches);
    }
  }

  dispose(): void {
    this.#listening.dispose();
    this.#look.dispose();
  }
}

const swatch = ({ range, color: { red, green, blue } }: ColorInformation): DecorationOptions => {
  const parts = [red, green, blue].map((part) => Math.round(255 * part));
  return {
    range,
    renderOptions: { before: { backgroundColor: `rgb(${parts.join(', ')})` } },
  };
};
