/**
 * What a maintainer needs to see a fault again, without what is the author's own: the plan and all that
 * it uses, redacted, and what is found in them then, in Markdown for a bug report.
 */
import type { LocatedFinding } from '../../api/located.ts';
import { inertMarkdown } from '../document/markdown.ts';
import { inertLine, inertLines } from '../inert.ts';
import { fenced } from './fence.ts';
import { Redactor } from './redact.ts';

interface ReportedFile {
  /** As it is shown: a path, or an address. */
  readonly name: string;
  readonly text: string;
}

interface ReportInput {
  /** Program and version, platform, editor: one fact a line. */
  readonly facts: readonly string[];
  /** The plan itself first. */
  readonly files: readonly ReportedFile[];
  /** Rules found in the files as they are, in the order of the text. */
  readonly rules: readonly string[];
  /** What is found in redacted files, the plan's first. */
  check(files: readonly ReportedFile[]): readonly LocatedFinding[];
}

export function redactedReport({ facts, files, rules, check }: ReportInput): string {
  const redactor = new Redactor();
  const redacted = files.map(({ name, text }) => ({
    name: redactor.path(name),
    text: redactor.text(text),
  }));
  const found = check(redacted);
  const same =
    JSON.stringify([...rules].sort()) === JSON.stringify(found.map(({ rule }) => rule).sort());
  const findings = found.map(
    ({ rule, severity, range, what }) =>
      `${range.start.line + 1}:${range.start.character + 1} ${severity} ${rule}: ${inertLine(what)}`,
  );
  return [
    '## What happened',
    'What I did, what I expected, and what came instead:',
    '',
    '## With what',
    ...facts.map((fact) => `- ${fact}`),
    '',
    '## The plan, redacted',
    'Names, texts, comments and paths are replaced by others of the same length; numbers are as they were. Read it before you send it.',
    ...redacted.flatMap(({ name, text }) => [
      '',
      `${inertMarkdown(name)}:`,
      ...fenced(inertLines(text), 'yaml'),
    ]),
    '',
    '## What is found in it',
    ...(findings.length > 0 ? fenced(findings.join('\n'), 'text') : ['Nothing.']),
    ...(same ? [] : ['', `In the plan as it is: ${rules.join(', ') || 'nothing'}.`]),
    '',
  ].join('\n');
}
