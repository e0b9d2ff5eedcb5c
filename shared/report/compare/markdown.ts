/** A comparison as Markdown, for a comment on a review. */
import type {
  ComparedFinding,
  Comparison,
  EntryChange,
  FindingsChange,
  ShotChange,
} from '../../api/compared.ts';
import type { Say } from '../../say/say.ts';
import { inLanguage, message } from '../../words/message.ts';
import { inertMarkdown, wordedMarkdown } from '../inert.ts';
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

const plain = inertMarkdown;

export function comparisonMarkdown(comparison: Comparison, say: Say): string {
  if (isSame(comparison)) return `${inLanguage(NOTHING_DIFFERENT)}\n`;
  const { entries, edit, findings } = comparison;
  const { told, rest } = toldShots(comparison, say);
  const blocks = [
    ...told.map((shot) => shotBlock(shot, say)),
    ...(entries.length > 0
      ? [`### ${message`Kit, lights, subjects and plan`}`, ...entries.map(entryBlock)]
      : []),
    editBlock(edit),
    planFindings(findings),
    rest > 0 ? sameShotsWords(rest) : '',
  ];
  return `${blocks.filter((block) => block !== '').join('\n\n')}\n`;
}

function editBlock(edit: Comparison['edit']): string {
  const rows = table(message`it follows`, editWords(edit));
  return rows === '' ? '' : `### ${message`Edit`}\n\n${rows}`;
}

/** Under a heading of their own, or they would read as the last block's. */
function planFindings(findings: FindingsChange): string {
  const list = findingList(findings);
  return list === ''
    ? ''
    : `### ${inLanguage(IN_NO_SHOT).charAt(0).toUpperCase()}${inLanguage(IN_NO_SHOT).slice(1)}\n\n${list}`;
}

const entryBlock = (entry: EntryChange): string =>
  [
    `**${plain(changedName(entry))}**`,
    entry.state === 'changed' ? table(message`changed`, entry.fields.map(fieldWords)) : '',
  ]
    .filter((part) => part !== '')
    .join('\n\n');

const shotBlock = (shot: ShotChange, say: Say): string =>
  [
    `### ${plain(changedName(shot))}`,
    table(message`set`, shot.fields.map(fieldWords)),
    table(message`it follows`, followsWords(shot.figures, say)),
    findingList(shot.findings),
  ]
    .filter((part) => part !== '')
    .join('\n\n');

function table(head: string, changes: readonly ChangeWords[]): string {
  if (changes.length === 0) return '';
  const rows = changes.map(
    ({ label, before, after }) =>
      `| ${plain(label)} | ${wordedMarkdown(before)} | ${wordedMarkdown(after)} |`,
  );
  return [message`| ${head} | before | after |`, '| --- | --- | --- |', ...rows].join('\n');
}

function findingList({ gone, new: come, changed }: FindingsChange): string {
  const one = (word: string, { severity, what }: ComparedFinding): string =>
    `- **${word}** ${severity}: ${plain(what)}`;
  return [
    ...come.map((finding) => one(message`new`, finding)),
    ...changed.map(({ after }) => one(message`still`, after)),
    ...gone.map((finding) => one(message`gone`, finding)),
  ].join('\n');
}
