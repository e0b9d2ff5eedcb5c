/** Text with places to fill in: `fill` is what stands there until something else is written. */

export type Piece = string | { readonly fill: string };

export const plainText = (pieces: readonly Piece[]): string =>
  pieces.map((piece) => (typeof piece === 'string' ? piece : piece.fill)).join('');

/** In the syntax of LSP snippets, with stops in their order and the caret at the end. */
export function snippetText(pieces: readonly Piece[]): string {
  let stop = 0;
  return pieces
    .map((piece) =>
      typeof piece === 'string' ? escaped(piece) : `\${${++stop}:${escaped(piece.fill)}}`,
    )
    .join('');
}

const escaped = (text: string): string => text.replace(/[\\$}]/g, '\\$&');

export const hasFills = (pieces: readonly Piece[]): boolean =>
  pieces.some((piece) => typeof piece !== 'string');

/** A scalar behind its colon, up to the comma, brace or line end behind it. */
const SCALAR = /(?<=: )(?![[{])[^,{}[\]\n]*[^,{}[\]\n ](?=\n|$| *[,}])/g;
/** An item of a list in brackets. */
const ITEM = /(?<=[[] ?|, )[a-z][a-z0-9-]*(?= ?[\],])/g;

/** Every value of `text` (YAML of this house's own making) as a place to fill in. */
export function fillable(text: string): Piece[] {
  const pieces: Piece[] = [];
  let end = 0;
  const found = [...text.matchAll(SCALAR), ...text.matchAll(ITEM)].sort(
    (a, b) => a.index - b.index,
  );
  for (const { 0: fill, index } of found) {
    if (index < end) continue;
    pieces.push(text.slice(end, index), { fill });
    end = index + fill.length;
  }
  return [...pieces, text.slice(end)].filter((piece) => piece !== '');
}

/** Only the values of these keys as places to fill in, each where it stands first. */
export function fillableAt(text: string, keys: readonly string[]): Piece[] {
  const left = new Set(keys);
  return fillable(text).map((piece, index, all) => {
    if (typeof piece === 'string') return piece;
    const before = all[index - 1];
    const key = typeof before === 'string' ? /([a-z-]+): $/.exec(before)?.[1] : undefined;
    return key !== undefined && left.delete(key) ? piece : piece.fill;
  });
}

/** With `column` spaces before every line but the first, and line ends as the file has them. */
export const laidOut = (pieces: readonly Piece[], column: number, eol: string): readonly Piece[] =>
  pieces.map((piece) =>
    typeof piece === 'string' ? piece.replaceAll('\n', eol + ' '.repeat(column)) : piece,
  );
