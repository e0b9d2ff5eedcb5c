/** The sheet's parts that a page and Markdown share, and the whole of it for Markdown. */

import {
  type Block,
  type Item,
  type List,
  list,
  paragraph,
  type Section,
  section,
  strong,
  type Table,
  table,
  toned,
  worded,
} from '../../api/document.ts';
import type { Check, EditSheet, Sheet, SheetFinding, ShotSheet } from '../../api/sheet.ts';
import type { Say } from '../../say/say.ts';
import { allOf } from '../../words/listed.ts';
import { inLanguage, message } from '../../words/message.ts';
import { commentList } from '../review.ts';
import { measurementsDocument } from './measurements.ts';
import { capital } from './said.ts';
import { SEVERITY_WORDS, stateWords } from './words.ts';

type Part = readonly Section[];

export const planParts = ({ recording, once, findings }: Sheet) => ({
  recording: section(2, message`Cards and batteries`, [list(recording.map(worded))]),
  once: section(2, message`Checks for the day`, [checkList(once)]),
  findings: section(2, message`Findings in the plan and its kit`, [findingList(findings)]),
});

export const shotParts = ({
  checks,
  limits,
  focus,
  takes,
  clips,
  review,
  findings,
}: ShotSheet) => ({
  checks: section(3, message`Checks`, [checkList(checks)]),
  limits: section(3, message`Watch for`, [list(limits.map(worded))]),
  focus: focus ? section(3, focus.title, [paragraph(worded(focus.words)), focus.table]) : [],
  takes: section(3, message`Take log`, [takeLog(takes)]),
  clips: section(3, message`Clips`, [list(clips.map(worded))]),
  review: section(3, message`Comments`, [commentList(review)]),
  findings: section(3, message`Findings`, [findingList(findings)]),
});

export const orderTable = ({ steps }: Sheet['order'], say: Say): Table => {
  const isTimed = steps.some(({ begins }) => begins !== null);
  return table(
    [message`Shot`, ...(isTimed ? [message`Begins`] : []), message`Setup change`, message`Takes`],
    steps.map(({ shot, changes, seconds, begins }) => [
      shot,
      ...(isTimed ? [begins ?? message`unknown`] : []),
      changes.length > 0 ? worded(capital(changes.join('; '))) : message`None`,
      seconds === null ? message`unknown` : say.seconds(seconds),
    ]),
    { isNamed: true, numbers: isTimed ? 3 : 2 },
  );
};

/** As the terminal has it, under a head of its own. */
export const cutTable = ({ table: { head, rows } }: EditSheet): Table =>
  table(
    head.map((one) => capital(String(one) || message`remarks`)),
    rows,
  );

const checkList = (checks: readonly Check[]): List =>
  list(
    checks.map(({ what, by }) => (by === null ? what : `${what} (${by})`)),
    { done: checks.map(({ done }) => done) },
  );

const findingList = (findings: readonly SheetFinding[]): List =>
  list(
    findings.map(({ severity, what, why }) => [
      toned(severity, [strong(inLanguage(SEVERITY_WORDS[severity])), ': ']),
      worded(why === '' ? what : `${what} ${why}`),
    ]),
    { of: 'findings' },
  );

export function sheetDocument(sheet: Sheet, say: Say): readonly Block[] {
  const { title, file, about, deliver, day, order, edit, shots } = sheet;
  const { recording, once, findings } = planParts(sheet);
  return [
    ...section(1, title, [], true),
    paragraph([file, deliver].filter((one) => one).join(' · ')),
    paragraph(about ?? ''),
    ...(day === null
      ? []
      : section(2, message`The day`, [
          paragraph(day.when),
          list(day.remarks.map(worded)),
          paragraph(worded(day.drawing.words)),
        ])),
    ...(order.steps.length === 0
      ? []
      : section(2, message`Order of shots`, [
          orderTable(order, say),
          ...runningWords(order).map((words) => paragraph(worded(words))),
          paragraph(takesWords(order, say)),
        ])),
    ...recording,
    ...(edit === null
      ? []
      : section(2, message`The edit`, [paragraph(capital(edit.total)), cutTable(edit)])),
    ...once,
    ...findings,
    ...shotsDocument(shots),
    ...measurementsDocument(sheet.measurements),
  ];
}

/** What runs by itself, and what can be done meanwhile. */
export const runningWords = ({ running, steps }: Sheet['order']): readonly string[] =>
  running.map(({ shot, beside }) =>
    beside.length > 0
      ? message`Start \`${shot}\` first. Shoot ${allOf(beside.map((one) => `\`${one}\``))} while it runs, and keep their light and every touch away from it.`
      : steps.length > 1
        ? message`Start \`${shot}\` and leave it alone. The other shots need its body, parts, subject or lights.`
        : message`Start \`${shot}\` and leave it alone.`,
  );

/** What rolling and waiting take, and what they leave out. */
export function takesWords({ seconds, untimed }: Sheet['order'], say: Say): string {
  const all = message`Rolling and waiting only; not rigging, dipping, relighting or retakes.`;
  return `${lengthWords(seconds, untimed, say)} ${all}`;
}

function lengthWords(seconds: number, untimed: number, say: Say): string {
  if (seconds === 0 && untimed > 0) return message`Takes and waits: unknown.`;
  const length = say.seconds(seconds);
  if (untimed === 0) return message`Takes and waits: ${length}.`;
  return untimed === 1
    ? message`Takes and waits: ${length}, plus ${untimed} shot of unknown length.`
    : message`Takes and waits: ${length}, plus ${untimed} shots of unknown length.`;
}

/** More takes than this are noted on a sheet of their own. */
const MOST_TAKES = 12;

/** Room to write down what was shot: a line a take. */
const takeLog = (takes: number): Table =>
  table(
    [message`Take`, message`Good`, message`Clip number`, message`Ring, dimmers`, message`Notes`],
    Array.from({ length: Math.min(takes, MOST_TAKES) }, (_, index) => [
      String(index + 1),
      '\u2610',
      '',
      '',
      '',
    ]),
    { isNamed: true },
  );

/** What a drawing says of two shots alike is said once. */
function shotsDocument(shots: readonly ShotSheet[]): Part {
  const said = new Map<string, string>();
  return shots.flatMap((shot) => {
    const words = shot.drawings.map(({ id, title, words }): Item => {
      // The colours of one film differ between shots by a nanometre, for its tilt.
      const subject = shot.bench.find(({ key }) => key === 'subject')?.value ?? '';
      const key = id === 'colours' && subject !== '' ? `${id} ${subject}` : `${id} ${words}`;
      const before = said.get(key);
      if (before === undefined) said.set(key, shot.name);
      return [strong(title), ': ', worded(before ? message`as in \`${before}\`.` : words)];
    });
    return shotDocument(shot, words);
  });
}

function shotDocument(shot: ShotSheet, drawings: readonly Item[]): Part {
  const { name, about, settings, bench } = shot;
  const { checks, limits, focus, takes, clips, review, findings } = shotParts(shot);
  const rows = [...settings, ...bench].map(({ label, value, follows, note }) => [
    label,
    value ?? (follows ? message`unknown` : message`not set`),
    note ?? '',
  ]);
  return section(2, name, [
    paragraph(strong(stateWords(shot))),
    paragraph(about ?? ''),
    table([message`Settings`, '', ''], rows),
    ...checks,
    ...limits,
    ...focus,
    ...takes,
    ...clips,
    ...review,
    ...findings,
    ...section(3, message`Drawings`, [list(drawings)]),
  ]);
}
