import { ifKnown } from '../plan/field.ts';
import { setTo } from '../plan/fixes.ts';
import type { Kelvin } from '../quantity/brands.ts';
import { KINDS } from '../quantity/index.ts';
import { message } from '../words/message.ts';
import type { ShotRule } from './shot-rule.ts';

interface Facts {
  readonly light: string;
  readonly kelvin: number;
  readonly lowest: number;
  readonly highest: number;
}

const print = (kelvin: number): string => KINDS['colour-temperature'].print(kelvin as Kelvin);

const BI_COLOUR = { 'lights/panel/colour-range': '2700 to 6500 K' };

export const colourOutOfRange: ShotRule<Facts> = {
  name: 'colour-out-of-range',
  severity: 'error',
  docs: {
    when: 'a shot sets a light to a colour temperature outside its `colour-range`.',
    why: 'A bi-colour light mixes a warm and a cold lamp. Beyond either of them it has nothing to mix.',
    remedy: 'Set a colour temperature that the light has, and put a gel on it for the rest.',
    bad: [
      {
        says: 'warmer than its warm lamp',
        change: {
          ...BI_COLOUR,
          'shots/frost/relight': '{ panel: { colour-temperature: 2200 K } }',
          'shots/frost/white-balance': '2200 K',
        },
      },
    ],
    good: [
      {
        says: 'between both',
        change: {
          ...BI_COLOUR,
          'shots/frost/relight': '{ panel: { colour-temperature: 3200 K } }',
          'shots/frost/white-balance': '3200 K',
        },
      },
    ],
  },
  check({ bench: { lights } }) {
    if (!lights.known) return [];
    return lights.value.flatMap(({ name, fields, setColour }) => {
      const range = ifKnown(fields['colour-range']);
      if (!range || setColour?.state !== 'known') return [];
      const kelvin = setColour.value;
      if (kelvin >= range.from && kelvin <= range.to) return [];
      return [
        {
          at: setColour.at,
          facts: { light: name, kelvin, lowest: range.from, highest: range.to },
          related: [
            {
              at: fields['colour-range'].at,
              words: KINDS['colour-temperature-range'].print(range),
            },
          ],
        },
      ];
    });
  },
  words: ({ light, kelvin, lowest, highest }) => ({
    what: message`\`${light}\` can't be set to ${print(kelvin)}.`,
    why: message`Its range is ${print(lowest)} to ${print(highest)}.`,
  }),
  numbers: ({ kelvin, lowest, highest }) => ({
    kelvin,
    lowestKelvin: lowest,
    highestKelvin: highest,
  }),
  fixes({ at, facts: { kelvin, lowest, highest } }) {
    const nearest = print(kelvin < lowest ? lowest : highest);
    return [setTo(message`Set ${nearest}`, at, nearest)];
  },
};
