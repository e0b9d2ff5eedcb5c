/**
 * Values as data sheets print them, where the language has another form: `0.28 m` for the closest
 * focus, `M67` for a filter thread, `2200 lx @ 1 m` for a light, `100-25600` for the ISO of a body.
 */
import { kindOf, type QuantityId } from '../quantity/index.ts';
import { anyOf } from '../words/listed.ts';
import { message } from '../words/message.ts';
import type { DefName } from './generated/names.ts';
import type { Place } from './place.ts';
import type { PlanFix, ShapeProblem } from './problem.ts';
import { problem } from './shape-problems.ts';

interface Meant {
  /** What belongs in its place, as YAML. */
  readonly text: string;
  /** What belongs beside it, by key. */
  readonly beside?: Readonly<Record<string, string>>;
}

type Reader = (text: string) => readonly Meant[];

const READERS: Readonly<Partial<Record<DefName, Readonly<Record<string, Reader>>>>> = {
  body: { iso, readout },
  lens: { 'filter-thread': thread, closest },
  recording: { crop },
  light: { illuminance },
};

/** Longer texts are no values of a sheet. */
const LONGEST = 60;

/** The text in its usual spelling as a quantity of that kind; undefined: it is none. */
function usual(kind: QuantityId, text: string): string | undefined {
  const parsed = kindOf(kind).parse(text);
  return parsed.ok ? (parsed.usual ?? text) : undefined;
}

/** 100-25600, ISO 100 to 25,600: the whole range; how much of it is usable no sheet says. */
function iso(text: string): readonly Meant[] {
  const ends =
    /^(?:iso )?(\d[\d,]*) ?(?:-|\u2013|\u2014|to|\.\.\.?|\u2026) ?(?:iso )?(\d[\d,]*)$/i.exec(text);
  const [lowest, highest] = (ends ?? [])
    .slice(1)
    .map((end) => usual('iso', end.replaceAll(',', '')));
  return lowest === undefined || highest === undefined || Number(lowest) > Number(highest)
    ? []
    : [{ text: `{ lowest: ${lowest}, highest: ${highest} }` }];
}

/** 1/60 s, 1/60: three digits are finer than anybody measures it. */
function readout(text: string): readonly Meant[] {
  const perSecond = Number(/^1\/(\d+(?:\.\d+)?) ?s?$/.exec(text)?.[1]);
  return perSecond > 0 ? [{ text: `${Number((1000 / perSecond).toPrecision(3))} ms` }] : [];
}

/** M67, ø67 mm, 67mm thread, M67 x 0.75. Threads are in millimetres. */
function thread(text: string): readonly Meant[] {
  const found =
    /^(?:M|[\u00d8\u00f8\u2300]) ?(\d{2,3}(?:\.\d)?)(?: ?mm)?(?: ?[x\u00d7] ?\d\.\d{1,2}(?: ?mm)?)?$|^(\d{2,3}(?:\.\d)?)(?: ?mm)?(?: (?:filter ?)?(?:thread|filter|filters))?$/i.exec(
      text,
    );
  const size = found?.[1] ?? found?.[2];
  return size === undefined ? [] : [{ text: `${size} mm` }];
}

/** A distance, a magnification, or both: 0.28 m, 1:2, `0.28 m (1:1)`, `1:1 at 0.28 m`. */
function closest(text: string): readonly Meant[] {
  const parts = text.split(/ *[,;()@] *| +at +| +\/ +/).filter((part) => part !== '');
  const distances = parts.flatMap((part) => usual('length', part) ?? []);
  const magnifications = parts.flatMap((part) => usual('magnification', part) ?? []);
  if (distances.length + magnifications.length < parts.length) return [];
  const pairs = [
    ...distances.slice(0, 1).map((distance) => `from-sensor: ${distance}`),
    ...magnifications.slice(0, 1).map((times) => `magnification: ${times}`),
  ];
  return pairs.length === 0 ? [] : [{ text: `{ ${pairs.join(', ')} }` }];
}

/** How much narrower the formats are that bodies crop to; makers differ. Common practice. */
const CROPS: readonly (readonly [RegExp, readonly string[]])[] = [
  [/^(?:aps[- ]?c|super[- ]?35(?: ?mm)?|s35)(?: crop| mode)?$/i, ['1.5x', '1.6x']],
  [/^(?:none|no|no crop|full[- ]?(?:frame|width|sensor)|uncropped)$/i, ['1x']],
];

function crop(text: string): readonly Meant[] {
  // A number alone lacks its unit and nothing else.
  if (/^[\d.]+$/.test(text)) return [];
  const bare = /^(?:crop )?(\d(?:\.\d{1,3})?) ?[x\u00d7]?(?: crop)?$/i.exec(text)?.[1];
  if (bare !== undefined && Number(bare) > 0) return [{ text: `${bare}x` }];
  const named = CROPS.find(([name]) => name.test(text))?.[1] ?? [];
  return named.map((one) => ({ text: one }));
}

/** 2200 lux @ 1 m, 2200 lx at 1 m, 2200 lx (1 m), 2,200 lx/1m. */
function illuminance(text: string): readonly Meant[] {
  const [, number = '', unit = '', far = ''] =
    /^([\d.,]+) ?(k?lux|k?lx) ?(?:@|at|\/|\(|in) ?([\d.]+ ?(?:mm|cm|m|ft|in|metres?|meters?|feet|foot))\)?$/i.exec(
      text,
    ) ?? [];
  const thousands = /^\d{1,3}(?:,\d{3})+$/.test(number) ? number.replaceAll(',', '') : number;
  const light = usual('illuminance', `${thousands} ${unit.toLowerCase()}`);
  const distance = usual('length', far);
  return light === undefined || distance === undefined
    ? []
    : [{ text: light, beside: { 'illuminance-distance': distance } }];
}

const worded = (key: string, { text, beside = {} }: Meant): string =>
  Object.entries(beside).length === 0
    ? text
    : [[key, text], ...Object.entries(beside)].map((pair) => pair.join(': ')).join(', ');

/** What a text that a sheet may have means for a key; empty: no sheet has it so. Best first. */
export function meantOnSheet(def: DefName, key: string, text: string): readonly Meant[] {
  const trimmed = text.trim().replace(/[\u00a0\u2009\u202f]/g, ' ');
  const readers = READERS[def];
  if (!readers || !Object.hasOwn(readers, key) || trimmed.length > LONGEST) return [];
  return readers[key]!(trimmed);
}

/**
 * What is wrong with a value that stands as a data sheet prints it; undefined: no sheet has it so.
 *
 * @param taken whether the record has the key already, which no fix may write anew
 */
export function onSheet(
  def: DefName,
  key: string,
  text: string,
  at: Place,
  taken: (key: string) => boolean,
): { readonly problem: ShapeProblem; readonly counts: string | undefined } | undefined {
  const meant = meantOnSheet(def, key, text);
  if (meant.length === 0) return undefined;
  const fixes = meant.map((one): PlanFix => {
    const all = Object.entries(one.beside ?? {});
    const beside = all.filter(([other]) => !taken(other));
    const kept: Meant = { text: one.text, beside: Object.fromEntries(beside) };
    const guess =
      meant.length > 1
        ? message`a guess at what was meant`
        : beside.length < all.length
          ? message`what it says of \`${all.map(([other]) => other).join(', ')}\` is lost`
          : undefined;
    return {
      title: message`Write ${worded(key, kept)}`,
      ...(guess !== undefined && { sideEffects: guess }),
      edits: [
        { op: 'set', at, text: one.text },
        ...beside.map(([other, value]) => ({
          op: 'set' as const,
          at: { ...at, path: [...at.path.slice(0, -1), other] },
          text: value,
        })),
      ],
    };
  });
  const likely = anyOf(meant.map((one) => worded(key, one)));
  const [only] = meant;
  return {
    problem: problem('wrong-value', 'as-on-sheets', at, { key, text: text.trim(), likely }, fixes),
    // A value that needs another beside it is not known before both are written.
    counts:
      meant.length === 1 && !only?.beside && !only?.text.startsWith('{') ? only?.text : undefined,
  };
}
