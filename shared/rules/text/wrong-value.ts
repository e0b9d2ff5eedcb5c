import { withArticle } from '../../words/article.ts';
import { inLanguage, later, message } from '../../words/message.ts';
import { meant, type TextRule, wordsFrom } from './text-rule.ts';

export const wrongValue: TextRule = {
  name: 'wrong-value',
  severity: 'error',
  docs: {
    when: 'a value is not of the kind that its key needs.',
    why: 'Lamella does not guess at values that it cannot read. Results that need them are unknown until the value is corrected.',
    remedy: 'Write one of the values named, or a quantity of the right kind.',
    bad: [
      { says: 'not one of the words', change: { 'subjects/frost-plate/finish': 'shiny' } },
      { says: 'field and magnification at once', change: { 'shots/frost/magnification': '1x' } },
    ],
    good: [{ says: 'one of the words', change: { 'subjects/frost-plate/finish': 'matt' } }],
  },
  words: wordsFrom(
    {
      'empty-value': ({ key = '', title = '', example = '', expected = '' }) => ({
        what: message`\`${key}:\` has no value yet.`,
        why: example
          ? message`Write ${inLanguage(title) || expected}, for example ${example}.`
          : '',
      }),
      'empty-text': ({ key = '' }) => ({ what: message`The text of \`${key}\` is empty.` }),
      'not-a-list': ({ key = '', found = '', example = '' }) => ({
        what: message`\`${key}\` needs a list, not ${found}.`,
        ...(example && { why: message`Example: ${example}.` }),
      }),
      'not-a-mapping': ({ key = '', found = '', example = '' }) => ({
        what: message`\`${key}\` needs keys with values, not ${found}.`,
        ...(example && { why: message`Example: ${inBraces(example)}.` }),
      }),
      'not-a-value': ({ key = '', found = '', expected = '', example = '' }) => ({
        what: message`\`${key}\` needs one value, not ${found}.`,
        why: message`Write ${expected}${example ? message`, for example ${example}` : ''}.`,
      }),
      'not-a-number': ({ key = '', text = '', quantity = '', example = '' }) => ({
        what: message`\`${key}\` can't be ${text}.`,
        why: message`Write ${withArticle(quantity)}${example ? message`, for example ${example}` : ''}.`,
      }),
      'as-on-sheets': ({ key = '', text = '', likely = '' }) => ({
        what: message`\`${key}\` has ${text} as a data sheet prints it; a plan writes it otherwise.`,
        why: message`Write ${likely}.`,
      }),
      form: ({ key = '', text = '', title = '', example = '', detail = '', likely = '' }) => ({
        what:
          title && title !== key
            ? message`${text} can't be read as the ${inLanguage(title)} of \`${key}\`.`
            : message`${text} can't be read as a value of \`${key}\`.`,
        ...(detail === 'differs'
          ? { why: message`Sensors of this name differ in size. The data sheet gives it.` }
          : detail === 'named'
            ? { why: message`Write its size, ${likely}.` }
            : example && { why: message`Example: ${example}.` }),
      }),
      'out-of-range': ({ key = '', text = '', detail = '', quantity = '', example = '' }) => ({
        what: message`${text} is out of range for \`${key}\`.`,
        why:
          offRange(detail) ??
          message`Write ${withArticle(quantity)}${example ? message`, for example ${example}` : ''}.`,
      }),
      'not-whole': ({ key = '', text = '', quantity = '' }) => ({
        what: message`\`${key}\` needs a whole number, not ${text}.`,
        why: message`Write ${withArticle(quantity)}.`,
      }),
      'not-one-of': ({ key = '', text = '', expected = '', nearest }) =>
        key === 'shootplan'
          ? {
              what: message`Language version ${text} is unknown; this program reads version 1.`,
              why: message`A newer Lamella may read it. Until then do not rely on these results.`,
            }
          : {
              what: message`\`${key}\` can't be ${text}.${meant(nearest)}`,
              why: message`Use one of ${expected}.`,
            },
      'not-a-name': ({ text = '' }) => ({
        what: message`${text} is not a valid name.`,
        why: message`Use small letters, digits and hyphens, beginning with a letter.`,
      }),
      'not-allowed': ({ key = '', title = '' }) => ({
        what: message`This is not allowed at \`${key}\`.`,
        why: title ? message`Write ${inLanguage(title)}.` : '',
      }),
      'asked-twice': ({ keys = '' }) => ({
        what: message`The shot sets ${keys} at once, but each follows from the other.`,
        why: message`Keep the one that you decide; the others are calculated.`,
      }),
      'film-elsewhere': ({ text = '' }) => ({
        what: message`\`film\` is what floats on a liquid surface, and this is a ${text}.`,
        why: message`Give \`thickness\` and \`refractive-index\` of the subject itself, or \`kind: surface\`.`,
      }),
      'break-empty': ({ text = '' }) => ({
        what: message`The break ${text} has no length.`,
        why: message`Write when it begins and when it ends, as \`12:30 to 13:15\`.`,
      }),
      'break-outside': ({ text = '' }) => ({
        what: message`The break ${text} begins outside the day.`,
        why: message`Only breaks between \`start\` and \`end\` count.`,
      }),
      'overlap-whole': () => ({
        what: message`A focus stack with 100% overlap does not advance.`,
        why: message`An overlap of 20 to 30% is common practice.`,
      }),
      'stack-and-take': () => ({
        what: message`A shot with a focus stack has no takes.`,
        why: message`\`settle\` of the stack is the wait before each frame.`,
      }),
      'range-turned': ({ key = '' }) => ({
        what: message`The range of \`${key}\` runs backwards.`,
      }),
      'no-body': () => ({ what: message`A rig must begin with a body.` }),
      'no-lens': () => ({ what: message`A rig needs a lens.` }),
      'part-impossible': ({ part = '' }) => ({
        what: message`The values of ${part} are impossible for a real part.`,
        why: message`A converter needs a factor above 1, and lengths must be above 0.`,
      }),
      'part-out-of-place': ({ part = '' }) => ({
        what: message`${part} is in the wrong place.`,
        why: message`List parts from the sensor toward the subject: body, converters and tubes, lens, close-up lenses.`,
      }),
    },
    later`This value is not allowed here`,
  ),
};

/** An example of keys as it can be written behind the key itself, on one line. */
const inBraces = (example: string): string =>
  example.startsWith('{') || example.includes('\n') ? example : `{ ${example} }`;

/** What of a number puts it out of range: its sign, or that it is nothing. */
function offRange(detail: string): string | undefined {
  switch (detail) {
    case 'plus':
      return message`Write it without a sign.`;
    case 'minus':
      return message`It can't be below zero.`;
    case 'zero':
      return message`It can't be zero.`;
    default:
      return undefined;
  }
}
