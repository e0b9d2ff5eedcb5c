/**
 * Where a `use:` points. Files are URIs; paths in plans use `/` and are relative to the file
 * that names them. Pure text: whether the file exists, or a symbolic link leaves the workspace,
 * is the host's to say.
 */
import type { FileId } from '../plan/place.ts';

/** `file://`, `vscode-remote://host`, or a scheme without an authority: `memfs:`. */
const SCHEME = /^[a-z][a-z0-9+.-]*:(?:\/\/[^/]*)?(?=\/)/i;
const DRIVE_OR_SCHEME = /^[a-z]:|^[a-z]+:\/\//i;

export type UseTarget =
  | { readonly ok: true; readonly file: FileId }
  | { readonly ok: false; readonly why: 'outside-workspace' | 'not-a-path' };

/**
 * @param from URI of the file that holds the `use`
 * @param written the path as written: `our-kit.shootplan.yaml`, `../kit/a.shootplan.yaml`
 * @param roots URIs of the folders that it may lie in
 */
export function resolveUse(from: FileId, written: string, ...roots: readonly FileId[]): UseTarget {
  const base = SCHEME.exec(from)?.[0];
  if (
    base === undefined ||
    written === '' ||
    written.includes('\\') ||
    DRIVE_OR_SCHEME.test(written)
  )
    return { ok: false, why: 'not-a-path' };
  if (written.startsWith('/')) return { ok: false, why: 'outside-workspace' };
  const steps = from.slice(base.length).split('/').slice(1, -1);
  for (const step of written.split('/')) {
    if (step === '' || step === '.') continue;
    if (step === '..') {
      if (steps.pop() === undefined) return { ok: false, why: 'outside-workspace' };
    } else steps.push(encodeStep(step));
  }
  const file = `${base}/${steps.join('/')}`;
  const inside = roots.some((root) => file.startsWith(root.endsWith('/') ? root : `${root}/`));
  return inside ? { ok: true, file } : { ok: false, why: 'outside-workspace' };
}

/**
 * The path that `from` writes to reach `to`: the other way round; null where none leads there.
 *
 * @param from URI of the file that holds the path
 * @param to URI of the file that it leads to
 */
export function pathBetween(from: FileId, to: FileId): string | null {
  const base = SCHEME.exec(from)?.[0];
  if (base === undefined || SCHEME.exec(to)?.[0] !== base) return null;
  const folder = from.slice(base.length).split('/').slice(1, -1);
  const steps = to.slice(base.length).split('/').slice(1);
  const isShared = (step: string, index: number): boolean => step === folder[index];
  const first = steps.findIndex((step, index) => !isShared(step, index));
  const shared = Math.min(first < 0 ? steps.length : first, steps.length - 1, folder.length);
  const up = folder.slice(shared).map(() => '..');
  try {
    const down = steps.slice(shared).map(decodeURIComponent);
    // A step that a path can't say, as one with a slash in its name.
    if (down.some((step) => /[/\\]/.test(step))) return null;
    return [...up, ...down].join('/');
  } catch {
    return null;
  }
}

/** Percent-encodes what URIs escape; the editor's own URIs come encoded the same way. */
const encodeStep = (step: string): string =>
  encodeURIComponent(step).replace(
    /[!'()*]/g,
    (character) => `%${character.charCodeAt(0).toString(16).toUpperCase()}`,
  );
