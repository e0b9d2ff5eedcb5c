/** Findings as a terminal shows them: what, where, the line with the value marked, ways out. */
import type { PlanState } from '../api/facade.ts';
import type { LocatedFinding, LocatedFix } from '../api/located.ts';
import { SEVERITIES, type Severity } from '../rules/rule.ts';
import { titleWithPrice } from '../say/fix-title.ts';
import { message } from '../words/message.ts';
import { inertLine } from './inert.ts';
import { markedLine } from './marked-line.ts';
import { type Paint, painter } from './paint.ts';

export interface ReportedFile {
  /** As the reader named it. */
  readonly name: string;
  readonly findings: readonly { finding: LocatedFinding; fixes: readonly LocatedFix[] }[];
  /** How a related place in another file is named. */
  readonly nameOf: (file: string) => string;
}

export interface TextReportFile extends ReportedFile {
  readonly line: (index: number) => string;
  /** Left out: nothing of the file was read, or it isn't looked at as a plan. */
  readonly state?: PlanState;
}

export function textReport(files: readonly TextReportFile[], colour: boolean): string {
  const paint = painter(colour);
  const blocks = files.flatMap((file) =>
    file.findings.map(({ finding, fixes }) => oneFinding(file, finding, fixes, paint).join('\n')),
  );
  return `${[...blocks, summary(files)].join('\n\n')}\n`;
}

function oneFinding(
  file: TextReportFile,
  finding: LocatedFinding,
  fixes: readonly LocatedFix[],
  paint: Paint,
): string[] {
  const { start, end } = finding.range;
  const rows = [
    `${paint(finding.severity, finding.severity)}  ${paint('heading', inertLine(finding.what))}  ${paint('aside', finding.rule)}`,
    `  ${placed(file.name, finding)}`,
  ];
  const lastColumn = end.line === start.line ? end.character : Number.POSITIVE_INFINITY;
  const marked = markedLine(file.line(start.line), start.character, lastColumn);
  if (marked)
    rows.push(
      `    ${paint('aside', '|')} ${marked.text}`,
      `    ${paint('aside', '|')} ${paint(finding.severity, marked.mark)}`,
    );
  if (finding.why) rows.push(`  ${inertLine(finding.why)}`);
  for (const related of finding.related) {
    const name = related.file === finding.file ? file.name : file.nameOf(related.file);
    rows.push(`  ${message`see ${placed(name, related)}: ${inertLine(related.words)}`}`);
  }
  for (const { title, sideEffects } of fixes)
    rows.push(`  ${paint('fix', message`fix`)}: ${inertLine(titleWithPrice(title, sideEffects))}`);
  return rows;
}

/** `file:line:column`, which terminals and editors make a link of. */
const placed = (name: string, { range: { start } }: Pick<LocatedFinding, 'range'>): string =>
  `${inertLine(name)}:${start.line + 1}:${start.character + 1}`;

function summary(files: readonly TextReportFile[]): string {
  const severities = files.flatMap(({ findings }) =>
    findings.map(({ finding }) => finding.severity),
  );
  const said = SEVERITIES.flatMap((severity) => {
    const count = severities.filter((each) => each === severity).length;
    return count === 0 ? [] : [COUNTED[severity](count)];
  });
  const checked =
    files.length === 1
      ? message`${files.length} file checked`
      : message`${files.length} files checked`;
  const found = `${checked}: ${said.length === 0 ? message`no findings` : said.join(', ')}.`;
  const states = files.flatMap(({ state }) => state ?? []);
  const shots = sum(states.map((state) => state.shots));
  return shots === 0
    ? found
    : `${found} ${clearWords(sum(states.map(({ ready }) => ready)), shots)}`;
}

const sum = (counts: readonly number[]): number => counts.reduce((all, one) => all + one, 0);

const clearWords = (ready: number, shots: number): string =>
  shots === 1 ? message`${ready} of 1 shot clear.` : message`${ready} of ${shots} shots clear.`;

const COUNTED: Readonly<Record<Severity, (count: number) => string>> = {
  error: (count) => (count === 1 ? message`${count} error` : message`${count} errors`),
  warning: (count) => (count === 1 ? message`${count} warning` : message`${count} warnings`),
  note: (count) => (count === 1 ? message`${count} note` : message`${count} notes`),
  hint: (count) => (count === 1 ? message`${count} hint` : message`${count} hints`),
};
