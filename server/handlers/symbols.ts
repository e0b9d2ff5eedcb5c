import { type DocumentSymbol, type SymbolInformation, SymbolKind } from 'vscode-languageserver';
import type { Core, OutlineSymbol } from '../../shared/api/facade.ts';
import type { FileId } from '../../shared/plan/place.ts';
import { message } from '../../shared/words/message.ts';
import type { ClientFeatures } from '../client-features.ts';

const KINDS: Readonly<Record<OutlineSymbol['kind'], SymbolKind>> = {
  section: SymbolKind.Namespace,
  entry: SymbolKind.Struct,
  field: SymbolKind.Field,
};

export function symbols(
  core: Core,
  client: Pick<ClientFeatures, 'hierarchicalSymbols'>,
  file: FileId,
  uri: string,
): DocumentSymbol[] | SymbolInformation[] {
  const outline = core.symbols(file);
  return client.hierarchicalSymbols ? outline.map(nested) : flat(outline, uri);
}

/** Of symbols that an edit left as they were: an outline is asked for after every key. */
const known = new WeakMap<OutlineSymbol, DocumentSymbol>();

function nested(symbol: OutlineSymbol): DocumentSymbol {
  const before = known.get(symbol);
  if (before) return before;
  const made: DocumentSymbol = {
    name: shown(symbol.name),
    kind: KINDS[symbol.kind],
    range: symbol.range,
    selectionRange: symbol.selection,
    children: symbol.children.map(nested),
  };
  if (symbol.detail !== '') made.detail = symbol.detail;
  known.set(symbol, made);
  return made;
}

const flat = (
  outline: readonly OutlineSymbol[],
  uri: string,
  containerName?: string,
): SymbolInformation[] =>
  outline.flatMap((symbol) => [
    {
      name: shown(symbol.name),
      kind: KINDS[symbol.kind],
      location: { uri, range: symbol.range },
      ...(containerName !== undefined && { containerName }),
    },
    ...flat(symbol.children, uri, symbol.name),
  ]);

/** The protocol allows no empty name; a key being typed may be one. */
const shown = (name: string): string => (name.trim() === '' ? message`(no name)` : name);
