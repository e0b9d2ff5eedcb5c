import { later, message } from '../../words/message.ts';
import { type TextRule, wordsFrom } from './text-rule.ts';

export const outsideTheProfile: TextRule = {
  name: 'outside-the-profile',
  severity: 'error',
  docs: {
    when: 'the text uses a part of YAML that plans do not support: anchors, aliases, merges, tags, directives, further documents, complex keys.',
    why: 'Names and `use` replace anchors and merges, and show where a value comes from. Every reader can follow them.',
    remedy: 'Write the value in full, or name an entry and refer to it.',
    bad: [
      { says: 'a tag', change: { 'shots/frost/iso': '!!int 800' } },
      { says: 'an anchor', change: { 'shots/frost/aperture': '&stop f/8' } },
    ],
    good: [{ says: 'the value itself', change: { 'shots/frost/aperture': 'f/8' } }],
  },
  words: wordsFrom(
    {
      anchor: ({ text = '' }) => ({
        what: message`Plans do not support anchors${text && ` (${text})`}.`,
        why: message`Give the entry a name and refer to it.`,
      }),
      alias: ({ text = '' }) => ({
        what: message`Plans do not support aliases${text && ` (${text})`}.`,
        why: message`Write the value in full, or refer to an entry by its name.`,
      }),
      merge: () => ({
        what: message`Plans do not support merge keys.`,
        why: message`Refer to an entry by its name.`,
      }),
      tag: ({ text = '' }) => ({
        what: message`Plans do not support tags${text && ` (${text})`}.`,
        why: message`Write the value alone.`,
      }),
      directive: () => ({ what: message`Plans do not support directives.` }),
      'document-marker': () => ({
        what: message`A plan is one YAML document; the text after this marker is not read.`,
      }),
      'empty-key': () => ({ what: message`This colon has no key before it.` }),
      'complex-key': () => ({ what: message`A key in a plan must be a single word.` }),
    },
    later`Plans do not support this part of YAML`,
  ),
};
