/** Fixes of one edit, as most are. */
import { message } from '../words/message.ts';
import type { Place } from './place.ts';
import type { PlanEdit, PlanFix } from './problem.ts';

const fix = (title: string, edit: PlanEdit, sideEffects: string | undefined): PlanFix => ({
  title,
  ...(sideEffects !== undefined && { sideEffects }),
  edits: [edit],
});

/** Writes one value where one stands, or where it would stand. */
export const setTo = (title: string, at: Place, text: string, sideEffects?: string): PlanFix =>
  fix(title, { op: 'set', at, text }, sideEffects);

/** The same where the value says all of it. */
export const write = (at: Place, text: string, sideEffects?: string): PlanFix =>
  setTo(message`Write ${text}`, at, text, sideEffects);

export const renameKey = (at: Place, text: string): PlanFix =>
  fix(message`Write ${text}`, { op: 'rename-key', at, text }, undefined);

/** Takes a pair out. */
export const removal = (title: string, at: Place, sideEffects?: string): PlanFix =>
  fix(title, { op: 'remove', at: { ...at, part: 'pair' } }, sideEffects);
