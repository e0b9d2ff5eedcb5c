/**
 * `lamella check` for the process that cli.ts starts: it stands alone because editors, hooks and
 * services start it again and again.
 */
import { ALL_RULES } from '../shared/rules/registry.ts';
import { createChecker } from '../shared/workspace/checker.ts';
import { check } from './commands/check.ts';
import { runCommand } from './run-command.ts';
import { processTerminal } from './terminal.ts';

const surroundings = { terminal: processTerminal(), createCore: createChecker, rules: ALL_RULES };

void runCommand(check, process.argv.slice(3), surroundings).then((status) => {
  // Not process.exit: what is still on its way to a pipe would be lost.
  process.exitCode = status;
});
