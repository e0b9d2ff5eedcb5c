/** A plan to begin with, from what was chosen. */
import {
  bodyFromSheet,
  lensFromSheet,
  lightFromSheet,
  readAnswer,
} from '../../shared/assist/new-plan/from-sheet.ts';
import { BODIES, LENSES, SUBJECT_KINDS } from '../../shared/assist/new-plan/kit.ts';
import { newPlan, pieceOf } from '../../shared/assist/new-plan/new-plan.ts';
import { type Answers, QUESTIONS, type Sheet } from '../../shared/assist/new-plan/questions.ts';
import type { SessionOptions } from '../session.ts';

/** Names of the pieces that were chosen, or what their data sheets say. */
export interface NewPlanParams {
  readonly body: string | Answers;
  readonly lens: string | Answers;
  readonly subject: string;
  /** What the light's data sheet says; left out: the usual light for the subject. */
  readonly light?: Answers;
}

/** Answer to `lamella/newPlan`; null: a name is none of the kit's, or an answer can't be read. */
export function newPlanText(
  createCore: SessionOptions['createCore'],
  params: NewPlanParams,
): string | null {
  const body = isAnswers(params.body) ? bodyFromSheet(params.body) : pieceOf(BODIES, params.body);
  const lens = isAnswers(params.lens) ? lensFromSheet(params.lens) : pieceOf(LENSES, params.lens);
  const subject = pieceOf(SUBJECT_KINDS, params.subject);
  if (!body || !lens || !subject) return null;
  if (params.light === undefined) return newPlan(createCore, { body, lens, subject });
  const light = isAnswers(params.light) ? lightFromSheet(params.light) : null;
  return light === null ? null : newPlan(createCore, { body, lens, subject, light });
}

/** One answer, as it is typed. */
export interface SheetAnswerParams {
  readonly sheet: Sheet;
  readonly key: string;
  readonly text: string;
}

/** Answer to `lamella/sheetAnswer`: whether the answer can be read; an empty one can. */
export function canReadAnswer({ sheet, key, text }: SheetAnswerParams): boolean {
  const questions = Object.hasOwn(QUESTIONS, sheet) ? QUESTIONS[sheet] : [];
  const question = questions.find((one) => one.key === key);
  if (!question || typeof text !== 'string') return false;
  return text.trim() === '' || readAnswer(question, text) !== null;
}

/** What comes from outside is looked at before it is used. */
const isAnswers = (value: unknown): value is Answers =>
  typeof value === 'object' &&
  value !== null &&
  !Array.isArray(value) &&
  Object.values(value).every((text) => typeof text === 'string');
