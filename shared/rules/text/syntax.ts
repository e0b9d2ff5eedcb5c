import { later, message } from '../../words/message.ts';
import { type TextRule, wordsFrom } from './text-rule.ts';

export const syntax: TextRule = {
  name: 'syntax',
  severity: 'error',
  docs: {
    when: "the marked text can't be read as YAML.",
    why: 'An unclosed quote or bracket, or a wrong indent, changes the meaning of the lines after it. Only the marked text is left out; the rest of the plan is read.',
    remedy: 'Close, indent or remove the marked text.',
    bad: [
      { says: 'an unclosed quote', change: { 'shots/frost/aperture': '"f/8' } },
      { says: 'an unclosed bracket', change: { 'shots/frost/light': '[panel' } },
    ],
    good: [{ says: 'a quoted value', change: { 'shots/frost/aperture': '"f/8"' } }],
  },
  words: wordsFrom(
    {
      'control-character': ({ character = '' }) => ({
        what: message`The text contains an invisible character (${character}).`,
      }),
      'lone-return': () => ({
        what: message`A line ends in a carriage return without a line feed.`,
        why: message`Editors and YAML read it differently.`,
      }),
      'odd-blank': ({ character = '' }) => ({
        what: message`This character only looks like a space (${character}); YAML needs spaces.`,
      }),
      tab: () => ({ what: message`This line is indented with a tab. YAML allows only spaces.` }),
      'conflict-marker': ({ text = '' }) => ({
        what: message`The text contains a merge conflict marker, ${text}.`,
        why: message`Keep one of the two versions and remove the markers.`,
      }),
      'unfinished-merge': () => ({
        what: message`These lines contain an unresolved merge conflict and are not read.`,
        why: message`Keep one of the two versions and remove the markers.`,
      }),
      'missing-colon': ({ text = '' }) => ({ what: message`\`${text}\` needs a colon after it.` }),
      'stray-bracket': ({ bracket = '' }) => ({
        what: message`The bracket ${bracket} closes nothing.`,
      }),
      'stray-item': () => ({
        what: message`A list item is not allowed here; a key is expected.`,
        why: message`Indent items below their key.`,
      }),
      'item-behind-key': ({ text = '' }) => ({
        what: message`A list item can't follow a key on the same line: "${text}".`,
        why: message`Start the list on a new line, or write it in brackets: [a, b].`,
      }),
      'reserved-start': ({ text = '', character = '' }) => ({
        what: message`A value can't begin with ${character}: "${text}".`,
        why: message`YAML reserves that character; put the value in quotes.`,
      }),
      'no-key': ({ text = '' }) => ({ what: message`"${text}" is not a key with a value.` }),
      'unclosed-quote': ({ quote = '"' }) => ({
        what: message`The quote ${quote} is not closed.`,
      }),
      'unmatched-bracket': ({ bracket = '' }) => ({
        what: message`The bracket ${bracket} is not closed.`,
      }),
      'text-after-bracket': () => ({ what: message`Remove the text after the closing bracket.` }),
      'text-after-value': () => ({ what: message`Remove the text after the end of the value.` }),
      'unreadable-item': ({ text = '' }) => ({
        what: message`"${text}" can't be read as an item.`,
      }),
      'bad-escape': ({ text = '' }) => ({
        what: message`${text} is not a valid escape in double quotes.`,
        why: message`Double the backslash.`,
      }),
      unreadable: ({ text = '' }) => ({ what: message`"${text}" can't be read.` }),
      'too-broken': () => ({
        what: message`The rest of this entry has too many errors and is not read.`,
      }),
      'out-of-line': () => ({ what: message`This line is not indented like its neighbours.` }),
      'not-utf-8': () => ({ what: message`The file is not UTF-8 text.` }),
    },
    later`The text can't be read here`,
  ),
};
