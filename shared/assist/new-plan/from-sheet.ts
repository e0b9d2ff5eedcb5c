/**
 * Pieces of a new plan from what data sheets say, asked for in their own words. What a sheet leaves out
 * is left out of the plan: nothing is made up for it.
 */
import { meantOnSheet } from '../../plan/on-sheets.ts';
import { kindOf } from '../../quantity/index.ts';
import type { Body, Lens } from './kit.ts';
import { type Answers, QUESTIONS, type Question, type Sheet } from './questions.ts';

/** An answer as lines of a plan: each key with its value. */
type Pairs = readonly (readonly [key: string, value: string])[];

const MODE =
  /^(\d{3,5} ?[x\u00d7*] ?\d{3,5})[ ,]*(?:@|at|\/)? *(\d{2,3}(?:\.\d{1,3})?) *(?:fps|p|Hz)?$/i;
const MODE_NAMES: Readonly<Record<string, string>> = { 1280: 'small', 1920: 'hd', 3840: 'uhd' };

/**
 * The answer as the plan has it; null: it can't be read. More than one value that could be meant is
 * none.
 */
export function readAnswer({ kind, key, plan }: Question, text: string): Pairs | null {
  const answer = text.trim();
  if (kind === 'modes') return modes(answer);
  const parsed = kindOf(kind).parse(answer);
  if (parsed.ok) return [[key, parsed.usual ?? answer]];
  const [meant, other] = plan ? meantOnSheet(plan.def, plan.key, answer) : [];
  if (meant && !other) return [[key, meant.text], ...Object.entries(meant.beside ?? {})];
  // Another unit is another quantity: 60 W are not 60 lx.
  const isSure = parsed.likely.length === 1 && parsed.code !== 'unknown-unit';
  return isSure ? [[key, parsed.likely[0]!]] : null;
}

/** `1920 x 1080 50 fps, 3840 x 2160 25 fps`: a name and a mode each. */
function modes(text: string): Pairs | null {
  const names = new Set<string>();
  const found = text.split(/[,;] *(?=\d)/).map((one) => {
    const [, pixels = '', rate = ''] = MODE.exec(one.trim()) ?? [];
    const [size, speed] = [kindOf('pixels').parse(pixels), kindOf('rate').parse(`${rate} fps`)];
    if (!size.ok || !speed.ok) return undefined;
    const width = /^\d+/.exec(pixels)![0];
    const stem = `${MODE_NAMES[width] ?? `w${width}`}-${Math.round(Number.parseFloat(rate))}`;
    let name = stem;
    for (let count = 2; names.has(name); count++) name = `${stem}-${count}`;
    names.add(name);
    return [
      name,
      `{ resolution: ${size.usual ?? pixels}, rate: ${speed.usual ?? `${rate} fps`} }`,
    ] as const;
  });
  return found.every((one) => one !== undefined) ? found : null;
}

/** What is answered of a sheet: by the question's key; null: an answer can't be read. */
function readSheet(sheet: Sheet, answers: Answers): ReadonlyMap<string, Pairs> | null {
  const read = new Map<string, Pairs>();
  for (const question of QUESTIONS[sheet]) {
    const text = answers[question.key] ?? '';
    if (text.trim() === '') continue;
    const pairs = readAnswer(question, text);
    if (pairs === null) return null;
    read.set(question.key, pairs);
  }
  return read;
}

/** `key: value` for each that was answered. */
const linesOf = (
  read: ReadonlyMap<string, Pairs>,
  keys: Readonly<Record<string, string>>,
): string[] =>
  Object.entries(keys).flatMap(([question, key]) =>
    (read.get(question) ?? []).map(([own, value]) => `${own === question ? key : own}: ${value}`),
  );

/** The body of a sheet; null: an answer can't be read. */
export function bodyFromSheet(answers: Answers): Body | null {
  const read = readSheet('body', answers);
  if (!read) return null;
  const recorded = read.get('modes') ?? [];
  const lines = [
    ...linesOf(read, { sensor: 'sensor', pixels: 'pixels', 'body-mass': 'mass' }),
    ...(recorded.length > 0
      ? ['recording-modes:', ...recorded.map(([name, mode]) => `  ${name}: ${mode}`)]
      : []),
  ];
  return { name: 'own-body', about: '', lines: filled(lines) };
}

/** The lens of a sheet, on the body without anything between; null: an answer can't be read. */
export function lensFromSheet(answers: Answers): Lens | null {
  const read = readSheet('lens', answers);
  if (!read) return null;
  const closest = linesOf(read, { closest: 'from-sensor', magnification: 'magnification' });
  const lines = [
    ...linesOf(read, { 'focal-length': 'focal-length', 'f-range': 'aperture' }),
    ...(closest.length > 0 ? [`closest: { ${closest.join(', ')} }`] : []),
    ...linesOf(read, {
      'filter-thread': 'filter-thread',
      'lens-length': 'length',
      'lens-mass': 'mass',
    }),
  ];
  return {
    name: 'own-lens',
    about: '',
    lines: filled(lines),
    between: {},
    parts: [],
    footMm: null,
    mirrorUpDeg: 20,
  };
}

/** Lines of a light besides its kind and place; null: an answer can't be read. */
export function lightFromSheet(answers: Answers): string | null {
  const read = readSheet('light', answers);
  return read && linesOf(read, { face: 'emitting-size', lux: 'illuminance' }).join('\n');
}

/** An entry without any key would be none. */
const filled = (lines: readonly string[]): string =>
  lines.length > 0 ? lines.join('\n') : 'about: from its data sheet';
