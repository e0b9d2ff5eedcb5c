/** The one plan that a command is about, read with all that it uses. */

import path from 'node:path';
import { messageOf } from '../../shared/api/located.ts';
import type { FileId } from '../../shared/plan/place.ts';
import { message } from '../../shared/words/message.ts';
import { COULD_NOT_RUN } from '../exit-status.ts';
import { isPlanName, PLAN_SUFFIX } from '../files/plan-files.ts';
import type { PlanSet, PlanSetOptions } from '../files/plan-set.ts';
import { complain } from '../terminal.ts';
import { planSet } from './check.ts';
import type { Command, Surroundings } from './command.ts';
import { noSuchShot, type Parsed, WrongUse } from './options.ts';

export interface OpenedPlan {
  readonly plans: PlanSet;
  readonly id: FileId;
  /** As the user wrote it. */
  readonly file: string;
}

interface PlanCommand extends Omit<Command, 'run'> {
  /** Refuses options before anything is read. */
  refuse?(options: Parsed['options']): void;
  run(opened: OpenedPlan, parsed: Parsed, surroundings: Surroundings): Promise<number>;
}

/** A command that takes one plan. */
export const planCommand = ({ refuse, run, ...command }: PlanCommand): Command => ({
  ...command,
  async run(parsed, surroundings) {
    refuse?.(parsed.options);
    const { length, 0: file } = parsed.rest;
    if (file === undefined || length > 1)
      throw new WrongUse(message`${command.name} takes one plan, but got ${length}.`);
    const opened = await openNamed(file, parsed, surroundings);
    return opened === null ? COULD_NOT_RUN : run(opened, parsed, surroundings);
  },
});

/**
 * @param read where plans are read from; left out: the disk
 * @returns null where it can't be read, which has been said
 */
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
  const id = plans.files[0];
  const unread = problem === null && id !== undefined ? plans.unread(id) : undefined;
  if (problem !== null || id === undefined || unread) {
    const why = unread && id ? `${plans.nameOf(id)}: ${messageOf(unread)}` : problem;
    complain(terminal, why ?? '');
    return null;
  }
  await plans.follow();
  return { plans, id, file };
}

/** The name of a shot of the plan; wrong use where it has no such shot. */
export function shotOf({ plans, id, file }: OpenedPlan, name: string): string {
  const shots = [...plans.core.figures(id).keys()];
  if (!shots.includes(name)) throw noSuchShot(name, shots, file);
  return name;
}
