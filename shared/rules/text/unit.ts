import { anyOf } from '../../words/listed.ts';
import { later, message } from '../../words/message.ts';
import { type TextRule, wordsFrom } from './text-rule.ts';

/** A prefix such as f/ is not a list of units to choose from. */
const takes = (units: string): string =>
  units.endsWith('/')
    ? message`Write ${units} before the number.`
    : message`Use ${anyOf(units.split(', '))}.`;

export const unit: TextRule = {
  name: 'unit',
  severity: 'error',
  docs: {
    when: 'a quantity has no unit, or the wrong one.',
    why: 'A bare 30 could be millimetres, degrees or seconds. Several people read a plan, so it states the unit.',
    remedy: 'Add the unit.',
    bad: [
      { says: 'no unit', change: { 'shots/frost/field': '30' } },
      { says: 'a unit of something else', change: { 'shots/frost/field': '30 kg' } },
    ],
    good: [{ says: 'in inches', change: { 'shots/frost/field': '1.5 in' } }],
  },
  words: wordsFrom(
    {
      'no-unit': ({ key = '', text = '', likely = '', units = '' }) => ({
        what: likely
          ? message`\`${key}\` needs a unit; ${text} is probably ${likely}.`
          : message`\`${key}\` needs a unit after ${text}.`,
        ...(units && { why: takes(units) }),
      }),
      'unknown-unit': ({ key = '', text = '', detail = '', units = '', example = '' }) => ({
        what: message`\`${key}\` can't be in ${detail || text}.`,
        why: units ? takes(units) : example ? message`Example: ${example}.` : '',
      }),
    },
    later`The unit is missing or wrong`,
  ),
};
