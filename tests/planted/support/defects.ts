/**
 * Single defects of the kinds that tired people make, planted one at a time into a clean plan. Which
 * rule has to say so follows from the kind of the defect, not from what the program says.
 */
import { entryOf, fieldsOf, type PlanField } from './fields.ts';

export interface Planted {
  readonly kind: string;
  /** `shots/edge/field: 60 kg` */
  readonly says: string;
  readonly text: string;
  /** Rules of which one has to fire on the spot. */
  readonly rules: readonly string[];
  /** UTF-16 offsets in `text`; null: it is said of the shots that suffer, wherever in them. */
  readonly spot: readonly [start: number, end: number] | null;
  /** The entry that it stands in; undefined: the plan's own keys, which every shot follows from. */
  readonly entry: string | undefined;
}

interface Edit {
  readonly from: number;
  readonly to: number;
  readonly by: string;
}

type Kind = (
  field: PlanField,
  plan: string,
  fields: readonly PlanField[],
) => (Edit & { rules: readonly string[]; spot?: Planted['spot'] }) | undefined;

const replace = ([from, to]: readonly [number, number], by: string): Edit => ({ from, to, by });

/** Keys whose value is the name of something in the plan. */
const NAMES = new Set(['subject', 'rig', 'record', 'head', 'stand']);
const LISTS_OF_NAMES = new Set(['parts', 'light', 'filters']);

const isName = ({ path, text }: PlanField): boolean =>
  text !== undefined &&
  (LISTS_OF_NAMES.has(path.at(-2) ?? '') || (path.length > 2 && NAMES.has(path.at(-1) ?? '')));

/** Groups and lists in which the keys are names that the plan gives, not words of the language. */
const GIVES_NAMES =
  /^(?:(?:rigs|lights|subjects|shots)\/[^/]+|shots\/[^/]+\/preflight\/[^/]+|kit\/[^/]+\/[^/]+|kit\/bodies\/[^/]+\/recording-modes\/[^/]+|preflight\/once\/[^/]+|edit\/cuts\/[^/]+)$/;

const isWord = ({ path, key }: PlanField): boolean =>
  key !== undefined && path.length > 1 && !GIVES_NAMES.test(path.join('/'));

const inShot = ({ path }: PlanField, ...keys: readonly string[]): boolean =>
  path[0] === 'shots' && path.length === 3 && keys.includes(path[2] as string);

const QUANTITY =
  /^(?:f\/)?[0-9][0-9./x ]*(?: to [0-9.]+)? (mm|cm|m|s|kg|g|K|deg|fps|Mb\/s|Hz|stops)$/;
const OTHER_UNIT: Readonly<Record<string, string>> = {
  ...{ mm: 'kg', cm: 'kg', m: 'kg', s: 'mm', kg: 'mm', g: 'mm', K: 'mm', deg: 'kg', fps: 'K' },
  ...{ 'Mb/s': 'fps', Hz: 'mm', stops: 'kg' },
};

/** With two letters exchanged, so that it is nearly the word that was meant. */
const misspelt = (word: string): string => {
  const at = [...word].findIndex(
    (letter, index) =>
      index > 0 && /[a-z]{2}/.test(word.slice(index, index + 2)) && letter !== word[index + 1],
  );
  if (at < 0) return `${word}${word.at(-1)}`;
  return word.slice(0, at) + word[at + 1] + word[at] + word.slice(at + 2);
};

const indentationOf = ({ key }: PlanField, plan: string): readonly [number, number] => [
  plan.lastIndexOf('\n', key![0]) + 1,
  key![0],
];

const opensItsLine = (field: PlanField, plan: string): boolean =>
  field.key !== undefined && plan.slice(...indentationOf(field, plan)).trim() === '';

/** Groups of the kit, cuts and checks: without them more is amiss than is said of one mistake. */
const TAKES_MORE_ALONG = /^(?:kit\/[^/]+|edit\/cuts\/[^/]+|preflight\/once\/[^/]+)$/;

/** Without what binary fractions add. */
const short = (number: number): string => String(Number(number.toPrecision(12)));

const TILTED_TOO_LITTLE = ['lens-reflected', 'source-too-small'];

const TEXT_RULES_OF_A_VALUE = ['unit', 'wrong-value', 'misread-scalar'];

/** A number of a shot, what it is with its point a place off, and the rules of which one has to see it. */
const DECADES: Readonly<Record<string, readonly [RegExp, (number: number) => string, string[]]>> = {
  field: [/^([0-9.]+) mm$/, (mm) => `${short(mm / 10)} mm`, ['field-out-of-reach']],
  aperture: [/^f\/([0-9.]+)$/, (f) => `f/${short(f * 10)}`, ['aperture-not-on-lens']],
  shutter: [/^1\/([0-9]+)0 s$/, (tens) => `1/${tens} s`, ['shutter-too-slow']],
  iso: [/^([0-9]+)$/, (iso) => `${iso}0`, ['exposure-off', 'iso-out-of-range']],
  // Stated for mirrors alone.
  tilt: [/^([0-9.]+) deg$/, (deg) => `${short(deg / 10)} deg`, TILTED_TOO_LITTLE],
};

/**
 * Of a film or a surface and what is seen in it: the number that is wrong by a decade or more, and the
 * rules of which one has to see it.
 */
const MIRRORS: Readonly<Record<string, readonly [RegExp, (number: number) => string, string]>> = {
  lasts: [/^([0-9.]+) s$/, (s) => `${short(s / 10)} s`, 'take-exceeds-lifetime'],
  background: [/^([0-9.]+) cd\/m2$/, (cd) => `${short(cd * 1000)} cd/m2`, 'background-washes'],
};

export const KINDS: Readonly<Record<string, Kind>> = {
  'wrong unit': ({ path, text, value }) => {
    const unit = QUANTITY.exec(text ?? '')?.[1];
    // What is accepted may be of any size: with another it is no longer accepted.
    if (text === undefined || unit === undefined || path.includes('allow')) return undefined;
    const by = text.slice(0, -unit.length) + OTHER_UNIT[unit];
    return { ...replace(value, by), rules: ['unit', 'wrong-value'] };
  },
  'no unit': ({ text, value }) => {
    const unit = QUANTITY.exec(text ?? '')?.[1];
    if (text === undefined || unit === undefined) return undefined;
    const by = text.slice(0, -unit.length - 1);
    // 1/50 alone is understood, and offered the usual spelling.
    const rules = text.startsWith('1/') ? ['usual-spelling'] : ['unit', 'wrong-value'];
    return { ...replace(value, by), rules };
  },
  'misspelt name': (field) => {
    if (!isName(field)) return undefined;
    return { ...replace(field.value, misspelt(field.text!)), rules: ['unknown-name'] };
  },
  'name without its last letter': (field, _plan, fields) => {
    if (!isName(field)) return undefined;
    const by = field.text!.slice(0, -1);
    // Which may be another that is there.
    if (fields.some(({ path }) => path.at(-1) === by)) return undefined;
    return { ...replace(field.value, by), rules: ['unknown-name'] };
  },
  'misspelt key': (field) => {
    if (!isWord(field)) return undefined;
    // Rules and lights are named by keys there.
    const isNamed = ['allow', 'relight'].includes(field.path.at(-2)!);
    const rules = [isNamed ? 'unknown-name' : 'unknown-key'];
    return { ...replace(field.key!, misspelt(field.path.at(-1)!)), rules };
  },
  'removed key': (field, plan) => {
    const required =
      inShot(field, 'subject', 'rig') || (field.path[0] === 'rigs' && field.path[2] === 'parts');
    const awaited = inShot(field, 'field', 'aperture', 'shutter', 'iso', 'record', 'light');
    if ((!required && !awaited) || field.flow || plan[field.value[0]] === '\n') return undefined;
    const from = plan.lastIndexOf('\n', field.key![0]) + 1;
    const to = plan.indexOf('\n', field.value[1]) + 1;
    // What is not there is said at the name of what lacks it.
    const name = plan.lastIndexOf(`  ${field.path[1]}:`, from) + 2;
    return {
      ...{ from, to, by: '' },
      spot: [name, name + field.path[1]!.length],
      // A rig of parts alone is left with nothing behind its colon.
      rules: required ? ['missing-key', 'wrong-value'] : ['not-known'],
    };
  },
  'exchanged parts': (field, _plan, fields) => {
    if (field.path.at(-1) !== 'parts') return undefined;
    const items = fields.filter(({ path }) =>
      path.join('/').startsWith(`${field.path.join('/')}/`),
    );
    const names = items.map(({ text }) => text!);
    const exchanged = [names.at(-1), ...names.slice(1, -1), names[0]];
    return { ...replace(field.value, `[${exchanged.join(', ')}]`), rules: ['wrong-value'] };
  },
  'off by a decade': (field) => {
    const decade = DECADES[field.path[2] ?? ''];
    if (!decade || !inShot(field, field.path[2]!) || field.text === undefined) return undefined;
    const [pattern, by, rules] = decade;
    const number = pattern.exec(field.text)?.[1];
    return number === undefined
      ? undefined
      : { ...replace(field.value, by(Number(number))), rules };
  },
  'a mirror’s number': ({ path, text, value }, _plan, fields) => {
    const [section, name, key = ''] = path;
    // The lamp burns out in polished metal.
    if (path.at(-1) === 'highlight-latitude')
      return { ...replace(value, '1 stop'), rules: ['highlight-clips'], spot: null };
    if (section === 'subjects' && key === 'holder')
      return { ...replace(value, 'smooth-container'), rules: ['holder-works-against'] };
    // Behind a crystal, and so far away that it fills little of the frame.
    if (section === 'lights' && path.at(-1) === 'distance') {
      const isBehind = fields.some(
        ({ path: other, text: angle }) =>
          other.join('/') === `lights/${name}/at/azimuth` && angle === '180 deg',
      );
      if (isBehind)
        return { ...replace(value, '900 mm'), rules: ['backlight-too-small'], spot: null };
    }
    const [pattern, by, rule] = (section === 'subjects' && MIRRORS[key]) || [];
    const number = pattern?.exec(text ?? '')?.[1];
    if (by && rule && number !== undefined)
      return { ...replace(value, by(Number(number))), rules: [rule], spot: null };
    // So high that its image in a flat mirror is small.
    if (section !== 'lights' || path.slice(2).join('/') !== 'at/elevation') return undefined;
    const isSeen = fields.some(({ path: other }) => other.join('/') === `lights/${name}/luminance`);
    const isMirrored = fields.some(
      ({ path: [, , its], text: kind }) => its === 'kind' && /^(film|surface)$/.test(kind ?? ''),
    );
    if (!isSeen || !isMirrored) return undefined;
    return { ...replace(value, '75 deg'), rules: ['source-too-small'], spot: null };
  },
  tab: (field, plan) => {
    if (field.path.length < 2 || TAKES_MORE_ALONG.test(field.path.join('/'))) return undefined;
    if (!opensItsLine(field, plan)) return undefined;
    return { ...replace(indentationOf(field, plan), '\t'), rules: ['syntax'] };
  },
  'decimal comma': ({ text, value, flow }) => {
    const number = /^([0-9]+)\.([0-9]+)( .*|x)?$/.exec(text ?? '');
    if (!number) return undefined;
    const by = `${number[1]},${number[2]}${number[3] ?? ''}`;
    return { ...replace(value, by), rules: flow ? ['misread-scalar'] : TEXT_RULES_OF_A_VALUE };
  },
  'comma in a whole number': ({ text, value, flow }) => {
    const number = /^([0-9]+) mm$/.exec(text ?? '')?.[1];
    if (flow || number === undefined) return undefined;
    return { ...replace(value, `${number},5 mm`), rules: ['misread-scalar'] };
  },
  'unclosed quote': ({ text, value, key }) => {
    if (text === undefined || key === undefined) return undefined;
    const [at] = value;
    return { ...replace([at, at], '"'), rules: ['syntax'] };
  },
  'no space after the colon': ({ text, value, key, flow }) => {
    if (text === undefined || key === undefined) return undefined;
    const rules = flow ? ['misread-scalar', 'syntax'] : ['syntax', 'misread-scalar'];
    return { ...replace([key[1] + 1, value[0]], ''), rules, spot: [key[0], value[1] - 1] };
  },
};

/** Every defect of every kind that can be planted in a plan, one at a time. */
export function defectsIn(plan: string): readonly Planted[] {
  const fields = fieldsOf(plan);
  return Object.entries(KINDS).flatMap(([kind, plant]) =>
    fields.flatMap((field) => {
      if (field.path[0] === 'shootplan') return [];
      const planted = plant(field, plan, fields);
      if (planted === undefined) return [];
      const { from, to, by, rules } = planted;
      return {
        kind,
        says: `${field.path.join('/')}: ${JSON.stringify(plan.slice(from, to))} becomes ${JSON.stringify(by)}`,
        text: plan.slice(0, from) + by + plan.slice(to),
        rules,
        spot: planted.spot === undefined ? ([from, from + by.length] as const) : planted.spot,
        entry: entryOf(field),
      };
    }),
  );
}
