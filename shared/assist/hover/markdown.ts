/**
 * Markdown for hovers, narrow enough for a small window. What comes from a plan goes through
 * `plain`; what is written here as Markdown is the project's own.
 */
import type { Figure, UnknownFigure } from '../../figures/figure.ts';
import { inertMarkdown } from '../../report/inert.ts';

/** Label and value, both Markdown. */
export type Row = readonly [label: string, value: string];

/** Text of a plan, as itself. */
export const plain = inertMarkdown;

/** A table of two columns; its first row stands as the head. */
export function table(rows: readonly Row[]): string {
  const [head, ...body] = rows;
  if (!head) return '';
  const line = ([label, value]: Row): string => `| ${label} | ${value} |`;
  return [line(head), '|:--|:--|', ...body.map(line)].join('\n');
}

/** Paragraphs, those that say nothing left out. */
export const paragraphs = (...parts: readonly (string | null | undefined | false)[]): string =>
  parts.filter(Boolean).join('\n\n');

/** A figure in words, or what it waits for. */
export const figureWords = <T>(figure: Figure<T>, words: (value: T) => string): string =>
  figure.known
    ? `${words(figure.value)}${figure.measured ? ' (measured)' : ''}`
    : `not known: ${reasonWords(figure)}`;

/** Why a figure is not known: what it needs, else the reason. */
export function reasonWords({ needs, because, silent }: UnknownFigure): string {
  if (silent) return 'an entry that it follows from is invalid';
  if (needs.length > 0)
    return `needs ${needs.map(({ key, of }) => `${code(key)} of ${plain(of)}`).join(', ')}`;
  return plain(because ?? 'no reason given');
}

/** A key or rule of the language as code; anything else as plain text. */
export const code = (word: string): string =>
  /^[a-z][a-z0-9-]*$/.test(word) ? `\`${word}\`` : plain(word);
