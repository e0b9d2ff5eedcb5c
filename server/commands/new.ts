import {
  bodyFromSheet,
  lensFromSheet,
  lightFromSheet,
  readAnswer,
} from '../../shared/assist/new-plan/from-sheet.ts';
import { BODIES, LENSES, type Piece, SUBJECT_KINDS } from '../../shared/assist/new-plan/kit.ts';
import { newPlan, pieceOf } from '../../shared/assist/new-plan/new-plan.ts';
import { type Answers, QUESTIONS, type Sheet } from '../../shared/assist/new-plan/questions.ts';
import { inLanguage, later, message } from '../../shared/words/message.ts';
import { isPlanName } from '../files/plan-files.ts';
import { type Command, OUTPUT } from './command.ts';
import { type OptionSpec, type Parsed, WrongUse } from './options.ts';
import { writeNew } from './write-output.ts';

/** An option for each value that a sheet may have. */
const SHEET_OPTIONS: Readonly<Record<string, OptionSpec>> = Object.fromEntries(
  Object.values(QUESTIONS)
    .flat()
    .map(({ key, ask, about }) => [key, { value: ask, shown: 'VALUE', about }]),
);

export const newCommand: Command = {
  name: 'new',
  usage: [
    'lamella new [--body NAME] [--lens NAME] [--subject KIND] -o FILE',
    'lamella new [--focal-length 90mm] [--f-range f/2.8-22] [--sensor full-frame] … -o FILE',
  ],
  about: later`Creates a complete starter plan that passes every check: a generic camera, lens and subject, and one lit shot. Or takes body, lens or light from a data sheet: leave out what the sheet doesn't say. Never overwrites a file.`,
  options: {
    body: { value: later`body's name`, shown: 'NAME', about: listed(BODIES) },
    lens: { value: later`lens's name`, shown: 'NAME', about: listed(LENSES) },
    subject: { value: later`kind of subject`, shown: 'KIND', about: listed(SUBJECT_KINDS) },
    ...SHEET_OPTIONS,
    output: { ...OUTPUT, about: later`File to create, *.shootplan.yaml.` },
  },
  async run({ options, rest }, { terminal, createCore }) {
    if (rest.length > 0)
      throw new WrongUse(message`new doesn't take "${rest[0]!}"; give the file after -o.`);
    const { output } = options;
    if (typeof output !== 'string') throw new WrongUse(message`new needs -o FILE.`);
    if (!isPlanName(output))
      throw new WrongUse(message`A plan's name ends in .shootplan.yaml; "${output}" doesn't.`);
    const light = fromSheet('light', options, lightFromSheet);
    const plan = newPlan(createCore, {
      body: fromSheet('body', options, bodyFromSheet) ?? chosen('--body', BODIES, options.body),
      lens: fromSheet('lens', options, lensFromSheet) ?? chosen('--lens', LENSES, options.lens),
      subject: chosen('--subject', SUBJECT_KINDS, options.subject),
      ...(light !== undefined && { light }),
    });
    return writeNew(terminal, output, message`The plan`, plan);
  },
};

/** The piece that its sheet gives; undefined: no option says anything of that sheet. */
function fromSheet<T>(
  sheet: Sheet,
  options: Parsed['options'],
  make: (answers: Answers) => T | null,
): T | undefined {
  const answers: Record<string, string> = {};
  for (const question of QUESTIONS[sheet]) {
    const text = options[question.key];
    if (typeof text !== 'string' || text.trim() === '') continue;
    if (readAnswer(question, text) === null)
      throw new WrongUse(
        message`--${question.key} can't be "${text}". Give ${inLanguage(question.ask)}, such as ${question.example}.`,
      );
    answers[question.key] = text;
  }
  if (Object.keys(answers).length === 0) return undefined;
  if (options[sheet] !== undefined)
    throw new WrongUse(message`--${sheet} names a piece; it can't be taken from a data sheet too.`);
  return make(answers) ?? undefined;
}

function listed(pieces: readonly Piece[]): string {
  return pieces.map(({ name, about }) => `${name}: ${about}`).join('; ');
}

/** The one that was named; the first where none was. */
function chosen<T extends Piece>(
  option: string,
  pieces: readonly T[],
  name: string | true | undefined,
): T {
  const piece = name === undefined ? pieces[0] : pieceOf(pieces, name);
  if (piece) return piece;
  throw new WrongUse(
    message`There is no "${String(name)}" for ${option}. There are ${pieces.map((one) => one.name).join(', ')}.`,
  );
}
