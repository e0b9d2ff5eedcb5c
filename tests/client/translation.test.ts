/** The translation that the extension brings along for the editor's language. */
import { afterEach, expect, it, vi } from 'vitest';

const editor = vi.hoisted(() => ({
  language: 'de',
  files: {} as Record<string, string>,
}));

vi.mock('vscode', () => ({
  env: {
    get language() {
      return editor.language;
    },
  },
  Uri: { joinPath: ({ path }: { path: string }, more: string) => ({ path: `${path}/${more}` }) },
  workspace: {
    fs: {
      readFile: async ({ path }: { path: string }) => {
        const text = editor.files[path];
        if (text === undefined) throw new Error('FileNotFound');
        return new TextEncoder().encode(text);
      },
    },
  },
}));

const { translationFor } = await import('../../client/translation.ts');

const warned: string[] = [];
const found = (): Promise<unknown> =>
  translationFor({ path: '/ext' } as never, { warn: (text: string) => warned.push(text) } as never);

afterEach(() => {
  Object.assign(editor, { language: 'de', files: {} });
  warned.length = 0;
});

it('is the one of its language', async () => {
  editor.files['/ext/client/l10n/messages.de.json'] = '{ "the subject": "das Motiv" }';
  expect(await found()).toEqual({ 'the subject': 'das Motiv' });
  editor.language = 'fr';
  expect(await found()).toBeUndefined();
  expect(warned).toEqual([]);
});

it('is not looked for where the editor speaks English', async () => {
  editor.files['/ext/client/l10n/messages.en-GB.json'] = '{}';
  editor.language = 'en-GB';
  expect(await found()).toBeUndefined();
});

it('is left out where it can’t be read, and the log says so', async () => {
  editor.files['/ext/client/l10n/messages.de.json'] = '{';
  expect(await found()).toBeUndefined();
  expect(warned.join()).toMatch(/^\/ext\/client\/l10n\/messages\.de\.json: .*JSON/);
});
