/** A block of code in Markdown, with a fence longer than any in the text. */
export function fenced(text: string, language: string): readonly string[] {
  const longest = Math.max(2, ...[...text.matchAll(/`+/g)].map(([ticks]) => ticks.length));
  const fence = '`'.repeat(longest + 1);
  return [`${fence}${language}`, text.replace(/\n$/, ''), fence];
}
