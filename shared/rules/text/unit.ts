import { type TextRule, wordsFrom } from './text-rule.ts';

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
        what: `\`${key}\` needs a unit: ${text}${likely ? ` is probably ${likely}` : ''}.`,
        ...(units && { why: `It takes ${units}.` }),
      }),
      'unknown-unit': ({ key = '', text = '', detail = '', units = '', example = '' }) => ({
        what: `\`${key}\` takes no ${detail || text}.`,
        why: units ? `It takes ${units}.` : example ? `For example ${example}.` : '',
      }),
    },
    'The unit is missing or wrong',
  ),
};
