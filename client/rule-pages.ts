/** The page of a rule, opened from the code of one of its findings. */
import { commands, type Disposable } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import type { Pages } from './pages.ts';

const COMMAND = 'lamella.showRule';

/** Where a finding's code leads to; the server puts the rule in. It works without a network. */
export const RULE_PAGE = `command:${COMMAND}?%5B%22{rule}%22%5D`;

export const showsRules = (client: BaseLanguageClient, pages: Pages): Disposable =>
  commands.registerCommand(COMMAND, async (rule?: string) => {
    const markdown = await client.sendRequest<string | null>('lamella/rule', { rule });
    if (markdown) await pages.open(`Lamella ${rule}`, markdown);
  });
