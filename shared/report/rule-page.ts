/** A rule's documentation as a page in Markdown. */
import type { Example } from '../rules/rule.ts';
import { inLanguage, message } from '../words/message.ts';
import type { ExplainedRule } from './explain.ts';

export function rulePage({ name, severity, docs }: ExplainedRule): string {
  const parts = [
    `# ${name}`,
    `**${severity}**`,
    message`Reported when ${inLanguage(docs.when)}`,
    inLanguage(docs.why),
    inLanguage(docs.remedy),
    ...examples(message`Examples that fail`, docs.bad),
    ...examples(message`Examples that pass`, docs.good),
  ];
  return `${parts.filter(Boolean).join('\n\n')}\n`;
}

/** Values stand in fences of their own: some have several lines, some backticks. */
function examples(heading: string, all: readonly Example[]): string[] {
  if (all.length === 0) return [];
  return [
    `## ${heading}`,
    ...all.map(({ says, change }) => {
      const lines = Object.entries(change).map(([path, value]) =>
        value === null ? message`without ${path}` : `${path}: ${value}`,
      );
      const fence = lines.length === 0 ? '' : `\n\n~~~~yaml\n${lines.join('\n')}\n~~~~`;
      return `${says}${fence}`;
    }),
  ];
}
