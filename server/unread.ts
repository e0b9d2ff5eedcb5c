/**
 * Findings about a file whose text never reached the core, whole or in part. The hosts make them,
 * since only they see bytes; they bear the names of the core's own rules for the like.
 */
import type { LocatedFinding, Position } from '../shared/api/located.ts';
import type { FileId } from '../shared/plan/place.ts';
import { message } from '../shared/words/message.ts';

const START: Position = { line: 0, character: 0 };

const at = (file: FileId, rule: string, place: Position, what: string, why: string) =>
  ({
    rule,
    severity: 'error',
    file,
    range: { start: place, end: place },
    what,
    why,
    related: [],
  }) satisfies LocatedFinding;

/** @param offset bytes before the first one that is no UTF-8 */
export const notText = (file: FileId, place: Position, offset: number): LocatedFinding =>
  at(
    file,
    'syntax',
    place,
    message`This is not UTF-8 text.`,
    message`Byte ${offset + 1} of the file, on line ${place.line + 1}, belongs to no UTF-8 character. Save the file as UTF-8.`,
  );

/** Graver than what is left out of an entry: of this file nothing was checked. */
export const tooLarge = (file: FileId, size: string, most: string): LocatedFinding =>
  at(
    file,
    'too-much',
    START,
    message`This file was not read: it is over ${most}.`,
    message`It has ${size}. Move shots or kit into further files and name the kit under \`use\`.`,
  );

/** The first `tried` findings have their fixes, the others none. */
export const untried = (file: FileId, tried: number): LocatedFinding => ({
  ...at(
    file,
    'too-much',
    START,
    message`Fixes were tried for the first ${tried} findings only.`,
    message`Every fix is tried on the whole plan before it is offered. Fix these, then check again.`,
  ),
  severity: 'warning',
});

export const failed = (file: FileId, cause: unknown): LocatedFinding =>
  at(
    file,
    'rule-failed',
    START,
    message`Lamella failed while it checked this file.`,
    message`This is a bug in Lamella, not in your plan: ${cause instanceof Error ? cause.message : String(cause)}`,
  );

export const lostTrack = (file: FileId, cause: unknown): LocatedFinding =>
  at(
    file,
    'rule-failed',
    START,
    message`Lamella lost track of this text: close it and open it again.`,
    message`An edit could not be followed. This is a bug in Lamella: ${cause instanceof Error ? cause.message : String(cause)}`,
  );
