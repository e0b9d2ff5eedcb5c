import { fileURLToPath } from 'node:url';

const fromRoot = (path: string): string => fileURLToPath(new URL(`../../${path}`, import.meta.url));

export const ROOT = fromRoot('');
export const CLI = fromRoot('dist/lamella.cjs');
export const LANGUAGE_SERVER = fromRoot('dist/lamella-language-server.cjs');
export const VSIX = fromRoot('dist/lamella.vsix');
/** Screenshots of a run; not under version control. */
export const RESULTS = fromRoot('tests/results');
export const WEB_FOLDER_EXTENSION = fromRoot('tests/editor/web-folder');
export const GET_EDITOR = fromRoot('tests/editor/get-editor.mjs');
export const PICTURES = fromRoot('client/media/pictures');
