import { BODIES, LENSES, type Piece, SUBJECT_KINDS } from '../../shared/assist/new-plan/kit.ts';
import { newPlan, pieceOf } from '../../shared/assist/new-plan/new-plan.ts';
import { later, message } from '../../shared/words/message.ts';
import { isPlanName } from '../files/plan-files.ts';
import { type Command, OUTPUT } from './command.ts';
import { WrongUse } from './options.ts';
import { writeOutput } from './write-output.ts';

export const newCommand: Command = {
  name: 'new',
  usage: ['lamella new [--body NAME] [--lens NAME] [--subject KIND] -o FILE'],
  about: later`Creates a complete starter plan that passes every check: a generic camera, lens and subject, and one lit shot. Never overwrites a file.`,
  options: {
    body: { value: later`body's name`, shown: 'NAME', about: listed(BODIES) },
    lens: { value: later`lens's name`, shown: 'NAME', about: listed(LENSES) },
    subject: { value: later`kind of subject`, shown: 'KIND', about: listed(SUBJECT_KINDS) },
    output: { ...OUTPUT, about: later`File to create, *.shootplan.yaml.` },
  },
  async run({ options, rest }, { terminal, createCore }) {
    if (rest.length > 0)
      throw new WrongUse(message`new doesn't take "${rest[0]!}"; give the file after -o.`);
    const { output } = options;
    if (typeof output !== 'string') throw new WrongUse(message`new needs -o FILE.`);
    if (!isPlanName(output))
      throw new WrongUse(message`A plan's name ends in .shootplan.yaml; "${output}" doesn't.`);
    const plan = newPlan(createCore, {
      body: chosen('--body', BODIES, options.body),
      lens: chosen('--lens', LENSES, options.lens),
      subject: chosen('--subject', SUBJECT_KINDS, options.subject),
    });
    return writeOutput(terminal, output, message`The plan`, plan, true);
  },
};

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
