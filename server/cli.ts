/**
 * `lamella` as a process. A check is what editors, hooks and services start again and again, so it
 * stands here alone; every other command is in a file of its own, loaded where one is called.
 */
import path from 'node:path';
import { ALL_RULES } from '../shared/rules/registry.ts';
import { createChecker } from '../shared/workspace/checker.ts';
import { check } from './commands/check.ts';
import { runCommand } from './run-command.ts';
import { processTerminal } from './terminal.ts';

const [first, ...rest] = process.argv.slice(2);

if (first === check.name) {
  const surroundings = { terminal: processTerminal(), createCore: createChecker, rules: ALL_RULES };
  void runCommand(check, rest, surroundings).then((status) => {
    // Not process.exit: what is still on its way to a pipe would be lost.
    process.exitCode = status;
  });
} else require(path.join(__dirname, 'lamella-commands.cjs'));
