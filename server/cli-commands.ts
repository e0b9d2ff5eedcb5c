/** All commands of `lamella`, for the process that cli.ts starts. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { createCore } from '../shared/core/core.ts';
import { ALL_RULES } from '../shared/rules/registry.ts';
import { runCommandLine } from './command-line.ts';
import { WorkerClipReader } from './media/clip-reader.ts';
import { processTerminal } from './terminal.ts';

const surroundings = {
  terminal: processTerminal(),
  createCore,
  createClipReader: () => new WorkerClipReader(path.join(__dirname, 'media-reader.cjs')),
  reviewScript: () => readFileSync(path.join(__dirname, 'review-page.js'), 'utf8'),
  sheetScript: () => readFileSync(path.join(__dirname, 'sheet-fill.js'), 'utf8'),
  rules: ALL_RULES,
};

void runCommandLine(process.argv.slice(2), surroundings).then((status) => {
  // Not process.exit: what is still on its way to a pipe would be lost.
  process.exitCode = status;
});
