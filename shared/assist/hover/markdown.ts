/**
 * Markdown for hovers, narrow enough for a small window. What comes from a plan goes through
 * `plain`; what is written here as Markdown is the project's own.
 */
import { asideOf, becauseOf, type Figure, type UnknownFigure } from '../../figures/figure.ts';
import { inertMarkdown } from '../../report/document/markdown.ts';
import { message } from '../../words/message.ts';

/** A line of a table: a label with what is known, or with the figure that isn't. Both Markdown. */
export type Line =
  | { readonly label: string; readonly value: string }
  | { readonly label: string; readonly unknown: UnknownFigure };

/** Text of a plan, as itself. */
export const plain = inertMarkdown;

export const line = (label: string, value: string): Line => ({ label, value });

/** A figure's line, in words that are only asked for where it is known. */
export const figureLine = <T>(
  label: string,
  figure: Figure<T>,
  words: (value: T) => string,
): Line =>
  figure.known
    ? line(label, `${words(figure.value)}${figure.measured ? message` (measured)` : ''}`)
    : { label, unknown: figure };

/**
 * A table of what is known, its first line as the head; under it what is not known and why, each
 * reason once.
 */
export function table(lines: readonly (Line | null | false | undefined)[]): string {
  const there = lines.filter((one): one is Line => Boolean(one));
  const rows = there.flatMap((one) => ('value' in one ? [`| ${one.label} | ${one.value} |`] : []));
  const [head, ...body] = rows;
  return paragraphs(head && [head, '|:--|:--|', ...body].join('\n'), unknownWords(there));
}

/** Paragraphs, those that say nothing left out. */
export const paragraphs = (...parts: readonly (string | null | undefined | false)[]): string =>
  parts.filter(Boolean).join('\n\n');

/** Stands before a paragraph that belongs at a hover's end; no text of a plan keeps such a character. */
export const LAST = '\u0002';

/** Stands before a paragraph that belongs at a hover's head. */
export const FIRST = '\u0001';

/** A verdict: it comes before the results. */
export const first = (text: string): string => `${FIRST}${text}`;

/** A formula with its source: they come last of all. */
export const last = (text: string): string => `${LAST}${text}`;

function unknownWords(lines: readonly Line[]): string {
  const byReason = new Map<string, string[]>();
  for (const one of lines) {
    if (!('unknown' in one)) continue;
    const reason = reasonWords(one.unknown);
    byReason.set(reason, [...(byReason.get(reason) ?? []), one.label]);
  }
  return [...byReason]
    .map(([reason, labels]) => message`Unknown: ${labels.join(', ')}. ${reason}`)
    .join('\n\n');
}

/** Why a figure is not known: what it needs, else the reason. */
function reasonWords(figure: UnknownFigure): string {
  const { needs, silent } = figure;
  if (silent) return message`It depends on an entry that has a finding of its own.`;
  if (needs.length > 0) {
    const words = message`Needs ${needs.map(({ key, of }) => message`${code(key)} of ${plain(of)}`).join(', ')}.`;
    const aside = asideOf(figure);
    return aside === null ? words : `${words} ${capital(aside)}.`;
  }
  const because = becauseOf(figure);
  return because ? `${capital(plain(because))}.` : '';
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** A key or rule of the language as code; anything else as plain text. */
export const code = (word: string): string =>
  /^[a-z][a-z0-9-]*$/.test(word) ? `\`${word}\`` : plain(word);
