/** A short mark by which a text is known again. */

/**
 * 64 bits that tell one text from another; nothing is secret about them. FNV-1a by two halves:
 * Fowler, Noll, Vo and Eastlake, The FNV Non-Cryptographic Hash Algorithm.
 */
export function markOf(text: string): string {
  let [a, b] = [0x811c9dc5, 0x9dc5811c];
  for (let index = 0; index < text.length; index++) {
    const code = text.charCodeAt(index);
    a = Math.imul(a ^ code, 0x01000193);
    b = Math.imul(b ^ (code + index), 0x01000193);
  }
  return `${(a >>> 0).toString(36)}-${(b >>> 0).toString(36)}`;
}
