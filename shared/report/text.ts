/** Findings as a terminal shows them: where, what, the line with the value marked, ways out. */
import type { LocatedFinding, LocatedFix } from '../assist/located.ts';
import type { Severity } from '../rules/rule.ts';
import { inertLine } from './inert.ts';

export interface TextReportFile {
  /** As the reader named it. */
  readonly name: string;
  readonly findings: readonly { finding: LocatedFinding; fixes: readonly LocatedFix[] }[];
  readonly line: (index: number) => string;
  /** How a related place in another file is named. */
  readonly nameOf: (file: string) => string;
}

/** SGR codes: bold, and a hue per severity that stays readable on dark and light grounds. */
const HUE: Record<Severity, string> = {
  error: '1;31',
  warning: '1;33',
  information: '1;34',
  hint: '2',
};

/** Longest piece of a line shown around the value. */
const SHOWN_COLUMNS = 100;

export function textReport(files: readonly TextReportFile[], colour: boolean): string {
  const paint = (codes: string, text: string): string =>
    colour ? `\u001b[${codes}m${text}\u001b[0m` : text;
  const out: string[] = [];
  for (const file of files) {
    if (file.findings.length === 0) continue;
    out.push(paint('1', inertLine(file.name)));
    for (const { finding, fixes } of file.findings)
      out.push(...oneFinding(file, finding, fixes, paint));
    out.push('');
  }
  out.push(summary(files));
  return `${out.join('\n')}\n`;
}

function oneFinding(
  file: TextReportFile,
  finding: LocatedFinding,
  fixes: readonly LocatedFix[],
  paint: (codes: string, text: string) => string,
): string[] {
  const { start, end } = finding.range;
  const where = `${start.line + 1}:${start.character + 1}`;
  const rows = [
    `  ${where}  ${paint(HUE[finding.severity], finding.severity)}  ${inertLine(finding.what)}  ${paint('2', finding.rule)}`,
  ];
  if (finding.why) rows.push(`      ${inertLine(finding.why)}`);
  const marked = markedLine(
    file.line(start.line),
    start.character,
    end.line === start.line ? end.character : Number.POSITIVE_INFINITY,
  );
  if (marked)
    rows.push(
      `      ${paint('2', '|')} ${marked.text}`,
      `      ${paint('2', '|')} ${paint(HUE[finding.severity], marked.mark)}`,
    );
  for (const related of finding.related) {
    const at = `${related.range.start.line + 1}:${related.range.start.character + 1}`;
    const place =
      related.file === finding.file ? at : `${inertLine(file.nameOf(related.file))}:${at}`;
    rows.push(`      see ${place}: ${inertLine(related.words)}`);
  }
  for (const fix of fixes)
    rows.push(
      `      ${paint('32', 'fix')}: ${inertLine(fix.title)}${fix.price ? ` (${inertLine(fix.price)})` : ''}`,
    );
  return rows;
}

/** The part of `line` around [start, end) and a row of carets below it; null for an empty line. */
function markedLine(
  line: string,
  start: number,
  end: number,
): { text: string; mark: string } | null {
  if (line.trim() === '') return null;
  const indent = Math.min(line.length - line.trimStart().length, start);
  const from = start - indent > SHOWN_COLUMNS / 2 ? start - SHOWN_COLUMNS / 4 : indent;
  const to = Math.min(line.length, from + SHOWN_COLUMNS);
  const before = inertLine(line.slice(from, start));
  const marked = inertLine(line.slice(start, Math.min(end, to)));
  const after = inertLine(line.slice(Math.min(end, to), to));
  const lead = from > indent ? '… ' : '';
  const tail = to < line.length ? ' …' : '';
  return {
    text: `${lead}${before}${marked}${after}${tail}`,
    mark: `${' '.repeat(lead.length + columns(before))}${'^'.repeat(Math.max(1, columns(marked)))}`,
  };
}

/** Terminal columns, near enough: wide scripts and emoji count twice, combining marks not. */
const columns = (text: string): number =>
  [...text].reduce((sum, character) => {
    if (/\p{Mn}|\u200d/u.test(character)) return sum;
    return (
      sum +
      (/[\u1100-\u115f\u2e80-\ua4cf\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe6f\uff00-\uff60\uffe0-\uffe6]|\p{Extended_Pictographic}/u.test(
        character,
      )
        ? 2
        : 1)
    );
  }, 0);

function summary(files: readonly TextReportFile[]): string {
  const counts = new Map<Severity, number>();
  for (const file of files)
    for (const { finding } of file.findings)
      counts.set(finding.severity, (counts.get(finding.severity) ?? 0) + 1);
  const said = (['error', 'warning', 'information', 'hint'] as const)
    .filter((severity) => counts.has(severity))
    .map((severity) => {
      const count = counts.get(severity)!;
      return `${count} ${severity}${count === 1 || severity === 'information' ? '' : 's'}`;
    });
  const plans = `${files.length} ${files.length === 1 ? 'file' : 'files'} checked`;
  return said.length === 0 ? `${plans}: no findings.` : `${plans}: ${said.join(', ')}.`;
}
