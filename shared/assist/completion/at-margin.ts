/** New entries of the section above a line's start: they are wanted there before anybody has indented. */
import { entryAt } from '../../plan/entry-id.ts';
import { ENTRIES } from '../../plan/generated/entries.ts';
import { inLanguage, message } from '../../words/message.ts';
import { namesFor } from './by-name.ts';
import type { KeyProposal } from './keys.ts';
import { shapeOf, type Where, whereIs } from './where.ts';

/** What a section's entries are indented by where it has none yet. */
const STEP = 2;

interface AtMargin {
  /** "new shot" */
  readonly label: string;
  /** Where the entries of the section begin, in characters. */
  readonly indent: number;
  readonly proposal: KeyProposal;
}

/** @param line the caret's, which nothing but what is being typed stands on */
export function newEntryAtMargin({ context, file }: Where, line: number): AtMargin | null {
  const text = context.store.text(file);
  if (!text || line === 0) return null;
  let { index } = text.locate({ line: line - 1, character: 0 });
  while (index > 0 && text.chunks[index]?.kind === 'loose') index--;
  const above = text.chunks[index];
  if (!above || above.kind === 'loose') return null;
  const isEmpty = above.kind === 'header';
  const group = isEmpty ? above.path : above.path.slice(0, -1);
  // Entries in the brackets of one line are written there.
  const indent = isEmpty ? above.indent + STEP : above.indent;
  if (group.length === 0 || indent === 0) return null;
  const where = whereIs(context, file, group);
  const shape = where && shapeOf(where);
  if (!where || shape?.kind !== 'map' || shape.names) return null;
  const entry = Object.values(ENTRIES).find(({ home }) => home === entryAt(...group));
  const [proposal] = entry ? namesFor(where, shape, [], false) : [];
  if (!entry || !proposal) return null;
  return { label: message`new ${inLanguage(entry.noun)}`, indent, proposal };
}
