/** What commands take that are about the shots of one plan. */
import { later } from '../../shared/words/message.ts';
import { FORMAT_HELP, FORMATS, LENGTHS, LENGTHS_HELP, ROOT_HELP } from './command.ts';

export const SHOT_OPTIONS = {
  shot: { value: later`shot’s name` },
  format: { oneOf: FORMATS },
  root: { value: later`folder` },
  lengths: { oneOf: LENGTHS },
};

/** Their explanations. @param shot of the option that names one */
export const shotHelp = (shot: string) =>
  [['--shot NAME', shot], FORMAT_HELP, ROOT_HELP, LENGTHS_HELP] as const;
