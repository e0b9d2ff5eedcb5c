/**
 * One spelling per file. Editors escape addresses differently (`(` or `%28`, `c:` or `c%3A`);
 * the core compares them as text and escapes all that may be escaped when it resolves what a plan
 * uses, so every address is brought to that spelling before the core sees it.
 */
import type { FileId } from '../shared/plan/place.ts';

const PARTS = /^([a-z][a-z0-9+.-]*:(?:\/\/[^/]*)?)(\/[^?#]*)?(.*)$/is;
const DRIVE = /^\/[A-Z](:|%3a)/i;

/** Addresses without a path of steps (an unsaved text's) stay as they are. */
export function canonicalUri(uri: string): FileId {
  const parts = PARTS.exec(uri);
  if (!parts) return uri;
  const [, base = '', steps = '', rest = ''] = parts;
  const lowered = DRIVE.test(steps) ? steps.slice(0, 2).toLowerCase() + steps.slice(2) : steps;
  return base + lowered.split('/').map(recode).join('/') + rest;
}

const recode = (step: string): string => {
  try {
    return encodeURIComponent(decodeURIComponent(step)).replace(
      /[!'()*]/g,
      (character) => `%${character.charCodeAt(0).toString(16).toUpperCase()}`,
    );
  } catch {
    // A stray % or bytes that are no UTF-8: nothing better is known than what was written.
    return step;
  }
};

/** Whether `uri` lies in `folder` (no slash at its end); both canonical. */
export const isBelow = (folder: FileId, uri: FileId): boolean =>
  uri.startsWith(folder.endsWith('/') ? folder : `${folder}/`);

/** The folder that holds `uri`, without a slash at its end. */
export const folderOf = (uri: FileId): FileId => uri.slice(0, Math.max(0, uri.lastIndexOf('/')));
