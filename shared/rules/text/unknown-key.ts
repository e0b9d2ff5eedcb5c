import { withArticle } from '../../words/article.ts';
import { later, message } from '../../words/message.ts';
import { meant, type TextRule, wordsFrom } from './text-rule.ts';

export const unknownKey: TextRule = {
  name: 'unknown-key',
  severity: 'error',
  docs: {
    when: 'a key is not allowed here.',
    why: 'A misspelt key would be ignored without warning, together with its value.',
    remedy: 'Use the nearest key, move it where it belongs, or remove it.',
    bad: [
      { says: 'misspelt', change: { 'shots/frost/aperure': 'f/8', 'shots/frost/aperture': null } },
    ],
    good: [{ says: 'spelt right', change: { 'shots/frost/aperture': 'f/8' } }],
  },
  words: wordsFrom(
    {
      'unknown-key': ({ key = '', of = '', nearest, keys = '' }) => ({
        what: message`\`${key}\` is not a key of ${withArticle(of)}.${meant(nearest)}`,
        ...(nearest === undefined && { why: message`Use ${keys}.` }),
      }),
      'missing-colon': ({ key = '' }) => ({ what: message`\`${key}\` needs a colon after it.` }),
      'belongs-elsewhere': ({ key = '', of = '', belongs = '' }) => ({
        what: message`\`${key}\` is not a key of ${withArticle(of)}; it belongs in ${belongs}.`,
      }),
      synonym: ({ key = '', of = '', right = '' }) => ({
        what: message`\`${key}\` is called \`${right}\` in ${withArticle(of)}.`,
      }),
      'synonym-twice': ({ key = '', of = '', right = '' }) => ({
        what: message`\`${key}\` is called \`${right}\` in ${withArticle(of)}, which is set already.`,
      }),
      'synonym-elsewhere': ({ key = '', of = '', right = '', belongs = '' }) => ({
        what: message`\`${key}\` is not a key of ${withArticle(of)}. Did you mean \`${right}\`?`,
        why: message`\`${right}\` belongs in ${belongs}.`,
      }),
      'no-such-key': ({ key = '', of = '', instead = '' }) => ({
        what: message`\`${key}\` is not a key of ${withArticle(of)}.`,
        why: instead,
      }),
    },
    later`This key is not known here`,
  ),
};
