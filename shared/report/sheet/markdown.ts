/** The sheet as Markdown, for a repository or a message: all but the drawings, which it has in words. */

import type { Check, Sheet, SheetFinding, ShotSheet } from '../../api/sheet.ts';
import type { Say } from '../../say/say.ts';
import { allOf } from '../../words/listed.ts';
import { inLanguage, message } from '../../words/message.ts';
import { inertMarkdown, wordedMarkdown } from '../inert.ts';
import { capital } from './said.ts';
import { SEVERITY_WORDS, stateWords } from './words.ts';

const plain = inertMarkdown;

export function sheetMarkdown(sheet: Sheet, say: Say): string {
  const { title, file, about, deliver, once, order, recording, edit, findings, shots } = sheet;
  const parts = [
    `# ${plain(title)}`,
    [file, deliver].flatMap((one) => (one ? [plain(one)] : [])).join(' · '),
    about === null ? '' : plain(about),
    order.steps.length === 0 ? '' : orderTable(order, say),
    recording.length === 0 ? '' : `## ${message`Cards and batteries`}\n\n${list(recording)}`,
    edit === null
      ? ''
      : `## ${message`The edit`}\n\n${wordedMarkdown(capital(edit.total))}\n\n${table(
          edit.head.map((one) => capital(one || message`remarks`)),
          edit.rows.map(({ cells }) => cells),
        )}`,
    once.length === 0 ? '' : `## ${message`Before the day`}\n\n${checkList(once)}`,
    findings.length === 0
      ? ''
      : `## ${message`In the plan and its kit`}\n\n${findingList(findings)}`,
    ...shots.map(shotMarkdown),
  ];
  return `${parts.filter((part) => part !== '').join('\n\n')}\n`;
}

function orderTable({ steps, seconds, untimed }: Sheet['order'], say: Say): string {
  const rows = steps.map(({ shot, changes, seconds: time }) => [
    shot,
    changes.length > 0 ? capital(allOf(changes)) : message`Nothing`,
    time === null ? message`not known` : say.seconds(time),
  ]);
  const length = plain(say.seconds(seconds));
  return [
    `## ${message`Order of shots`}`,
    table([message`Shot`, message`Put up or change before it`, message`Takes`], rows),
    untimed > 0
      ? message`Takes and settling: ${length}, and ${untimed} of unknown length.`
      : message`Takes and settling: ${length}.`,
  ].join('\n\n');
}

const table = (head: readonly string[], rows: readonly (readonly string[])[]): string =>
  [head, head.map(() => '---'), ...rows]
    .map(
      (row, index) =>
        `| ${row.map((cell) => (index === 1 ? cell : wordedMarkdown(cell))).join(' | ')} |`,
    )
    .join('\n');

function shotMarkdown(shot: ShotSheet): string {
  const { name, about, settings, bench, checks, limits, clips, findings, drawings } = shot;
  const rows = [...settings, ...bench].map(({ label, value, follows, note }) => [
    label,
    value ?? (follows ? message`not known` : message`not set`),
    note ?? '',
  ]);
  return [
    `## ${plain(name)}`,
    `**${stateWords(shot)}**`,
    about === null ? '' : plain(about),
    rows.length === 0 ? '' : table([message`Set`, '', ''], rows),
    checks.length === 0 ? '' : `### ${message`Check`}\n\n${checkList(checks)}`,
    limits.length === 0 ? '' : `### ${message`What goes wrong, and when`}\n\n${list(limits)}`,
    clips.length === 0 ? '' : `### ${message`Recorded`}\n\n${list(clips)}`,
    findings.length === 0 ? '' : `### ${message`Found`}\n\n${findingList(findings)}`,
    drawings.length === 0
      ? ''
      : `### ${message`In figures`}\n\n${drawings.map(({ title, words }) => `- **${plain(title)}**: ${wordedMarkdown(words)}`).join('\n')}`,
  ]
    .filter((part) => part !== '')
    .join('\n\n');
}

const list = (lines: readonly string[]): string =>
  lines.map((line) => `- ${wordedMarkdown(line)}`).join('\n');

const checkList = (checks: readonly Check[]): string =>
  checks
    .map(
      ({ what, done, by }) =>
        `- [${done ? 'x' : ' '}] ${by === null ? wordedMarkdown(what) : `${wordedMarkdown(what)} (${plain(by)})`}`,
    )
    .join('\n');

const findingList = (findings: readonly SheetFinding[]): string =>
  findings
    .map(
      ({ severity, what, why }) =>
        `- **${inLanguage(SEVERITY_WORDS[severity])}**: ${wordedMarkdown(why === '' ? what : `${what} ${why}`)}`,
    )
    .join('\n');
