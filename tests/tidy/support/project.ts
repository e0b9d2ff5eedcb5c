/** The project's own files, as the tests that keep it tidy read them. */
import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';

export const ROOT = path.resolve(import.meta.dirname, '../../..');

export const read = (file: string): string => readFileSync(path.join(ROOT, file), 'utf8');

export const exists = (file: string): boolean => existsSync(path.join(ROOT, file));

/** Files under version control that are there, by their path from the root. */
export const tracked: readonly string[] = execFileSync('git', ['ls-files', '-z'], {
  cwd: ROOT,
  encoding: 'utf8',
})
  .split('\0')
  .filter((file) => file !== '' && exists(file));

const GENERATED = /(^|\/)generated\//;

/** TypeScript and scripts that somebody wrote. */
export const sources: readonly string[] = tracked.filter(
  (file) => /\.(ts|mjs|js|lua)$/.test(file) && !GENERATED.test(file),
);

export const sharedSources: readonly string[] = sources.filter((file) =>
  /^shared\/.*\.ts$/.test(file),
);

/** A source without its comments; what stands in quotes stays, line breaks too. */
export const withoutComments = (text: string): string =>
  text.replace(
    /'(?:[^'\\\n]|\\.)*'|"(?:[^"\\\n]|\\.)*"|`(?:[^`\\]|\\.)*`|\/\*[\s\S]*?\*\/|(?<=^|[\s;,{}()])\/\/[^\n]*/g,
    (match) => (/^\/[/*]/.test(match) ? match.replace(/[^\n]/g, '') : match),
  );

export interface Import {
  /** As written: './kind.ts', 'yaml'. */
  readonly written: string;
  /** From the root, for the project's own files. */
  readonly file: string | undefined;
  /** Nothing of it is left once types are gone. */
  readonly isType: boolean;
}

const IMPORT = /^(?:import|export)\s+(type\s)?([^'";]*?\bfrom\s+)?'([^']+)'/gm;
const LATE_IMPORT = /\b(?:import|require)\(\s*'([^']+)'\s*\)/g;

const fileOf = (from: string, written: string): string | undefined =>
  written.startsWith('.') ? path.posix.join(path.posix.dirname(from), written) : undefined;

const onlyTypes = (names: string): boolean =>
  /^\{[^}]*\}\s*from\s+$/.test(names) &&
  names
    .slice(1, names.indexOf('}'))
    .split(',')
    .every((name) => /^\s*(type\s.*)?$/s.test(name));

/** What a source imports, wherever it does. */
export const importsOf = (file: string): readonly Import[] => importsIn(file, read(file));

export function importsIn(file: string, source: string): readonly Import[] {
  const text = withoutComments(source);
  const early = [...text.matchAll(IMPORT)].map(([, type, names = '', written = '']) => ({
    written,
    file: fileOf(file, written),
    isType: type !== undefined || onlyTypes(names),
  }));
  const late = [...text.matchAll(LATE_IMPORT)].map(([, written = '']) => ({
    written,
    file: fileOf(file, written),
    isType: false,
  }));
  return [...early, ...late];
}

const OFFER =
  /^export (?:declare |abstract |async )*(?:const|let|function\*?|class|interface|type|enum) (\w+)/gm;
const OFFERED_LIST = /^export (?:type )?\{([^}]*)\}/gm;
const TAKEN_LIST = /^(?:import|export) (?:type )?\{([^}]*)\} from '(\.[^']+)'/gm;
const TAKEN_WHOLE = /^import (?:type )?\* as (\w+) from '(\.[^']+)'/gm;
const TAKEN_LATE = /\bimport\(\s*'(\.[^']+)'\s*\)/g;

/** `name as other`: what it is called in the file it comes from, and here. */
const listed = (list = ''): readonly (readonly [string, string])[] =>
  [...list.matchAll(/(?:type )?(\w+)(?: as (\w+))?/g)].map(([, name = '', as = name]) => [
    name,
    as,
  ]);

/** The names that a source, laid out as the formatter does, offers to others. */
export const offeredBy = (text: string): readonly string[] => [
  ...[...text.matchAll(OFFER)].map(([, name = '']) => name),
  ...[...text.matchAll(OFFERED_LIST)].flatMap(([, list]) => listed(list).map(([, as]) => as)),
];

/** What a source takes from others of the project: `file name`, or `file *` for all there is. */
export function takenBy(file: string, text: string): readonly string[] {
  const from = (written = ''): string => fileOf(file, written) ?? written;
  return [
    ...[...text.matchAll(TAKEN_LIST)].flatMap(([, list, written]) =>
      listed(list).map(([name]) => `${from(written)} ${name}`),
    ),
    ...[...text.matchAll(TAKEN_WHOLE)].flatMap(([, whole, written]) =>
      [...text.matchAll(new RegExp(`\\b${whole}\\.(\\w+)`, 'g'))].map(
        ([, name]) => `${from(written)} ${name}`,
      ),
    ),
    ...[...text.matchAll(TAKEN_LATE)].map(([, written]) => `${from(written)} *`),
  ];
}
