/** A comparison as a document: for a terminal, and for a review or an editor's page. */

import type {
  ComparedFinding,
  Comparison,
  FindingsChange,
  ShotChange,
} from '../../api/compared.ts';
import {
  type Block,
  changes,
  type Inline,
  list,
  paragraph,
  type Section,
  section,
  strong,
  toned,
  worded,
} from '../../api/document.ts';
import type { Say } from '../../say/say.ts';
import { inLanguage, message } from '../../words/message.ts';
import { capital } from '../sheet/said.ts';
import { isSame } from './compare.ts';
import { editWords } from './edit.ts';
import {
  changedName,
  fieldWords,
  followsWords,
  IN_NO_SHOT,
  NOTHING_DIFFERENT,
  readsTheSame,
  sameShotsWords,
  toldShots,
} from './words.ts';

/** Where it is read: a page heads its tables, and has what was set for the shots below them. */
type ReadIn = 'terminal' | 'page';

export function comparisonDocument(
  comparison: Comparison,
  say: Say,
  readIn: ReadIn,
): readonly Block[] {
  if (isSame(comparison)) return [paragraph(inLanguage(NOTHING_DIFFERENT))];
  const isPage = readIn === 'page';
  const { told, rest } = toldShots(comparison, say);
  const shots = told.flatMap((shot) =>
    section(3, changedName(shot), shotBlocks(shot, say, readIn), true),
  );
  const { entries, edit, findings } = otherSections(comparison, readIn, 3);
  return [
    ...(isPage ? [...shots, ...entries] : [...entries, ...shots]),
    ...edit,
    ...findings,
    paragraph(rest > 0 ? sameShotsWords(rest) : ''),
  ];
}

/** What is different of one shot: its settings, what follows, and its findings. */
export const shotBlocks = (shot: ShotChange, say: Say, readIn: ReadIn): readonly Block[] => [
  changes(message`settings`, shot.fields.map(fieldWords)),
  changes(message`results`, followsWords(shot.figures, say), true),
  list(findingItems(shot.findings, readIn)),
];

/** What is different beside the shots, each part under a heading of its own where a page has it. */
export function otherSections(
  comparison: Comparison,
  readIn: ReadIn,
  level: Section['level'],
): Readonly<Record<'entries' | 'edit' | 'findings', readonly Block[]>> {
  const isPage = readIn === 'page';
  const entries = comparison.entries.flatMap((entry): readonly Block[] => {
    const fields = entry.state === 'changed' ? entry.fields.map(fieldWords) : [];
    const told = changes(message`changed`, fields);
    const name = changedName(entry);
    return isPage ? [paragraph(strong(name)), told] : section(3, name, [told], true);
  });
  const noShot = inLanguage(IN_NO_SHOT);
  return {
    entries: isPage ? section(level, message`Kit, lights, subjects and plan`, entries) : entries,
    edit: section(level, isPage ? message`Edit` : message`edit`, [
      changes(message`results`, editWords(comparison.edit)),
    ]),
    // Under a heading of their own, or they would read as the last block's.
    findings: section(level, isPage ? capital(noShot) : noShot, [
      list(findingItems(comparison.findings, readIn)),
    ]),
  };
}

/** "**new** warning: Depth of field is 2.1 mm; sugar needs 4 mm." */
export const findingsSaid = (
  word: string,
  findings: readonly ComparedFinding[],
  readIn: ReadIn,
): readonly Inline[] =>
  findings.map(({ severity, what, rule }) => [
    strong(word),
    ' ',
    toned(severity, severity),
    ': ',
    worded(what),
    ...(readIn === 'page' ? [] : ['  ', toned('aside', rule)]),
  ]);

const findingItems = (
  { gone, new: come, changed }: FindingsChange,
  readIn: ReadIn,
): readonly Inline[] => [
  ...findingsSaid(message`new`, come, readIn),
  ...findingsSaid(
    message`still`,
    changed.filter((one) => !readsTheSame(one)).map(({ after }) => after),
    readIn,
  ),
  ...findingsSaid(message`resolved`, gone, readIn),
];
