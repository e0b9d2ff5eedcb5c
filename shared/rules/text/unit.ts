import { later, message } from '../../words/message.ts';
import { type TextRule, wordsFrom } from './text-rule.ts';

/** What stands before its number is no list of units to choose from. */
const takes = (units: string): string =>
  units.endsWith('/') ? message`It takes ${units} before the number.` : message`It takes ${units}.`;

export const unit: TextRule = {
  name: 'unit',
  severity: 'error',
  docs: {
    when: 'a quantity has no unit, or one that it doesn’t take.',
    why: 'A bare 30 may be millimetres, degrees or seconds; a plan that is read by several people says which.',
    remedy: 'Write the unit.',
    bad: [
      { says: 'no unit', change: { 'shots/frost/field': '30' } },
      { says: 'a unit of something else', change: { 'shots/frost/field': '30 kg' } },
    ],
    good: [{ says: 'in inches', change: { 'shots/frost/field': '1.5 in' } }],
  },
  words: wordsFrom(
    {
      'no-unit': ({ key = '', text = '', likely = '', units = '' }) => ({
        what: message`\`${key}\` needs a unit: ${text}${likely ? message` is probably ${likely}` : ''}.`,
        ...(units && { why: takes(units) }),
      }),
      'unknown-unit': ({ key = '', text = '', detail = '', units = '', example = '' }) => ({
        what: message`\`${key}\` takes no ${detail || text}.`,
        why: units ? takes(units) : example ? message`For example ${example}.` : '',
      }),
    },
    later`The unit is missing or wrong`,
  ),
};
