/**
 * The catalogue for translators (shared/words/messages.json): every text that the core, the server
 * and the command line say to people, by its key, and the files that say it. Files in order of
 * their names and texts as they stand there, so that what belongs together stays together.
 */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { parseAst } from 'vitest/node';
import { BODIES, LENSES, SUBJECT_KINDS } from '../../shared/assist/new-plan/kit.ts';
import { QUESTIONS } from '../../shared/assist/new-plan/questions.ts';
import { ENTRIES } from '../../shared/plan/generated/entries.ts';
import { SHAPES } from '../../shared/plan/generated/shapes.ts';
import { ALL_RULES } from '../../shared/rules/registry.ts';
import { keyOf } from '../../shared/words/message.ts';

export const MESSAGES_PATH = 'shared/words/messages.json';
/** The extension's own words, as `vscode.l10n` looks them up. */
export const BUNDLE_PATH = 'client/l10n/bundle.l10n.json';

const FOLDERS = ['shared', 'server'];
const GENERATED = /(^|\/)generated\//;
/** The tags of shared/words/message.ts. */
const TAGS: readonly string[] = ['message', 'later'];

/** What the keys of tables say, which `inLanguage` looks up whole. */
const SCHEMA = 'schemas/shootplan.schema.json';

/** @param root the project's folder */
function catalogue(root: string): ReadonlyMap<string, readonly string[]> {
  const files = new Map<string, Set<string>>();
  const add = (key: string, file: string) => {
    files.set(key, (files.get(key) ?? new Set()).add(file));
  };
  for (const file of sourcesIn(root, FOLDERS))
    for (const key of keysIn(file, readFileSync(path.join(root, file), 'utf8'))) add(key, file);
  for (const { docs } of ALL_RULES)
    for (const text of [docs.when, docs.why, docs.remedy]) add(keyOf([text]), 'shared/rules');
  for (const { title, description, keys } of Object.values(SHAPES)) {
    for (const text of [title, description]) add(keyOf([text]), SCHEMA);
    for (const key of Object.values(keys))
      for (const text of [key.title, key.description]) add(keyOf([text]), SCHEMA);
  }
  for (const { noun } of Object.values(ENTRIES)) add(keyOf([noun]), SCHEMA);
  return new Map([...files].map(([key, where]) => [key, [...where]]));
}

/** One line a text, so that a change of one is a change of one line. */
export function messagesText(root: string): string {
  const lines = [...catalogue(root)].map(
    ([key, files]) =>
      `  ${JSON.stringify(key)}: [${files.map((one) => JSON.stringify(one)).join(', ')}]`,
  );
  return `{\n${lines.join(',\n')}\n}\n`;
}

export function bundleText(root: string): string {
  const own = sourcesIn(root, ['client'])
    .filter((file) => !file.startsWith('client/build/'))
    .flatMap((file) => wordsIn(file, readFileSync(path.join(root, file), 'utf8')));
  // The pieces of a new plan are told by the client, from the core's list.
  const pieces = [...BODIES, ...LENSES, ...SUBJECT_KINDS].map(({ about }) => about);
  const questions = Object.values(QUESTIONS).flatMap((all) => all.map(({ ask }) => ask));
  const words = [...new Set([...own, ...pieces, ...questions])];
  return `${JSON.stringify(Object.fromEntries(words.map((text) => [text, text])), null, 2)}\n`;
}

const sourcesIn = (root: string, folders: readonly string[]): readonly string[] =>
  folders
    .flatMap((folder) =>
      readdirSync(path.join(root, folder), { recursive: true, encoding: 'utf8' }).map((file) =>
        path.posix.join(folder, file.replaceAll(path.sep, '/')),
      ),
    )
    .filter((file) => file.endsWith('.ts') && !GENERATED.test(file))
    .sort();

/** The keys of a source's tagged templates, in their order. */
export const keysIn = (file: string, source: string): readonly string[] =>
  nodesIn(file, source).flatMap((node) =>
    isMessage(node) ? [keyOf(node.quasi.quasis.map(({ value }) => value.cooked))] : [],
  );

/** The texts that a source gives to `l10n.t`, in their order. */
export const wordsIn = (file: string, source: string): readonly string[] =>
  nodesIn(file, source).flatMap((node) =>
    isTranslated(node) && typeof node.arguments[0]?.value === 'string'
      ? [node.arguments[0].value]
      : [],
  );

/** Every node of a source, the outer before the inner. */
function nodesIn(file: string, source: string): readonly object[] {
  const nodes: object[] = [];
  visit(parseAst(source, { lang: 'ts' }, file));
  return nodes;

  function visit(value: unknown): void {
    if (typeof value !== 'object' || value === null) return;
    if (!Array.isArray(value)) nodes.push(value);
    for (const child of Object.values(value)) visit(child);
  }
}

interface Message {
  readonly quasi: { readonly quasis: readonly { readonly value: { readonly cooked: string } }[] };
}

const isMessage = (node: object): node is Message =>
  typeOf(node) === 'TaggedTemplateExpression' &&
  TAGS.includes((node as { tag?: { name?: string } }).tag?.name ?? '');

interface Translated {
  readonly arguments: readonly { readonly value?: unknown }[];
}

function isTranslated(node: object): node is Translated {
  const { callee } = node as {
    callee?: { object?: { name?: string }; property?: { name?: string } };
  };
  return (
    typeOf(node) === 'CallExpression' &&
    callee?.object?.name === 'l10n' &&
    callee.property?.name === 't'
  );
}

const typeOf = (node: object): unknown => ('type' in node ? node.type : undefined);
