/** Paths of this machine as addresses, and back. */
import { fileURLToPath, pathToFileURL } from 'node:url';
import type { FileId } from '../../shared/plan/place.ts';
import { canonicalUri } from '../canonical-uri.ts';

/** The address of an absolute path. */
export const uriOfPath = (absolute: string): FileId => canonicalUri(pathToFileURL(absolute).href);

/** The path of a `file:` address; null where it names no file on this machine. */
export function pathOfUri(uri: FileId): string | null {
  try {
    return uri.startsWith('file:') ? fileURLToPath(uri) : null;
  } catch {
    return null;
  }
}
