/**
 * Words for people, in the language in force. A text is written in English where it is said,
 * message`Depth is ${there}, ${subject} needs ${needed}.`, and its static parts are the key that a
 * translation finds it by: "Depth is {0}, {1} needs {2}." `client/build/messages.mjs` gathers them.
 *
 * The translation is held by this module, one for the whole process: words are made by hundreds of
 * small functions far below whoever knows the reader, a server serves one window and a command one
 * person. Hosts set it before they read a plan, for findings keep what was said of them.
 */
import { type Form, formOf, type Template, type Translation } from './translation.ts';

type MessageValue = string | number;

let inForce: Translation | null = null;

/** What the translation in force has for each text that was said; null: nothing. */
let templates = new WeakMap<TemplateStringsArray, Form | null>();

/** Says everything in `translation` from here on; null: in English. */
export function setTranslation(translation: Translation | null): void {
  inForce = translation;
  templates = new WeakMap();
}

/** The text in the language in force, or in English where the translation doesn't have it. */
export function message(parts: TemplateStringsArray, ...values: readonly MessageValue[]): string {
  if (inForce) {
    const form = translated(inForce, parts);
    if (form) return filled(formOf(form, inForce, values), values);
  }
  let text = parts[0]!;
  for (let index = 1; index < parts.length; index++) text += values[index - 1]! + parts[index]!;
  return text;
}

/**
 * A text in a table that is made before the language is known: English as it stands, gathered with
 * the others, and said by `inLanguage`.
 */
export const later = (parts: TemplateStringsArray): string => parts[0]!;

/**
 * A whole text of a table, in the language in force: one marked by `later`, a rule's documentation,
 * what the schema says of a key. `text` is English, with no values in it.
 */
export function inLanguage(text: string): string {
  const form = inForce?.texts.get(escaped(text));
  return inForce && form ? filled(formOf(form, inForce, []), []) : text;
}

/** The tag of the language that is spoken, by BCP 47: 'en'. */
export const languageInForce = (): string => inForce?.language ?? 'en';

/** The key of a text by its static parts: values are {0}, {1} …, braces that are meant are doubled. */
export const keyOf = (parts: readonly string[]): string =>
  parts.map((part, index) => (index === 0 ? '' : `{${index - 1}}`) + escaped(part)).join('');

const escaped = (text: string): string => text.replace(/[{}]/g, '$&$&');

function translated({ texts }: Translation, parts: TemplateStringsArray): Form | null {
  let form = templates.get(parts);
  if (form === undefined) {
    form = texts.get(keyOf(parts)) ?? null;
    templates.set(parts, form);
  }
  return form;
}

const filled = (template: Template, values: readonly MessageValue[]): string =>
  template.map((piece) => (typeof piece === 'string' ? piece : values[piece])).join('');
