/** Hover on a key: what it is for, in which unit, with an example. */
import { SHAPES } from '../../plan/generated/shapes.ts';
import type { Group, Shape } from '../../plan/shape.ts';
import { kindOf } from '../../quantity/index.ts';
import type { Meaning } from '../meaning.ts';
import { code, paragraphs } from './markdown.ts';

export function keyHover({ key, keyShape, of }: Meaning): string {
  const { title, description, shape, examples, required } = keyShape;
  const owner =
    of === 'plan' ? 'the plan' : `a ${SHAPES[of].title}`.replace(/^a (?=[aeiou])/, 'an ');
  return paragraphs(
    `**${key}**${title === key ? '' : ` · ${title}`} · of ${owner}${required ? ', required' : ''}`,
    description,
    takes(shape),
    examples.length > 0 && `For example ${examples.map((one) => `\`${one}\``).join(' or ')}`,
  );
}

/** What a value has to be: "A length, in mm, cm or m." */
function takes(shape: Shape): string {
  switch (shape.kind) {
    case 'quantity': {
      const { title, units, words } = kindOf(shape.of);
      const inUnits = units.length > 0 ? `, in ${either(units)}` : '';
      const orWords = words.length > 0 ? `, or ${either(words.map(code))}` : '';
      return `Takes: ${title}${inUnits}${orWords}.`;
    }
    case 'enum':
      return `Takes ${either(shape.values.map((value) => `\`${value}\``))}.`;
    case 'ref':
      return `Takes the name of one of ${groupWords(shape.groups)}.`;
    case 'yes-no':
      return 'Takes `yes` or `no`.';
    case 'list':
      return shape.item.kind === 'ref'
        ? `Takes a list of names from ${groupWords(shape.item.groups)}.`
        : 'Takes a list.';
    case 'record':
    case 'word-or-record':
      return `Takes ${either(Object.keys(SHAPES[shape.of].keys).map(code), 'and')}.`;
    case 'map':
      return shape.names
        ? `By name, from ${groupWords(shape.names)}.`
        : 'By names of your own choosing.';
    default:
      return '';
  }
}

const groupWords = (groups: readonly Group[]): string =>
  either(
    groups.map((group) =>
      group === 'recordings' ? 'the recording settings of the body' : `\`${group}\``,
    ),
  );

function either(words: readonly string[], last: 'or' | 'and' = 'or'): string {
  if (words.length < 2) return words[0] ?? '';
  return `${words.slice(0, -1).join(', ')} ${last} ${words.at(-1)}`;
}
