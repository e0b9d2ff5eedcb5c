/**
 * The layout of a plan: which sections hold named entries, and which hold groups of them.
 * Everything else at the left margin is one short field. The text is split by this and by nothing
 * else of the language.
 */

export interface Section {
  /** Keys of the section that are groups with entries of their own; 'all': each of them is. */
  readonly groups: 'all' | readonly string[];
}

/** Sections by their key. */
export type Layout = ReadonlyMap<string, Section>;

const entries: Section = { groups: [] };

export const planLayout: Layout = new Map<string, Section>([
  ['kit', { groups: 'all' }],
  ['rigs', entries],
  ['lights', entries],
  ['subjects', entries],
  ['shots', entries],
  ['edit', { groups: ['cuts'] }],
  ['clips', entries],
]);

/** Fields whose value is prose: here a ` #` in the middle of a line is taken for part of it. */
export const proseKeys: ReadonlySet<string> = new Set([
  'title',
  'about',
  'note',
  'because',
  'label',
]);

export const isGroup = (section: Section, key: string): boolean =>
  section.groups === 'all' || section.groups.includes(key);
