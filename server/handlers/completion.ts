/** What may be written at a caret, and, once somebody looks at one of them, what it would do. */
import {
  type CompletionItem,
  CompletionItemKind,
  type CompletionList,
  InsertTextFormat,
  InsertTextMode,
  MarkupKind,
  type Position,
} from 'vscode-languageserver';
import type { About, Completion, CompletionKind } from '../../shared/api/completions.ts';
import type { Core } from '../../shared/api/facade.ts';
import type { FileId } from '../../shared/plan/place.ts';
import { message } from '../../shared/words/message.ts';
import type { ClientFeatures } from '../client-features.ts';
import { plainText } from './hover.ts';

/** Characters behind which there is something to choose at once. */
export const TRIGGERS = [':', ' ', '[', '{', ','];

/** What an item carries until it is asked about. */
interface Carried {
  readonly file: FileId;
  readonly about: About;
}

const KINDS: Readonly<Record<CompletionKind, CompletionItemKind>> = {
  key: CompletionItemKind.Property,
  entry: CompletionItemKind.Struct,
  name: CompletionItemKind.Reference,
  value: CompletionItemKind.Value,
  word: CompletionItemKind.EnumMember,
  file: CompletionItemKind.File,
  check: CompletionItemKind.Event,
};

export function completion(
  core: Core,
  client: ClientFeatures,
  file: FileId,
  position: Position,
): CompletionList {
  const { items, incomplete } = core.completions(file, position);
  return {
    isIncomplete: incomplete,
    items: items.map((item) => toItem(item, client, file)),
  };
}

const askAgain = () => ({
  title: message`Choose a value`,
  command: 'editor.action.triggerSuggest',
});

function toItem(item: Completion, client: ClientFeatures, file: FileId): CompletionItem {
  const { completion: can } = client;
  const { label, detail, kind, order, filter, range, text, snippet, about } = item;
  const isSnippet = can.snippets && snippet !== undefined;
  const carried: Carried = { file, about };
  return {
    label,
    kind: KINDS[kind],
    ...(detail !== '' && (can.labelDetails ? inNarrowList(detail) : { detail })),
    sortText: String(can.preselect ? (item.byValue ?? order) : order).padStart(4, '0'),
    filterText: filter,
    ...(item.preselect && can.preselect && { preselect: true }),
    textEdit: { range, newText: isSnippet ? snippet : text },
    insertTextFormat: isSnippet ? InsertTextFormat.Snippet : InsertTextFormat.PlainText,
    ...(can.insertModes && { insertTextMode: InsertTextMode.asIs }),
    ...(item.choice && isSnippet && can.asksAgain && { command: askAgain() }),
    data: carried,
  };
}

/** Characters of a detail that a narrow list has room for. */
const NARROW = 36;

/** As many whole parts as fit, at least one; the rest is shown beside the item that is looked at. */
function inNarrowList(detail: string): Pick<CompletionItem, 'detail' | 'labelDetails'> {
  const [first = '', ...parts] = detail.split(' · ');
  let description = first;
  for (const part of parts) {
    const longer = `${description} · ${part}`;
    if (longer.length > NARROW) break;
    description = longer;
  }
  return { labelDetails: { description }, ...(description !== detail && { detail }) };
}

export function resolveCompletion(
  core: Core,
  client: ClientFeatures,
  item: CompletionItem,
): CompletionItem {
  const carried = item.data as Carried | undefined;
  const markdown = carried && core.explain(carried.file, carried.about);
  if (!markdown) return item;
  return {
    ...item,
    documentation: client.completion.markdown
      ? { kind: MarkupKind.Markdown, value: markdown }
      : { kind: MarkupKind.PlainText, value: plainText(markdown) },
  };
}
