/** A comparison as a terminal shows it. */

import type {
  ComparedFinding,
  Comparison,
  EntryChange,
  FindingsChange,
  ShotChange,
} from '../../api/compared.ts';
import type { Say } from '../../say/say.ts';
import { inLanguage, message } from '../../words/message.ts';
import { inertLine } from '../inert.ts';
import { type Paint, painter } from '../paint.ts';
import { isSame } from './compare.ts';
import { editWords } from './edit.ts';
import {
  type ChangeWords,
  changedName,
  fieldWords,
  followsWords,
  IN_NO_SHOT,
  NOTHING_DIFFERENT,
  sameShotsWords,
  toldShots,
} from './words.ts';

export function comparisonText(comparison: Comparison, say: Say, colour: boolean): string {
  const paint = painter(colour);
  if (isSame(comparison)) return `${inLanguage(NOTHING_DIFFERENT)}\n`;
  const { entries, edit, findings } = comparison;
  const { told, rest } = toldShots(comparison, say);
  const blocks = [
    ...entries.map((entry) => entryBlock(entry, paint)),
    ...told.map((shot) => shotBlock(shot, say, paint)),
    editRows(edit, paint),
    planFindings(findings, paint),
  ].filter((block) => block.length > 0);
  if (rest > 0) blocks.push([sameShotsWords(rest)]);
  return `${blocks.map((rows) => rows.join('\n')).join('\n\n')}\n`;
}

function editRows(edit: Comparison['edit'], paint: Paint): string[] {
  const words = editWords(edit);
  return words.length === 0
    ? []
    : [paint('heading', message`edit, it follows`), ...rows(words, '  ')];
}

/** Under a heading of their own, or they would read as the last shot's. */
function planFindings(findings: FindingsChange, paint: Paint): string[] {
  const found = findingRows(findings, paint);
  return found.length === 0 ? [] : [paint('heading', inLanguage(IN_NO_SHOT)), ...found];
}

const entryBlock = (entry: EntryChange, paint: Paint): string[] => [
  paint('heading', inertLine(changedName(entry))),
  ...(entry.state === 'changed' ? rows(entry.fields.map(fieldWords), '  ') : []),
];

function shotBlock(shot: ShotChange, say: Say, paint: Paint): string[] {
  const follows = followsWords(shot.figures, say);
  return [
    paint('heading', inertLine(changedName(shot))),
    ...rows(shot.fields.map(fieldWords), '  '),
    ...(follows.length > 0
      ? [paint('aside', `  ${message`it follows`}:`), ...rows(follows, '    ')]
      : []),
    ...findingRows(shot.findings, paint),
  ];
}

function rows(changes: readonly ChangeWords[], indent: string): string[] {
  const isTold = ({ before, after }: ChangeWords): boolean => before !== '' || after !== '';
  const width = Math.max(0, ...changes.filter(isTold).map(({ label }) => label.length));
  return changes.map((change) => {
    const { label, before, after } = change;
    return isTold(change)
      ? `${indent}${inertLine(label).padEnd(width)}  ${inertLine(before)} → ${inertLine(after)}`
      : `${indent}${inertLine(label)}`;
  });
}

function findingRows({ gone, new: come, changed }: FindingsChange, paint: Paint): string[] {
  const one = (word: string, { severity, what, rule }: ComparedFinding): string =>
    `  ${word} ${paint(severity, severity)}: ${inertLine(what)}  ${paint('aside', rule)}`;
  return [
    ...come.map((finding) => one(message`new`, finding)),
    ...changed.map(({ after }) => one(message`still`, after)),
    ...gone.map((finding) => one(message`gone`, finding)),
  ];
}
