/** A plan to begin with, from what was chosen. */
import { BODIES, LENSES, SUBJECT_KINDS } from '../../shared/assist/new-plan/kit.ts';
import { newPlan, pieceOf } from '../../shared/assist/new-plan/new-plan.ts';
import type { SessionOptions } from '../session.ts';

/** Names of the pieces that were chosen. */
export interface NewPlanParams {
  readonly body: string;
  readonly lens: string;
  readonly subject: string;
}

/** Answer to `lamella/newPlan`; null: one of the names is none of the kit's. */
export function newPlanText(
  createCore: SessionOptions['createCore'],
  params: NewPlanParams,
): string | null {
  const body = pieceOf(BODIES, params.body);
  const lens = pieceOf(LENSES, params.lens);
  const subject = pieceOf(SUBJECT_KINDS, params.subject);
  return body && lens && subject ? newPlan(createCore, { body, lens, subject }) : null;
}
