/** Hover on a key: what it is for, in which unit, with an example. */

import type { DefName, Group } from '../../plan/generated/names.ts';
import { SHAPES } from '../../plan/generated/shapes.ts';
import type { Shape } from '../../plan/shape.ts';
import { kindOf } from '../../quantity/index.ts';
import { withArticle } from '../../words/article.ts';
import { allOf, anyOf } from '../../words/listed.ts';
import { inLanguage, message } from '../../words/message.ts';
import type { Meaning } from '../meaning.ts';
import { code, paragraphs } from './markdown.ts';
import { goesInto } from './results.ts';

export function keyHover({ key, keyShape, of }: Meaning): string {
  const { title, description, examples, required } = keyShape;
  const named = sameWords(title, key) ? `**${key}**` : `**${key}** · ${inLanguage(title)}`;
  return paragraphs(
    required
      ? message`${named} · of ${ownerWords(of)}, required`
      : message`${named} · of ${ownerWords(of)}`,
    inLanguage(description),
    takes(key, keyShape.shape),
    goesInto(of, key),
    examples.length > 0 &&
      message`For example ${examples.map((one) => `\`${one}\``).join(message` or `)}`,
  );
}

const ownerWords = (of: DefName): string =>
  of === 'plan' ? message`the plan` : withArticle(SHAPES[of].title);

/** Stands before the number, where a unit never does. */
const F_STOP = 'f/';

const sameWords = (title: string, key: string): boolean =>
  title.toLowerCase() === key.replaceAll('-', ' ');

/** What a value has to be: "Value: length, in mm, cm or m." */
function takes(key: string, shape: Shape): string {
  switch (shape.kind) {
    case 'quantity': {
      const { title, units, words } = kindOf(shape.of);
      const written = units.filter((unit) => unit !== F_STOP);
      const inUnits = written.length > 0 ? message`, in ${anyOf(written)}` : '';
      const others = words.filter((word) => !title.includes(word));
      const orWords = others.length > 0 ? message`, or ${anyOf(others.map(code))}` : '';
      return shape.rough
        ? message`Value: ${inLanguage(title)}${inUnits}${orWords}. Or a range of it, or \`±\`.`
        : message`Value: ${inLanguage(title)}${inUnits}${orWords}.`;
    }
    case 'enum':
      return message`Value: ${anyOf(shape.values.map((value) => `\`${value}\``))}.`;
    case 'ref':
      return message`Value: the name of one of ${groupWords(shape.groups)}.`;
    case 'yes-no':
      return message`Value: \`yes\` or \`no\`.`;
    case 'list':
      return shape.item.kind === 'ref'
        ? message`Value: a list of names from ${groupWords(shape.item.groups)}.`
        : message`Value: a list.`;
    case 'record':
    case 'word-or-record':
      return message`Value: ${allOf(Object.keys(SHAPES[shape.of].keys).map(code))}.`;
    case 'map':
      if (key === 'allow' || key === 'severity') return message`By the name of a rule.`;
      return shape.names
        ? message`By name, from ${groupWords(shape.names)}.`
        : message`By names of your own choosing.`;
    default:
      return '';
  }
}

const groupWords = (groups: readonly Group[]): string =>
  anyOf(
    groups.map((group) =>
      group === 'recordings' ? message`the recording settings of the body` : `\`${group}\``,
    ),
  );
