/** The sheet as Markdown, for a repository or a message: all but the drawings, which it has in words. */
import type { Say } from '../../rules/say.ts';
import { inertMarkdown } from '../inert.ts';
import { capital, listed } from './said.ts';
import {
  type Check,
  SEVERITY_WORDS,
  type Sheet,
  type SheetFinding,
  type ShotSheet,
  STATE_WORDS,
} from './sheet.ts';

const plain = inertMarkdown;

export function sheetMarkdown(sheet: Sheet, say: Say): string {
  const { title, file, about, deliver, once, order, recording, edit, findings, shots } = sheet;
  const parts = [
    `# ${plain(title)}`,
    [file, deliver].flatMap((one) => (one ? [plain(one)] : [])).join(' · '),
    about === null ? '' : plain(about),
    order.steps.length === 0 ? '' : orderTable(order, say),
    recording.length === 0 ? '' : `## Cards and batteries\n\n${list(recording)}`,
    edit === null
      ? ''
      : `## The edit\n\n${plain(capital(edit.total))}\n\n${table(
          edit.head.map((one) => capital(one || 'remarks')),
          edit.rows.map(({ cells }) => cells),
        )}`,
    once.length === 0 ? '' : `## Before the day\n\n${checkList(once)}`,
    findings.length === 0 ? '' : `## In the plan and its kit\n\n${findingList(findings)}`,
    ...shots.map(shotMarkdown),
  ];
  return `${parts.filter((part) => part !== '').join('\n\n')}\n`;
}

function orderTable({ steps, seconds, untimed }: Sheet['order'], say: Say): string {
  const rows = steps.map(({ shot, changes, seconds: time }) => [
    shot,
    changes.length > 0 ? capital(listed(changes)) : 'Nothing',
    time === null ? 'not known' : say.seconds(time),
  ]);
  const more = untimed > 0 ? `, and ${untimed} of unknown length` : '';
  return [
    '## Order of shots',
    table(['Shot', 'Put up or change before it', 'Takes'], rows),
    `Takes and settling: ${plain(say.seconds(seconds))}${more}.`,
  ].join('\n\n');
}

const table = (head: readonly string[], rows: readonly (readonly string[])[]): string =>
  [head, head.map(() => '---'), ...rows]
    .map((row, index) => `| ${row.map((cell) => (index === 1 ? cell : plain(cell))).join(' | ')} |`)
    .join('\n');

function shotMarkdown(shot: ShotSheet): string {
  const { name, about, state, settings, bench, checks, limits, clips, findings, drawings } = shot;
  const rows = [...settings, ...bench].map(({ label, value, follows, note }) => [
    label,
    value ?? (follows ? 'not known' : 'not set'),
    note ?? '',
  ]);
  return [
    `## ${plain(name)}`,
    `**${STATE_WORDS[state]}**`,
    about === null ? '' : plain(about),
    rows.length === 0 ? '' : table(['Set', '', ''], rows),
    checks.length === 0 ? '' : `### Check\n\n${checkList(checks)}`,
    limits.length === 0 ? '' : `### What goes wrong, and when\n\n${list(limits)}`,
    clips.length === 0 ? '' : `### Recorded\n\n${list(clips)}`,
    findings.length === 0 ? '' : `### Found\n\n${findingList(findings)}`,
    drawings.length === 0
      ? ''
      : `### In figures\n\n${drawings.map(({ title, words }) => `- **${plain(title)}**: ${plain(words)}`).join('\n')}`,
  ]
    .filter((part) => part !== '')
    .join('\n\n');
}

const list = (lines: readonly string[]): string =>
  lines.map((line) => `- ${plain(line)}`).join('\n');

const checkList = (checks: readonly Check[]): string =>
  checks
    .map(
      ({ what, done, by }) =>
        `- [${done ? 'x' : ' '}] ${plain(by === null ? what : `${what} (${by})`)}`,
    )
    .join('\n');

const findingList = (findings: readonly SheetFinding[]): string =>
  findings
    .map(
      ({ severity, what, why }) =>
        `- **${SEVERITY_WORDS[severity]}**: ${plain(why === '' ? what : `${what} ${why}`)}`,
    )
    .join('\n');
