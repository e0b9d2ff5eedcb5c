import type { LightInUse } from '../figures/bench.ts';
import { ifKnown } from '../plan/field.ts';
import { setTo } from '../plan/fixes.ts';
import type { Kelvin } from '../quantity/brands.ts';
import { KINDS } from '../quantity/index.ts';
import { signed } from '../say/say.ts';
import { message } from '../words/message.ts';
import type { Observation } from './rule.ts';
import type { ShotRule } from './shot-rule.ts';

type Facts =
  | {
      readonly what: 'set';
      readonly light: string;
      readonly kelvin: number;
      readonly lowest: number;
      readonly highest: number;
    }
  /** Gels bluer than any colour temperature, in mired. */
  | {
      readonly what: 'gels';
      readonly light: string;
      readonly shift: number;
      readonly mired: number;
    };

const print = (kelvin: number): string => KINDS['colour-temperature'].print(kelvin as Kelvin);

const BI_COLOUR = { 'lights/panel/colour-range': '2700 to 6500 K' };

export const colourOutOfRange: ShotRule<Facts> = {
  name: 'colour-out-of-range',
  severity: 'error',
  docs: {
    when: 'a shot sets a light to a colour temperature outside its `colour-range`, or its gels leave it none.',
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
      {
        says: 'bluer than any sky',
        change: {
          'kit/gels': '{ deep-blue: { transmission: 90 %, shift: -200 mired } }',
          'shots/frost/relight': '{ panel: { gels: [deep-blue] } }',
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
    return lights.value.flatMap((light) => [...setWrong(light), ...gelledWrong(light)]);
  },
  words: (facts) =>
    facts.what === 'set'
      ? {
          what: message`\`${facts.light}\` can't be set to ${print(facts.kelvin)}.`,
          why: message`Its range is ${print(facts.lowest)} to ${print(facts.highest)}.`,
        }
      : {
          what: message`The gels leave \`${facts.light}\` no colour temperature.`,
          why: message`They shift it by ${signed(String(Math.round(facts.shift)))} mired; it has ${Math.round(facts.mired)} mired itself.`,
        },
  numbers: (facts): Readonly<Record<string, number>> =>
    facts.what === 'set'
      ? { kelvin: facts.kelvin, lowestKelvin: facts.lowest, highestKelvin: facts.highest }
      : { shiftMired: facts.shift, lightMired: facts.mired },
  fixes({ at, facts }) {
    if (facts.what === 'gels') return [];
    const nearest = print(facts.kelvin < facts.lowest ? facts.lowest : facts.highest);
    return [setTo(message`Set ${nearest}`, at, nearest)];
  },
};

function setWrong({ name, fields, setColour }: LightInUse): readonly Observation<Facts>[] {
  const range = ifKnown(fields['colour-range']);
  if (!range || setColour?.state !== 'known') return [];
  const kelvin = setColour.value;
  if (kelvin >= range.from && kelvin <= range.to) return [];
  const words = KINDS['colour-temperature-range'].print(range);
  return [
    {
      at: setColour.at,
      facts: { what: 'set', light: name, kelvin, lowest: range.from, highest: range.to },
      related: [{ at: fields['colour-range'].at, words }],
    },
  ];
}

const gelledWrong = ({ name, tooBlue }: LightInUse): readonly Observation<Facts>[] =>
  tooBlue === null
    ? []
    : [
        {
          at: tooBlue.at,
          facts: { what: 'gels', light: name, shift: tooBlue.shift, mired: tooBlue.mired },
        },
      ];
