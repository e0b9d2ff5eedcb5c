/**
 * The catalogue for translators (shared/words/messages.json): every text that the core, the server
 * and the command line say to people, by its key, and the files that say it. Files in order of
 * their names and texts as they stand there, so that what belongs together stays together.
 */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { parseAst } from 'vitest/node';
import { SHAPES } from '../../shared/plan/generated/shapes.ts';
import { ALL_RULES } from '../../shared/rules/registry.ts';
import { keyOf } from '../../shared/words/message.ts';

export const MESSAGES_PATH = 'shared/words/messages.json';

const FOLDERS = ['shared', 'server'];
const GENERATED = /(^|\/)generated\//;
/** The tags of shared/words/message.ts. */
const TAGS: readonly string[] = ['message', 'later'];

/** What the keys of tables say, which `inLanguage` looks up whole. */
const SCHEMA = 'schemas/shootplan.schema.json';

/** @param root the project's folder */
export function catalogue(root: string): ReadonlyMap<string, readonly string[]> {
  const files = new Map<string, Set<string>>();
  const add = (key: string, file: string) => {
    files.set(key, (files.get(key) ?? new Set()).add(file));
  };
  for (const file of sourcesIn(root))
    for (const key of keysIn(file, readFileSync(path.join(root, file), 'utf8'))) add(key, file);
  for (const { docs } of ALL_RULES)
    for (const text of [docs.when, docs.why, docs.remedy]) add(keyOf([text]), 'shared/rules');
  for (const { title, description, keys } of Object.values(SHAPES)) {
    for (const text of [title, description]) add(keyOf([text]), SCHEMA);
    for (const key of Object.values(keys))
      for (const text of [key.title, key.description]) add(keyOf([text]), SCHEMA);
  }
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

const sourcesIn = (root: string): readonly string[] =>
  FOLDERS.flatMap((folder) =>
    readdirSync(path.join(root, folder), { recursive: true, encoding: 'utf8' }).map((file) =>
      path.posix.join(folder, file.replaceAll(path.sep, '/')),
    ),
  )
    .filter((file) => file.endsWith('.ts') && !GENERATED.test(file))
    .sort();

/** The keys of a source's tagged templates, in their order. */
export function keysIn(file: string, source: string): readonly string[] {
  const keys: string[] = [];
  visit(parseAst(source, { lang: 'ts' }, file));
  return keys;

  function visit(node: unknown): void {
    if (Array.isArray(node)) for (const item of node) visit(item);
    if (typeof node !== 'object' || node === null || Array.isArray(node)) return;
    if (isMessage(node)) keys.push(keyOf(node.quasi.quasis.map(({ value }) => value.cooked)));
    for (const child of Object.values(node)) visit(child);
  }
}

interface Message {
  readonly quasi: { readonly quasis: readonly { readonly value: { readonly cooked: string } }[] };
}

const isMessage = (node: object): node is Message =>
  'type' in node &&
  node.type === 'TaggedTemplateExpression' &&
  TAGS.includes((node as unknown as { tag: { name?: string } }).tag.name ?? '');
