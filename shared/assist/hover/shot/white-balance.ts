/** The white balance beside the colour of the lights that are on. */

import { miredWords } from '../../../say/say.ts';
import { message } from '../../../words/message.ts';
import { fieldText, valueText } from '../entry-data.ts';
import { line, plain, table } from '../markdown.ts';
import type { SaidShot } from './view.ts';

export function whiteBalanceHover({ bench, say }: SaidShot): string {
  const { lights, fields } = bench;
  const set = fields['white-balance'];
  return table([
    set.state === 'known' &&
      line(
        message`white balance`,
        `**${valueText({ kind: 'quantity', of: 'white-balance' }, set.value, say)}**`,
      ),
    ...(lights.known
      ? lights.value.map(({ name, fields: { 'colour-temperature': colour }, gels, gelShift }) => {
          const text =
            colour.state === 'known'
              ? fieldText({ kind: 'quantity', of: 'colour-temperature' }, colour, say)
              : message`colour unknown`;
          return line(
            plain(name),
            gels.length === 0 || gelShift === null
              ? text
              : message`${text} behind ${plain(gels.join(', '))}, ${miredWords(gelShift)}`,
          );
        })
      : []),
  ]);
}
