/** The sheet's parts that a page and Markdown share, and the whole of it for Markdown. */

import {
  type Block,
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
import { capital } from './said.ts';
import { SEVERITY_WORDS, stateWords } from './words.ts';

type Part = readonly Section[];

export const planParts = ({ recording, once, findings }: Sheet) => ({
  recording: section(2, message`Cards and batteries`, [list(recording.map(worded))]),
  once: section(2, message`Checks for the day`, [checkList(once)]),
  findings: section(2, message`Findings in the plan and its kit`, [findingList(findings)]),
});

export const shotParts = ({ checks, limits, clips, findings }: ShotSheet) => ({
  checks: section(3, message`Checks`, [checkList(checks)]),
  limits: section(3, message`Watch for`, [list(limits.map(worded))]),
  clips: section(3, message`Clips`, [list(clips.map(worded))]),
  findings: section(3, message`Findings`, [findingList(findings)]),
});

export const orderTable = ({ steps }: Sheet['order'], say: Say): Table =>
  table(
    [message`Shot`, message`Setup change`, message`Takes`],
    steps.map(({ shot, changes, seconds }) => [
      shot,
      changes.length > 0 ? capital(allOf(changes)) : message`None`,
      seconds === null ? message`unknown` : say.seconds(seconds),
    ]),
    { isNamed: true, numbers: 2 },
  );

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
  const { title, file, about, deliver, order, edit, shots } = sheet;
  const { recording, once, findings } = planParts(sheet);
  return [
    ...section(1, title, [], true),
    paragraph([file, deliver].filter((one) => one).join(' · ')),
    paragraph(about ?? ''),
    ...(order.steps.length === 0
      ? []
      : section(2, message`Order of shots`, [
          orderTable(order, say),
          paragraph(takesWords(order, say)),
        ])),
    ...recording,
    ...(edit === null
      ? []
      : section(2, message`The edit`, [paragraph(capital(edit.total)), cutTable(edit)])),
    ...once,
    ...findings,
    ...shots.flatMap(shotDocument),
  ];
}

function takesWords({ seconds, untimed }: Sheet['order'], say: Say): string {
  const length = say.seconds(seconds);
  return untimed > 0
    ? message`Takes and waits: ${length}, plus ${untimed} of unknown length.`
    : message`Takes and waits: ${length}.`;
}

function shotDocument(shot: ShotSheet): Part {
  const { name, about, settings, bench, drawings } = shot;
  const { checks, limits, clips, findings } = shotParts(shot);
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
    ...clips,
    ...findings,
    ...section(3, message`Drawings`, [
      list(drawings.map(({ title, words }) => [strong(title), ': ', worded(words)])),
    ]),
  ]);
}
