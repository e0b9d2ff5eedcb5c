/**
 * Findings as workflow commands, which GitHub's runners turn into remarks on the lines of a
 * change. Escapes as its own toolkit has them (actions/toolkit, core/src/command.ts).
 */
import { type LocatedFinding, messageOf } from '../api/located.ts';
import type { Severity } from '../rules/rule.ts';
import { inertLine } from './inert.ts';
import type { ReportedFile } from './text.ts';

const COMMANDS = {
  error: 'error',
  warning: 'warning',
  note: 'notice',
} as const satisfies Partial<Record<Severity, string>>;

/** Hints are for the text alone and left out. */
export const githubReport = (files: readonly ReportedFile[]): string =>
  files
    .flatMap(({ name, findings }) => findings.map(({ finding }) => command(name, finding)))
    .join('');

function command(name: string, finding: LocatedFinding): string {
  const { severity, range, rule } = finding;
  if (severity === 'hint') return '';
  const { start, end } = range;
  const properties = {
    file: name,
    line: start.line + 1,
    endLine: end.line + 1,
    // Columns are read only of what stands on one line.
    ...(start.line === end.line && { col: start.character + 1, endColumn: end.character + 1 }),
    title: rule,
  };
  const said = Object.entries(properties).map(
    ([key, value]) => `${key}=${property(String(value))}`,
  );
  return `::${COMMANDS[severity]} ${said.join(',')}::${data(messageOf(finding))}\n`;
}

const data = (text: string): string => inertLine(text).replaceAll('%', '%25');

const property = (text: string): string => data(text).replaceAll(':', '%3A').replaceAll(',', '%2C');
