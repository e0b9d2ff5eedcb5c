import { later, message } from '../../words/message.ts';
import { type TextRule, wordsFrom } from './text-rule.ts';

export const outsideTheProfile: TextRule = {
  name: 'outside-the-profile',
  severity: 'error',
  docs: {
    when: 'the text uses a part of YAML that plans do without: anchors, aliases, merges, tags, directives, further documents, complex keys.',
    why: 'Names and `use` do the work of anchors and merges, and say where a value comes from. What every reader can follow needs no more.',
    remedy: 'Write the value out, or name an entry and refer to it.',
    bad: [
      { says: 'a tag', change: { 'shots/frost/iso': '!!int 800' } },
      { says: 'an anchor', change: { 'shots/frost/aperture': '&stop f/8' } },
    ],
    good: [{ says: 'the value itself', change: { 'shots/frost/aperture': 'f/8' } }],
  },
  words: wordsFrom(
    {
      anchor: ({ text = '' }) => ({
        what: message`Plans have no anchors${text && `: ${text}`}.`,
        why: message`Give the entry a name and refer to it.`,
      }),
      alias: ({ text = '' }) => ({
        what: message`Plans have no aliases${text && `: ${text}`}.`,
        why: message`Write the value out, or refer to an entry by its name.`,
      }),
      merge: () => ({
        what: message`Plans have no merge keys.`,
        why: message`Refer to an entry by its name.`,
      }),
      tag: ({ text = '' }) => ({
        what: message`Plans have no tags${text && `: ${text}`}.`,
        why: message`Values are read as they are written.`,
      }),
      directive: () => ({ what: message`Plans have no directives.` }),
      'document-marker': () => ({
        what: message`A plan is one document: what follows is not read.`,
      }),
      'empty-key': () => ({ what: message`A colon stands here without a key before it.` }),
      'complex-key': () => ({ what: message`A key is a single word in a plan.` }),
    },
    later`Plans do without this part of YAML`,
  ),
};
