/** Plan files that a plan may use: those that the host knows of, by their path from this one. */
import type { FileId } from '../../plan/place.ts';
import { SHARED_SPACES } from '../../workspace/entry-kinds.ts';
import type { Proposal } from './item.ts';
import type { Where } from './where.ts';

export function filesToUse({ context, file }: Where): readonly Proposal[] {
  const { store, analysis } = context;
  const used = new Set(analysis.names.uses(file).map(({ target }) => target.ok && target.file));
  const known = new Set([...store.files(), ...context.hostFiles()]);
  return [...known].flatMap((other): Proposal[] => {
    // What uses this plan can't be used by it, and what defines the same names would be at odds.
    if (other === file || used.has(other) || analysis.names.reaches(other).includes(file))
      return [];
    const path = relativePath(file, other);
    if (path === null) return [];
    const counts = groupsOf(context, other);
    if (counts.some(({ names, group }) => sharesOne(names, analysis.names.namesIn(file, group))))
      return [];
    const detail = counts
      .filter(({ names }) => names.length > 0)
      .map(({ group, names }) => `${names.length} ${group}`)
      .join(', ');
    return [{ text: path, detail, rank: 0, kind: 'file', about: { kind: 'file', path } }];
  });
}

const groupsOf = ({ analysis }: Where['context'], file: FileId) =>
  SHARED_SPACES.flat().map((group) => ({ group, names: analysis.names.namesIn(file, group) }));

const sharesOne = (some: readonly string[], others: readonly string[]): boolean =>
  some.some((name) => others.includes(name));

/** null: it would have to be quoted, or lies elsewhere altogether. */
function relativePath(from: FileId, to: FileId): string | null {
  const [here, there] = [from.split('/'), to.split('/')];
  let common = 0;
  while (common < here.length - 1 && here[common] === there[common]) common++;
  if (common < 3) return null;
  const up = here.length - 1 - common;
  const path = [...Array<string>(up).fill('..'), ...there.slice(common)].join('/');
  const plain = decoded(path);
  return plain !== null && /^[A-Za-z0-9._/ -]+$/.test(plain) ? plain : null;
}

function decoded(path: string): string | null {
  try {
    return decodeURIComponent(path);
  } catch {
    return null;
  }
}
