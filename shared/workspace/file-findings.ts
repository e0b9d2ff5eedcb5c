/** Findings about a file as a whole: its version, what it uses. */

import { entryAt, keysOf, WHOLE_FILE } from '../plan/entry-id.ts';
import { setTo } from '../plan/fixes.ts';
import { nearest } from '../plan/nearest.ts';
import { type FileId, fileName } from '../plan/place.ts';
import type { ShapeProblem } from '../plan/problem.ts';
import { message } from '../words/message.ts';
import { duplicateNames } from './duplicates.ts';
import type { Names, Use } from './names.ts';
import type { Store } from './store.ts';
import { shapeFinding, type TextFinding } from './text-findings.ts';

export function fileFindings(store: Store, names: Names, file: FileId): TextFinding[] {
  // If the text isn't loaded (yet, or any more), there is nothing to report.
  if (store.state(file).state !== 'given') return [];
  const uses = names.uses(file);
  const problems = [
    ...versionProblems(store, file),
    ...uses.flatMap((use) => useProblems(store, names, file, use)),
  ];
  return [...problems.map((problem) => shapeFinding(problem)), ...duplicateNames(names, file)];
}

const VERSION = entryAt('shootplan');

function versionProblems(store: Store, file: FileId): ShapeProblem[] {
  const ids = store.ids(file);
  if (ids.includes(VERSION)) return [];
  const sections = [...new Set(ids.map((id) => keysOf(id)[0] ?? ''))];
  const near = nearest('shootplan', sections);
  // A misspelt version key has its own finding.
  if (near !== undefined) return [];
  return [
    {
      rule: 'missing-key',
      code: 'missing-version',
      at: { file, entry: WHOLE_FILE, path: [] },
      args: { key: 'shootplan' },
      fixes: [setTo(message`Write shootplan: 1`, { file, entry: VERSION, path: [] }, '1')],
    },
  ];
}

function useProblems(store: Store, names: Names, file: FileId, use: Use): ShapeProblem[] {
  const problem = (rule: 'use-not-found' | 'use-in-a-circle', code: string, args = {}) => [
    { rule, code, at: use.at, args: { text: use.written, ...args }, fixes: [] },
  ];
  if (!use.target.ok) return problem('use-not-found', use.target.why);
  const target = use.target.file;
  if (target === file) return problem('use-in-a-circle', 'itself');
  const state = store.state(target);
  if (state.state === 'refused') return problem('use-not-found', state.why);
  if (names.reaches(target).includes(file)) {
    const circle = [file, target, file].map(fileName).join(', ');
    return problem('use-in-a-circle', 'circle', { circle });
  }
  return [];
}
