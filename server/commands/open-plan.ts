/** The one plan that a command is about, read with all that it uses. */
import path from 'node:path';
import { messageOf } from '../../shared/api/located.ts';
import type { FileId } from '../../shared/plan/place.ts';
import { message } from '../../shared/words/message.ts';
import { isPlanName, PLAN_SUFFIX } from '../files/plan-files.ts';
import type { PlanSet, PlanSetOptions } from '../files/plan-set.ts';
import { planSet } from './check.ts';
import type { Surroundings } from './command.ts';
import { type Parsed, WrongUse } from './options.ts';

export interface OpenedPlan {
  readonly plans: PlanSet;
  readonly id: FileId;
  /** As the user wrote it. */
  readonly file: string;
}

/** @returns null where it can't be read, which has been said */
export async function openPlan(
  command: string,
  parsed: Parsed,
  surroundings: Surroundings,
): Promise<OpenedPlan | null> {
  const [file] = parsed.rest;
  if (file === undefined || parsed.rest.length > 1)
    throw new WrongUse(message`${command} takes one plan, but got ${parsed.rest.length}.`);
  return openNamed(file, parsed, surroundings);
}

/** @param read where plans are read from; left out: the disk */
export async function openNamed(
  file: string,
  parsed: Parsed,
  surroundings: Surroundings,
  read?: PlanSetOptions['read'],
): Promise<OpenedPlan | null> {
  const { terminal } = surroundings;
  if (!isPlanName(file))
    throw new WrongUse(message`${file}: not a plan; plans are named *${PLAN_SUFFIX}.`);
  const plans = await planSet(parsed, surroundings, read);
  const problem = await plans.add(path.resolve(terminal.cwd, file));
  if (problem !== null) {
    terminal.err(`lamella: ${problem}\n`);
    return null;
  }
  const id = plans.files[0]!;
  const unread = plans.unread(id);
  if (unread) {
    terminal.err(`lamella: ${plans.nameOf(id)}: ${messageOf(unread)}\n`);
    return null;
  }
  await plans.follow();
  return { plans, id, file };
}
