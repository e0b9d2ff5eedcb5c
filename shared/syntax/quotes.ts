/** Quoted scalars on one line (YAML 1.2.2, 7.3.1 and 7.3.2). Folding over lines is `yaml`'s work. */

const escapes: Readonly<Record<string, string>> = {
  '0': '\0',
  a: '\x07',
  b: '\b',
  t: '\t',
  '\t': '\t',
  n: '\n',
  v: '\v',
  f: '\f',
  r: '\r',
  e: '\x1b',
  ' ': ' ',
  '"': '"',
  '/': '/',
  '\\': '\\',
  N: '\x85',
  _: '\xa0',
  L: '\u2028',
  P: '\u2029',
};

export const unquoteSingle = (inner: string): string => inner.replaceAll("''", "'");

/** The text between double quotes with its escapes read; null where one of them is none. */
export function unquoteDouble(inner: string): string | null {
  if (!inner.includes('\\')) return inner;
  let text = '';
  let from = 0;
  for (let at = inner.indexOf('\\'); at >= 0; at = inner.indexOf('\\', from)) {
    text += inner.slice(from, at);
    const mark = inner[at + 1] ?? '';
    const digits = mark === 'x' ? 2 : mark === 'u' ? 4 : mark === 'U' ? 8 : 0;
    if (digits > 0) {
      const hex = inner.slice(at + 2, at + 2 + digits);
      const code =
        hex.length === digits && /^[0-9a-fA-F]+$/.test(hex) ? Number.parseInt(hex, 16) : -1;
      if (code < 0 || code > 0x10ffff) return null;
      text += String.fromCodePoint(code);
    } else {
      const meant = Object.hasOwn(escapes, mark) ? escapes[mark] : undefined;
      if (meant === undefined) return null;
      text += meant;
    }
    from = at + 2 + digits;
  }
  return text + inner.slice(from);
}

/** `text` as a YAML scalar in quotes that every reader takes for the same text. */
export const quote = (text: string): string =>
  /[\\'\p{Cc}]/u.test(text)
    ? `"${text.replace(/["\\]/g, '\\$&').replace(/\n/g, '\\n').replace(/\t/g, '\\t').replace(/\r/g, '\\r')}"`
    : `'${text}'`;
