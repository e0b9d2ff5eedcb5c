import { later, message } from '../../words/message.ts';
import { type TextRule, wordsFrom } from './text-rule.ts';

export const syntax: TextRule = {
  name: 'syntax',
  severity: 'error',
  docs: {
    when: 'the text can’t be read as YAML at this place.',
    why: 'A quote, a bracket or an indent that isn’t closed or doesn’t line up changes what the lines after it mean. Only what stands there is left out; the rest of the plan is read.',
    remedy: 'Close, indent or remove what is marked.',
    bad: [
      { says: 'an unclosed quote', change: { 'shots/frost/aperture': '"f/8' } },
      { says: 'an unclosed bracket', change: { 'shots/frost/light': '[panel' } },
    ],
    good: [{ says: 'a quoted value', change: { 'shots/frost/aperture': '"f/8"' } }],
  },
  words: wordsFrom(
    {
      'control-character': ({ character = '' }) => ({
        what: message`A character that can’t be seen (${character}) stands in the text.`,
      }),
      'lone-return': () => ({
        what: message`A line ends in a bare carriage return, which editors and YAML read differently.`,
      }),
      'odd-blank': ({ character = '' }) => ({
        what: message`A blank that only looks like a space (${character}) stands where YAML wants spaces.`,
      }),
      tab: () => ({ what: message`A tab indents this line. YAML allows spaces only.` }),
      'conflict-marker': ({ text = '' }) => ({
        what: message`The mark of an unfinished merge, ${text}, was left in the text.`,
        why: message`Keep one of the two versions and remove the marks.`,
      }),
      'unfinished-merge': () => ({
        what: message`An unfinished merge: which of these lines hold is not known.`,
        why: message`Keep one of the two versions and remove the marks.`,
      }),
      'missing-colon': ({ text = '' }) => ({ what: message`No colon stands after \`${text}\`.` }),
      'stray-bracket': ({ bracket = '' }) => ({
        what: message`Nothing was opened that ${bracket} closes.`,
      }),
      'stray-item': () => ({
        what: message`A list’s dash stands where a key is expected.`,
        why: message`Items belong below their key, indented.`,
      }),
      'item-behind-key': ({ text = '' }) => ({
        what: message`A list’s dash stands behind a key: “${text}”.`,
        why: message`A list starts on a line of its own, or stands in brackets: [a, b].`,
      }),
      'reserved-start': ({ text = '', character = '' }) => ({
        what: message`A value can’t begin with ${character}: “${text}”.`,
        why: message`YAML keeps that character for itself; in quotes it is text.`,
      }),
      'no-key': ({ text = '' }) => ({ what: message`“${text}” is no key with a value.` }),
      'unclosed-quote': ({ quote = '"' }) => ({
        what: message`The quote ${quote} that opens here is never closed.`,
      }),
      'unmatched-bracket': ({ bracket = '' }) => ({
        what: message`The bracket ${bracket} that opens here is never closed.`,
      }),
      'text-after-bracket': () => ({ what: message`Text stands behind the closing bracket.` }),
      'text-after-value': () => ({ what: message`Text stands behind the end of the value.` }),
      'unreadable-item': ({ text = '' }) => ({
        what: message`“${text}” can’t be read as an item.`,
      }),
      'bad-escape': ({ text = '' }) => ({
        what: message`${text} is no escape that quotes know.`,
        why: message`In double quotes a backslash has to be doubled.`,
      }),
      unreadable: ({ text = '' }) => ({ what: message`“${text}” can’t be read.` }),
      'too-broken': () => ({
        what: message`From here on too much of this entry is broken to be read.`,
      }),
      'out-of-line': () => ({ what: message`This line is not indented as its neighbours are.` }),
      'not-utf-8': () => ({ what: message`The file is not UTF-8 text.` }),
    },
    later`The text can’t be read here`,
  ),
};
