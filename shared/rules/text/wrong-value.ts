import { withArticle } from '../../words/article.ts';
import { inLanguage, later, message } from '../../words/message.ts';
import { meant, type TextRule, wordsFrom } from './text-rule.ts';

export const wrongValue: TextRule = {
  name: 'wrong-value',
  severity: 'error',
  docs: {
    when: 'a value is not of the kind that its key takes.',
    why: 'What can’t be read is not guessed at: the figures that need it are not known until it is mended.',
    remedy: 'Write one of the values named, or a quantity of the kind that is asked for.',
    bad: [
      { says: 'not one of the words', change: { 'subjects/frost-plate/finish': 'shiny' } },
      { says: 'field and magnification at once', change: { 'shots/frost/magnification': '1x' } },
    ],
    good: [{ says: 'one of the words', change: { 'subjects/frost-plate/finish': 'matt' } }],
  },
  words: wordsFrom(
    {
      'empty-value': ({ key = '', title = '', example = '', expected = '' }) => ({
        what: message`Nothing stands behind \`${key}:\` yet.`,
        why: example
          ? message`It takes ${inLanguage(title) || expected}, for example ${example}.`
          : '',
      }),
      'empty-text': ({ key = '' }) => ({ what: message`The text of \`${key}\` is empty.` }),
      'not-a-list': ({ key = '', found = '', example = '' }) => ({
        what: message`\`${key}\` takes a list, not ${found}.`,
        ...(example && { why: message`For example ${example}.` }),
      }),
      'not-a-mapping': ({ key = '', found = '', example = '' }) => ({
        what: message`\`${key}\` takes keys with values, not ${found}.`,
        ...(example && { why: message`For example ${example}.` }),
      }),
      'not-a-value': ({ key = '', found = '', expected = '', example = '' }) => ({
        what: message`\`${key}\` takes one value, not ${found}.`,
        why: message`It takes ${expected}${example ? message`, for example ${example}` : ''}.`,
      }),
      'not-a-number': ({ key = '', text = '', quantity = '', example = '' }) => ({
        what: message`${text} is no number that \`${key}\` can take.`,
        why: message`It takes ${withArticle(quantity)}${example ? message`, for example ${example}` : ''}.`,
      }),
      form: ({ key = '', text = '', title = '', example = '' }) => ({
        what:
          title && title !== key
            ? message`${text} can’t be read as the ${inLanguage(title)} of \`${key}\`.`
            : message`${text} can’t be read as a value of \`${key}\`.`,
        ...(example && { why: message`For example ${example}.` }),
      }),
      'out-of-range': ({ key = '', text = '', detail = '', quantity = '', example = '' }) => ({
        what: message`${text} is out of range for \`${key}\`.`,
        why:
          offRange(detail) ??
          message`It takes ${withArticle(quantity)}${example ? message`, for example ${example}` : ''}.`,
      }),
      'not-whole': ({ key = '', text = '', quantity = '' }) => ({
        what: message`\`${key}\` takes a whole number, not ${text}.`,
        why: message`It takes ${withArticle(quantity)}.`,
      }),
      'not-one-of': ({ key = '', text = '', expected = '', nearest }) =>
        key === 'shootplan'
          ? {
              what: message`Version ${text} of the language is not known here: this program reads version 1.`,
              why: message`A newer Lamella may; until then nothing here is sure.`,
            }
          : {
              what: message`\`${key}\` can’t be ${text}.${meant(nearest)}`,
              why: message`It is one of ${expected}.`,
            },
      'not-a-name': ({ text = '' }) => ({
        what: message`${text} is no name.`,
        why: message`Names are small letters, digits and hyphens, and begin with a letter.`,
      }),
      'not-allowed': ({ key = '', title = '' }) => ({
        what: message`This can’t stand at \`${key}\`.`,
        why: title ? message`It takes ${inLanguage(title)}.` : '',
      }),
      'asked-twice': ({ keys = '' }) => ({
        what: message`The shot asks for ${keys} at once; each follows from the other.`,
        why: message`Keep the one that you decide; the others are worked out.`,
      }),
      'range-turned': ({ key = '' }) => ({ what: message`The range of \`${key}\` runs backward.` }),
      'no-body': () => ({ what: message`A rig begins with the body that it is built on.` }),
      'no-lens': () => ({ what: message`A rig has a lens in front.` }),
      'part-impossible': ({ part = '' }) => ({
        what: message`The numbers of ${part} can’t be those of a real part.`,
        why: message`A converter has a factor over 1, and lengths are over 0.`,
      }),
      'part-out-of-place': ({ part = '' }) => ({
        what: message`${part} can’t stand there.`,
        why: message`Parts go from the sensor toward the subject: body, converters and tubes, lens, close-up lenses.`,
      }),
    },
    later`This value can’t stand here`,
  ),
};

/** What of a number puts it out of range: its sign, or that it is nothing. */
function offRange(detail: string): string | undefined {
  switch (detail) {
    case 'plus':
      return message`It is written without a sign.`;
    case 'minus':
      return message`It takes no number below zero.`;
    case 'zero':
      return message`It takes no zero.`;
    default:
      return undefined;
  }
}
