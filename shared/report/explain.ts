/** A rule's documentation, as a terminal shows it. */
import type { Example, RuleDocs, Severity } from '../rules/rule.ts';
import { inLanguage, message } from '../words/message.ts';
import { painter } from './paint.ts';
import { wrap } from './wrap.ts';

const WIDTH = 88;

export interface ExplainedRule {
  readonly name: string;
  readonly severity: Severity;
  readonly docs: RuleDocs;
}

export function explainRule({ name, severity, docs }: ExplainedRule, colour: boolean): string {
  const paint = painter(colour);
  const parts = [
    `${paint('heading', name)}  ${paint(severity, severity)}`,
    wrap(message`Reported when ${inLanguage(docs.when)}`, WIDTH),
    wrap(inLanguage(docs.why), WIDTH),
    wrap(inLanguage(docs.remedy), WIDTH),
    ...examples(paint('heading', message`Examples that fail`), docs.bad),
    ...examples(paint('heading', message`Examples that pass`), docs.good),
  ];
  return `${parts.filter(Boolean).join('\n\n')}\n`;
}

function examples(heading: string, all: readonly Example[]): string[] {
  if (all.length === 0) return [];
  const rows = all.map(({ says, change }) =>
    [
      wrap(says, WIDTH, '  '),
      ...Object.entries(change).map(([path, value]) =>
        value === null ? `    ${message`without ${path}`}` : `    ${path}: ${value}`,
      ),
    ].join('\n'),
  );
  return [`${heading}\n${rows.join('\n')}`];
}

export function listRules(rules: readonly ExplainedRule[], colour: boolean): string {
  const paint = painter(colour);
  const width = Math.max(...rules.map(({ name }) => name.length));
  const rows = [...rules]
    .sort((a, b) => (a.name < b.name ? -1 : 1))
    .map(({ name, severity, docs }) => {
      const label = `${name.padEnd(width)}  ${severity.padEnd('note'.length)}  `;
      const [first = '', ...more] = wrap(
        inLanguage(docs.when),
        Math.max(40, WIDTH + 20 - label.length),
      ).split('\n');
      const painted = `${name.padEnd(width)}  ${paint(severity, severity.padEnd('note'.length))}  `;
      return [painted + first, ...more.map((line) => ' '.repeat(label.length) + line)].join('\n');
    });
  return `${rows.join('\n')}\n`;
}
