/** Everything that people read: pages, help, messages, the schema, the manifest, samples, goldens. */
import { COMMANDS } from '../../../server/command-line.ts';
import { lamellaIn } from '../../support/command-line.ts';
import { ROOT, read, tracked } from '../../tidy/support/project.ts';

/** A text with where it stands. */
export interface Text {
  readonly at: string;
  readonly text: string;
}

const filesOf = (pattern: RegExp): readonly Text[] =>
  tracked.filter((file) => pattern.test(file)).map((at) => ({ at, text: read(at) }));

/** Pages whole, with their code and their tables. */
export const pages: readonly Text[] = filesOf(/\.md$/);

export const messages: readonly Text[] = Object.keys(
  JSON.parse(read('shared/words/messages.json')),
).map((text) => ({ at: 'messages', text }));

/** What the extension says without its server. */
export const editorMessages: readonly Text[] = Object.keys(
  JSON.parse(read('client/l10n/bundle.l10n.json')),
).map((text) => ({ at: 'the extension', text }));

/** Strings under certain keys, wherever they stand. */
function saidIn(node: unknown, isSaid: (key: string) => boolean): readonly string[] {
  if (typeof node !== 'object' || node === null) return [];
  return Object.entries(node).flatMap(([key, value]) =>
    typeof value === 'string' ? (isSaid(key) ? [value] : []) : saidIn(value, isSaid),
  );
}

/** Titles and descriptions of the schema. */
export const described: readonly Text[] = saidIn(
  JSON.parse(read('schemas/shootplan.schema.json')),
  (key) => key === 'title' || key === 'description',
).map((text) => ({ at: 'the schema', text }));

const manifest = JSON.parse(read('package.json'));

/** Names and texts of what the extension contributes to an editor. */
export const contributed: readonly Text[] = [
  ...Object.entries(JSON.parse(read('package.nls.json')) as Record<string, string>),
  ...Object.keys(manifest.contributes.configuration.properties).map((name) => [name, name]),
  ...saidIn(manifest.contributes, () => true).map((text) => [text, text]),
].map(([key = '', text = '']) => ({ at: `the manifest, ${key}`, text }));

/** What every command says of itself. */
export async function helps(): Promise<readonly Text[]> {
  const asked = [['--help'], ...COMMANDS.map(({ name }) => [name, '--help'])];
  return Promise.all(
    asked.map(async (args) => ({
      at: `lamella ${args.join(' ')}`,
      text: (await lamellaIn(ROOT, args)).out,
    })),
  );
}

export const samples: readonly Text[] = filesOf(/^samples\//);

/** What is expected of the samples, by the program's own words. */
export const goldens: readonly Text[] = filesOf(/^tests\/.*(?:golden\/.*\.json|\.snap)$/);
