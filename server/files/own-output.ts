/** How a file shows that Lamella wrote it: only such a file is exchanged for a new one unasked. */

export type OutputKind =
  | 'html'
  | 'md'
  | 'text'
  | 'json'
  | 'otio'
  | 'fcpxml'
  | 'edl'
  | 'csv'
  | 'png';

/** What ends the file, where its format leaves no other place. Never translated: it is compared. */
const CLOSING: Partial<Readonly<Record<OutputKind, string>>> = {
  md: '\n<!-- Made by Lamella -->\n',
  text: '\nMade by Lamella\n',
  fcpxml: '<!-- Made by Lamella -->\n',
  edl: '* Made by Lamella\r\n',
};

/** How the file begins; programs that save it anew hardly ever write it to the character. */
const OPENING: Partial<Readonly<Record<OutputKind, RegExp>>> = {
  html: /^<!doctype html>\n<html lang="[\w-]+"><head><meta name="generator" content="Lamella">/,
  json: /^\{\n {2}"version": 1,\n {2}"before": /,
  otio: /^\{\n {2}"OTIO_SCHEMA": "Timeline\.1",\n {2}"metadata": \{\n {4}"lamella": \{/,
  // Behind a byte order mark in UTF-8, where one was asked for.
  csv: /^(?:\xef\xbb\xbf)?number,cut,shot,start timecode,end timecode,/,
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are the signature
  png: /^\x89PNG\r\n\x1a\n/,
};

/** A text chunk (W3C PNG, 11.3.3.2), which stands before or behind the picture's data. */
const NAMED: Partial<Readonly<Record<OutputKind, string>>> = { png: 'tEXtSoftware\0Lamella' };

/** As it is written to a file. */
export function marked(kind: OutputKind, content: string | Uint8Array): Uint8Array {
  const closing = CLOSING[kind];
  if (typeof content !== 'string') return content;
  return Buffer.from(closing === undefined ? content : content + closing, 'utf8');
}

/** Whether Lamella wrote a file of that kind: by its first or its last bytes. */
export function isOwn(kind: OutputKind, head: Uint8Array, tail: Uint8Array): boolean {
  const closing = CLOSING[kind];
  if (closing !== undefined) return Buffer.from(tail).toString('utf8').endsWith(closing);
  const [first, last] = [head, tail].map((part) => Buffer.from(part).toString('latin1'));
  const name = NAMED[kind] ?? '';
  return (
    OPENING[kind]?.test(first ?? '') === true &&
    (first?.includes(name) || last?.includes(name)) === true
  );
}
