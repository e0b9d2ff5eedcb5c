/// <reference lib="dom" />
/** The way out: one text, to be downloaded, copied or selected; and what troubles there are. */
import { type Day, dayText } from './day.ts';
import { box, button, make, say, showIn, sureButton } from './dom.ts';
import { give } from './given.ts';

interface Save {
  open(): void;
  update(): void;
}

export function saveOf(day: Day, clear: () => void): Save {
  const { words, plan } = day.data;
  const by = box(words.by, { maxlength: 40, autocapitalize: 'characters' }, (text) =>
    day.setBy(text),
  );
  const text = make('textarea', { readonly: true, rows: 6, 'aria-label': words.text });
  const told = make('p', { role: 'status' });
  /** The text that left the page while the dialog is open. */
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
          download(`${baseOf(plan)}.day.txt`, text.value);
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
    text,
    by.label,
    make(
      'div',
      { class: 'ways' },
      sureButton(words.clear, words.clearSure, clear),
      button(words.close, () => dialog.close()),
    ),
  );
  document.body.append(dialog);
  dialog.addEventListener('close', () => {
    if (taken !== null) give(day, taken);
    taken = null;
  });
  const update = (): void => {
    showIn(by.input, day.about().by ?? '');
    // What is selected to be copied by hand stays.
    if (dialog.open && text !== document.activeElement) text.value = dayText(day);
  };
  return {
    update,
    open() {
      say(told, '');
      dialog.showModal();
      text.value = dayText(day);
      update();
    },
  };
}

const baseOf = (plan: string): string =>
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
