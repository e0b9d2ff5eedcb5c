/** A comparison as a document: for a terminal, and for a review or an editor's page. */

import type { ComparedFinding, Comparison, FindingsChange } from '../../api/compared.ts';
import {
  type Block,
  changes,
  type Inline,
  list,
  paragraph,
  section,
  strong,
  toned,
  worded,
} from '../../api/document.ts';
import type { Say } from '../../say/say.ts';
import { inLanguage, message } from '../../words/message.ts';
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
  const found = (findings: FindingsChange): Block => list(findingItems(findings, isPage));
  const shots = told.flatMap((shot) =>
    section(
      3,
      changedName(shot),
      [
        changes(message`settings`, shot.fields.map(fieldWords)),
        changes(message`results`, followsWords(shot.figures, say), true),
        found(shot.findings),
      ],
      true,
    ),
  );
  const entries = comparison.entries.flatMap((entry): readonly Block[] => {
    const fields = entry.state === 'changed' ? entry.fields.map(fieldWords) : [];
    const told = changes(message`changed`, fields);
    const name = changedName(entry);
    return isPage ? [paragraph(strong(name)), told] : section(3, name, [told], true);
  });
  const noShot = inLanguage(IN_NO_SHOT);
  return [
    ...(isPage
      ? [...shots, ...section(3, message`Kit, lights, subjects and plan`, entries)]
      : [...entries, ...shots]),
    ...section(3, isPage ? message`Edit` : message`edit`, [
      changes(message`results`, editWords(comparison.edit)),
    ]),
    // Under a heading of their own, or they would read as the last block's.
    ...section(3, isPage ? noShot.charAt(0).toUpperCase() + noShot.slice(1) : noShot, [
      found(comparison.findings),
    ]),
    paragraph(rest > 0 ? sameShotsWords(rest) : ''),
  ];
}

function findingItems(
  { gone, new: come, changed }: FindingsChange,
  isPage: boolean,
): readonly Inline[] {
  const all = (word: string, findings: readonly ComparedFinding[]): readonly Inline[] =>
    findings.map(({ severity, what, rule }) => [
      strong(word),
      ' ',
      toned(severity, severity),
      ': ',
      worded(what),
      ...(isPage ? [] : ['  ', toned('aside', rule)]),
    ]);
  return [
    ...all(message`new`, come),
    ...all(
      message`still`,
      changed.filter((one) => !readsTheSame(one)).map(({ after }) => after),
    ),
    ...all(message`resolved`, gone),
  ];
}
