import { meant, type TextRule, wordsFrom } from './text-rule.ts';

/** Quantities that no article goes before: "two lengths", "frames per second". */
const NO_ARTICLE = /^(frames|illuminance|luminance|power|stops|two|white|width)/;

const oneOf = (quantity: string): string =>
  NO_ARTICLE.test(quantity)
    ? quantity
    : `${/^([aeio]|f-|ISO)/.test(quantity) ? 'an' : 'a'} ${quantity}`;

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
        what: `Nothing stands behind \`${key}:\` yet.`,
        why: example ? `It takes ${title || expected}, for example ${example}.` : '',
      }),
      'empty-text': ({ key = '' }) => ({ what: `The text of \`${key}\` is empty.` }),
      'not-a-list': ({ key = '', found = '', example = '' }) => ({
        what: `\`${key}\` takes a list, not ${found}.`,
        ...(example && { why: `For example ${example}.` }),
      }),
      'not-a-mapping': ({ key = '', found = '', example = '' }) => ({
        what: `\`${key}\` takes keys with values, not ${found}.`,
        ...(example && { why: `For example ${example}.` }),
      }),
      'not-a-value': ({ key = '', found = '', expected = '', example = '' }) => ({
        what: `\`${key}\` takes one value, not ${found}.`,
        why: `It takes ${expected}${example ? `, for example ${example}` : ''}.`,
      }),
      'not-a-number': ({ key = '', text = '', quantity = '', example = '' }) => ({
        what: `${text} is no number that \`${key}\` can take.`,
        why: `It takes ${oneOf(quantity)}${example ? `, for example ${example}` : ''}.`,
      }),
      form: ({ key = '', text = '', title = '', example = '' }) => ({
        what:
          title && title !== key
            ? `${text} can’t be read as the ${title} of \`${key}\`.`
            : `${text} can’t be read as a value of \`${key}\`.`,
        ...(example && { why: `For example ${example}.` }),
      }),
      'out-of-range': ({ key = '', text = '', detail = '', quantity = '' }) => ({
        what: `${text} is out of range for \`${key}\`.`,
        why: detail ? `${detail}.` : `It takes ${oneOf(quantity)}.`,
      }),
      'not-one-of': ({ key = '', text = '', expected = '', nearest }) =>
        key === 'shootplan'
          ? {
              what: `Version ${text} of the language is not known here: this program reads version 1.`,
              why: 'A newer Lamella may; until then nothing here is sure.',
            }
          : {
              what: `\`${key}\` can’t be ${text}.${meant(nearest)}`,
              why: `It is one of ${expected}.`,
            },
      'not-a-name': ({ text = '' }) => ({
        what: `${text} is no name.`,
        why: 'Names are small letters, digits and hyphens, and begin with a letter.',
      }),
      'not-allowed': ({ key = '', title = '' }) => ({
        what: `This can’t stand at \`${key}\`.`,
        why: title ? `It takes ${title}.` : '',
      }),
      'asked-twice': ({ keys = '' }) => ({
        what: `The shot asks for ${keys} at once; each follows from the other.`,
        why: 'Keep the one that you decide; the others are worked out.',
      }),
      'range-turned': ({ key = '' }) => ({ what: `The range of \`${key}\` runs backward.` }),
      'no-body': () => ({ what: 'A rig begins with the body that it is built on.' }),
      'no-lens': () => ({ what: 'A rig has a lens in front.' }),
      'part-impossible': ({ part = '' }) => ({
        what: `The numbers of ${part} can’t be those of a real part.`,
        why: 'A converter has a factor over 1, and lengths are over 0.',
      }),
      'part-out-of-place': ({ part = '' }) => ({
        what: `${part} can’t stand there.`,
        why: 'Parts go from the sensor toward the subject: body, converters and tubes, lens, close-ups.',
      }),
    },
    'This value can’t stand here',
  ),
};
