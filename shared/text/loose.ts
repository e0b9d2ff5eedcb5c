/** Problems of lines that are no part of a plan. */

import { LineReader } from '../syntax/lines.ts';
import { span } from '../syntax/nodes.ts';
import { tellLine } from './line-defects.ts';
import { fix, type Problems } from './problems.ts';
import type { Oddity } from './split-state.ts';

export function tellLoose(text: string, oddity: Oddity | null, problems: Problems): void {
  if (oddity === null) return;
  const line = new LineReader(text).at(0);
  const written = text.slice(0, line.end);
  const start = written.search(/[^ \t]/);
  const end = written.trimEnd().length;
  const place = span(start, end);
  switch (oddity) {
    case 'conflict-marker':
      problems.syntax('conflict-marker', place, { text: written.slice(0, 7) });
      return;
    case 'document-marker':
    case 'directive': {
      const isAlone = oddity === 'directive' || /^(---|\.\.\.)[ \t]*(#.*)?$/.test(written);
      const fixes = isAlone ? [fix('remove-line', 0, line.next, '')] : [];
      problems.outside(oddity, place, { text: written.slice(0, end).slice(0, 60) }, fixes);
      return;
    }
    case 'complex-key':
      problems.outside('complex-key', span(start, start + 1));
      return;
    default:
      tellLine(text, 0, line.end, problems);
  }
}
