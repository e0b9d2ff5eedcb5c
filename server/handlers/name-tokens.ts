/** Names as semantic tokens: one type for all, so that they look alike, and a modifier for each kind. */
import type { SemanticTokens, SemanticTokensLegend } from 'vscode-languageserver';
import type { Core } from '../../shared/api/facade.ts';
import type { Range } from '../../shared/api/located.ts';
import { NAME_KINDS, type NameToken } from '../../shared/api/name-tokens.ts';
import type { FileId } from '../../shared/plan/place.ts';

/** `struct` is what the outline calls entries, and colours them as the grammar does. */
export const LEGEND: SemanticTokensLegend = {
  tokenTypes: ['struct'],
  tokenModifiers: ['declaration', ...NAME_KINDS],
};

export const tokens = (core: Core, file: FileId, range?: Range): SemanticTokens => {
  const lines = range && { first: range.start.line, last: range.end.line };
  return { data: encoded(core.names(file, lines)) };
};

/** Five numbers a token, places relative to the one before (LSP 3.17, semantic tokens). */
function encoded(found: readonly NameToken[]): number[] {
  const data: number[] = [];
  let line = 0;
  let character = 0;
  for (const token of found) {
    if (token.kind === null) continue;
    const isSameLine = token.line === line;
    const modifiers = (2 << NAME_KINDS.indexOf(token.kind)) | Number(token.isDefinition);
    const from = isSameLine ? token.character - character : token.character;
    data.push(token.line - line, from, token.length, 0, modifiers);
    ({ line, character } = token);
  }
  return data;
}
