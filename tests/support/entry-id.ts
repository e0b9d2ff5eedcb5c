import { entryAt } from '../../shared/plan/entry-id.ts';
import type { EntryId } from '../../shared/plan/place.ts';

/** An id as the texts of tests write it: 'shots/drift'. */
export const entryId = (text: string): EntryId => entryAt(...text.split('/'));
