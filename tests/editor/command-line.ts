/** What the command line says of a text: the editor has to say the same. */
import { spawnSync } from 'node:child_process';
import { CLI } from './paths.ts';

export interface Finding {
  readonly rule: string;
  readonly severity: 'error' | 'warning' | 'note' | 'hint';
  readonly message: string;
  readonly range: {
    readonly start: { readonly line: number; readonly column: number };
    readonly end: { readonly line: number; readonly column: number };
  };
  readonly fixes?: readonly { readonly title: string; readonly sideEffects?: string }[];
}

const lamella = (args: string[], cwd: string, translation = ''): unknown => {
  const { status, stdout, stderr } = spawnSync(process.execPath, [CLI, ...args], {
    cwd,
    env: { ...process.env, LAMELLA_TRANSLATION: translation },
    encoding: 'utf8',
  });
  if (status !== 0 && status !== 1) throw new Error(`lamella ${args.join(' ')}: ${stderr}`);
  return JSON.parse(stdout);
};

/**
 * Findings of a file in `folder`, in the order of the text.
 *
 * @param translation a file with it; left out: English
 */
export const check = (folder: string, file: string, translation?: string): readonly Finding[] => {
  const args = ['check', file, '--format', 'json', '--root', '.'];
  const answer = lamella(args, folder, translation) as { files: { findings: Finding[] }[] };
  return answer.files.flatMap(({ findings }) => findings);
};

export interface ShotFigures {
  readonly magnification: number | null;
  readonly effectiveFNumber: number | null;
}

export const figures = (folder: string, file: string): Record<string, ShotFigures> => {
  const args = ['figures', file, '--format', 'json'];
  return (lamella(args, folder) as { shots: Record<string, ShotFigures> }).shots;
};

/** The text that a finding marks; findings that this is asked for stand on one line. */
export const markedText = ({ range }: Finding, text: string): string =>
  text.split('\n')[range.start.line - 1]!.slice(range.start.column - 1, range.end.column - 1);
