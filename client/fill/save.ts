/// <reference lib="dom" />
/** The way out: one text, to be downloaded, copied or selected; and what troubles there are. */
import { box, button, make, say, showIn, sureButton } from './dom.ts';

interface Save {
  open(): void;
  update(): void;
}

type SaveWord =
  | 'by'
  | 'out'
  | 'outAbout'
  | 'text'
  | 'download'
  | 'copy'
  | 'copied'
  | 'notCopied'
  | 'close'
  | 'clear'
  | 'clearSure';

/** What goes out, and whose it is. */
interface Given {
  readonly words: Readonly<Record<SaveWord, string>>;
  /** Of the file that is downloaded. */
  readonly file: string;
  text(): string;
  by(): string;
  setBy(by: string): void;
  clear(): void;
  /** The text left the page, or may have. */
  taken?(text: string): void;
  /** The text as a picture that another device reads, where it fits one. */
  readonly code?: {
    readonly words: Readonly<Record<'codeAbout' | 'codeTooLong', string>>;
    /** @returns null: the text is too long */
    draw(): SVGSVGElement | null;
  };
}

export function saveOf(given: Given): Save {
  const { words, file } = given;
  const by = box(words.by, { maxlength: 40, autocapitalize: 'characters' }, (text) =>
    given.setBy(text),
  );
  const text = make('textarea', { readonly: true, rows: 6, 'aria-label': words.text });
  const told = make('p', { role: 'status' });
  const codeWords = make('p', { class: 'note' });
  const code = make('div', {}, codeWords);
  /** The text that left the page, or may have, while the dialog is open. */
  let taken: string | null = null;
  const dialog = make(
    'dialog',
    { class: 'fill-save', 'aria-labelledby': 'fill.save' },
    make('h2', { id: 'fill.save' }, words.out),
    make('p', {}, words.outAbout),
    make(
      'div',
      { class: 'ways' },
      button(
        words.download,
        () => {
          download(file, text.value);
          taken = text.value;
        },
        'main',
      ),
      button(words.copy, async () => {
        const isCopied = await copied(text);
        if (isCopied) taken = text.value;
        say(told, isCopied ? words.copied : words.notCopied);
      }),
    ),
    told,
    ...(given.code ? [code] : []),
    text,
    by.label,
    make(
      'div',
      { class: 'ways' },
      sureButton(words.clear, words.clearSure, given.clear),
      button(words.close, () => dialog.close()),
    ),
  );
  document.body.append(dialog);
  dialog.addEventListener('close', () => {
    if (taken !== null) given.taken?.(taken);
    taken = null;
  });
  const update = (): void => {
    showIn(by.input, given.by());
    // What is selected to be copied by hand stays.
    if (dialog.open && text !== document.activeElement) {
      text.value = given.text();
      showCode();
    }
  };
  const showCode = (): void => {
    if (!given.code) return;
    const drawn = given.code.draw();
    code.querySelector('svg')?.remove();
    say(codeWords, drawn ? given.code.words.codeAbout : given.code.words.codeTooLong);
    if (!drawn) return;
    code.append(drawn);
    // Nobody tells whether it is scanned.
    taken = text.value;
  };
  return {
    update,
    open() {
      say(told, '');
      dialog.showModal();
      text.value = given.text();
      showCode();
      update();
    },
  };
}

export const baseOf = (plan: string): string =>
  plan.replace(/(?:\.shootplan)?\.ya?ml$/, '').replace(/[^\w.-]+/g, '-') || 'shoot';

export function download(name: string, text: string): void {
  const address = URL.createObjectURL(new Blob([text], { type: 'text/plain;charset=utf-8' }));
  make('a', { href: address, download: name }).click();
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}

/** Where the browser has no clipboard for a page of its kind, by the selection. */
async function copied(text: HTMLTextAreaElement): Promise<boolean> {
  try {
    await navigator.clipboard.writeText(text.value);
    return true;
  } catch {
    text.select();
    return document.execCommand('copy');
  }
}
