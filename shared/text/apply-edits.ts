/** Edits of a text, said by line and character, made. */
import { ChunkedText, type TextRange } from './chunked-text.ts';

/** The text with the edits made, each at its place in the text as it was; none may overlap. */
export function withEdits(
  text: string,
  edits: readonly { readonly range: TextRange; readonly text: string }[],
): string {
  const document = ChunkedText.from(text);
  const offsetOf = (position: TextRange['start']): number => {
    const { index, offset } = document.locate(position);
    return document.absolute(index, offset);
  };
  const placed = edits
    .map(({ range, text: written }) => ({
      from: offsetOf(range.start),
      to: offsetOf(range.end),
      written,
    }))
    // Stable: what is put in at one place stays in the order of the edits.
    .sort((a, b) => a.from - b.from);
  let made = '';
  let kept = 0;
  for (const { from, to, written } of placed) {
    made += text.slice(kept, from) + written;
    kept = Math.max(kept, to);
  }
  return made + text.slice(kept);
}
