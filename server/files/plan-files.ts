/** Which plans a list of files and folders names. */
import { readdir, stat } from 'node:fs/promises';
import path from 'node:path';
import { message } from '../../shared/words/message.ts';
import { reasonOf } from './read-plan.ts';

export const PLAN_SUFFIX = '.shootplan.yaml';

export const isPlanName = (name: string): boolean =>
  path.basename(name).endsWith(PLAN_SUFFIX) && path.basename(name).length > PLAN_SUFFIX.length;

interface NamedPlans {
  /** Absolute paths, each once, in the order of the arguments and sorted within a folder. */
  readonly files: readonly string[];
  /** What could not be followed, in words that name it. */
  readonly problems: readonly string[];
}

/** @param named as the user wrote them, relative to `cwd` */
export async function plansNamed(named: readonly string[], cwd: string): Promise<NamedPlans> {
  const files = new Set<string>();
  const problems: string[] = [];
  for (const name of named) {
    const at = path.resolve(cwd, name);
    try {
      if ((await stat(at)).isDirectory()) {
        const before = problems.length;
        const below = await plansBelow(at, problems);
        for (const file of below) files.add(file);
        if (below.length === 0 && problems.length === before)
          problems.push(message`${name}: no *${PLAN_SUFFIX} in this folder or below it.`);
      } else if (isPlanName(at)) files.add(at);
      else problems.push(message`${name}: not a plan; plans are named *${PLAN_SUFFIX}.`);
    } catch (cause) {
      problems.push(`${name}: ${reasonOf(cause).detail}.`);
    }
  }
  return { files: [...files], problems };
}

/**
 * Folders that hold no plans of one's own are left out: `node_modules`, and those whose name
 * starts with a dot. Links to folders aren't followed: they may lead in a circle.
 */
async function plansBelow(folder: string, problems: string[]): Promise<string[]> {
  const found: string[] = [];
  const waiting = [folder];
  for (let at = waiting.pop(); at !== undefined; at = waiting.pop()) {
    try {
      for (const entry of await readdir(at, { withFileTypes: true })) {
        const below = path.join(at, entry.name);
        if (entry.isDirectory()) {
          if (entry.name !== 'node_modules' && !entry.name.startsWith('.')) waiting.push(below);
        } else if (isPlanName(entry.name)) found.push(below);
      }
    } catch (cause) {
      problems.push(`${at}: ${reasonOf(cause).detail}.`);
    }
  }
  return found.sort();
}
