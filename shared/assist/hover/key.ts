/** Hover on a key: what it is for, in which unit, with an example. */
import { SHAPES } from '../../plan/generated/shapes.ts';
import type { Group, Shape } from '../../plan/shape.ts';
import { kindOf } from '../../quantity/index.ts';
import type { Meaning } from '../meaning.ts';
import { code, paragraphs } from './markdown.ts';
import { goesInto } from './results.ts';

export function keyHover({ key, keyShape, of }: Meaning): string {
  const { title, description, examples, required } = keyShape;
  const owner =
    of === 'plan' ? 'the plan' : `a ${SHAPES[of].title}`.replace(/^a (?=[aeiou])/, 'an ');
  return paragraphs(
    `**${key}**${sameWords(title, key) ? '' : ` · ${title}`} · of ${owner}${required ? ', required' : ''}`,
    description,
    takes(key, keyShape.shape),
    goesInto(of, key),
    examples.length > 0 && `For example ${examples.map((one) => `\`${one}\``).join(' or ')}`,
  );
}

/** Stands before the number, where a unit never does. */
const F_STOP = 'f/';

const sameWords = (title: string, key: string): boolean =>
  title.toLowerCase() === key.replaceAll('-', ' ');

/** What a value has to be: "Takes: length, in mm, cm or m." */
function takes(key: string, shape: Shape): string {
  switch (shape.kind) {
    case 'quantity': {
      const { title, units, words } = kindOf(shape.of);
      const written = units.filter((unit) => unit !== F_STOP);
      const inUnits = written.length > 0 ? `, in ${either(written)}` : '';
      const others = words.filter((word) => !title.includes(word));
      const orWords = others.length > 0 ? `, or ${either(others.map(code))}` : '';
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
      if (key === 'allow' || key === 'severity') return 'By the name of a rule.';
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
