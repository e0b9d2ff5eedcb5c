/**
 * A language that nobody speaks: every static part of every message in brackets. What is said and
 * stands in none was never gathered, but for what a plan itself says.
 */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { SHAPES } from '../../shared/plan/generated/shapes.ts';
import { KNOWN_CHECKS } from '../../shared/rules/checks-called-for.ts';
import { RULE_NAMES } from '../../shared/rules/registry.ts';
import { setTranslation } from '../../shared/words/message.ts';
import { readTranslation } from '../../shared/words/translation.ts';

const CATALOGUE = path.resolve(import.meta.dirname, '../../shared/words/messages.json');

/** Key to text: "Depth is {0}, {1} more." becomes "⟦Depth is ⟧{0}, {1}⟦ more⟧." */
export const PSEUDO: Readonly<Record<string, string>> = Object.fromEntries(
  Object.keys(JSON.parse(readFileSync(CATALOGUE, 'utf8'))).map((key) => [
    key,
    key.replace(/\{\d+\}|(?:[^{}]|\{\{|\}\})+/g, bracketed),
  ]),
);

/** A full stop at the end stays outside: sentences are joined and cut there. */
function bracketed(piece: string): string {
  const isSaid = !/^\{\d/.test(piece) && /\p{L}/u.test(piece);
  return isSaid ? piece.replace(/^(.*?)([.]?)$/s, '⟦$1⟧$2') : piece;
}

/** What `make` answers while the language is in force. */
export function inPseudo<T>(make: () => T): T {
  const { translation, refused } = readTranslation(PSEUDO);
  if (refused.length > 0) throw new Error(refused.join('\n'));
  setTranslation(translation);
  try {
    return make();
  } finally {
    setTranslation(null);
  }
}

/** As it would be in English. */
export const withoutBrackets = (text: string): string => text.replace(/[⟦⟧]/g, '');

/** Symbols of units and of the trade, which are the same in every language. */
const SYMBOLS =
  'mm cm m km in ft um µm nm N kg g lb oz s ms min h Hz kHz K lx klx cd W bpm fps px MB GB TB kB kb Mb Gb f x N_eff dpt deg ISO LED YAML JSON UTF V'.split(
    ' ',
  );

const WORD = /\p{L}[\p{L}\p{M}_]*/gu;
const words = (text: string): readonly string[] => text.match(WORD) ?? [];

const LANGUAGE = new Set([
  ...SYMBOLS,
  ...RULE_NAMES.flatMap(words),
  ...KNOWN_CHECKS.flatMap(({ name }) => words(name)),
  ...Object.values(SHAPES).flatMap(({ keys }) => Object.keys(keys).flatMap(words)),
  ...words(
    JSON.stringify(
      Object.values(SHAPES).flatMap(({ keys }) => Object.values(keys).map(({ shape }) => shape)),
    ),
  ),
]);

/** Words of `text` that stand in no brackets, and are neither of `plan` nor of the language. */
export function untranslated(text: string, plan: string): readonly string[] {
  const foreign = proseOf(plan).reduce(
    (left, prose) => left.replaceAll(prose, ' '),
    // What keeps Markdown from being read as such.
    text.replaceAll('\\', ''),
  );
  // A first sentence that is too long ends within its brackets. Code and colours are no words.
  const outside = foreign.replace(/⟦[^⟧…]*(?:⟧|…|$)|`[^`⟦⟧]*`|#[0-9a-f]{6}\b/g, ' ');
  const own = new Set(words(withoutProse(plan)));
  return words(outside).filter((word) => !LANGUAGE.has(word) && !own.has(word));
}

/** What a plan says to people: titles, notes, reasons. */
const PROSE = /\b(?:title|about|note|because): *(.*)$/gm;

const proseOf = (plan: string): readonly string[] =>
  [...plan.matchAll(PROSE)].map(([, prose]) => prose!.replace(/^["']|["']$/g, '')).filter(Boolean);

/** A plan without that, and without comments. */
const withoutProse = (plan: string): string =>
  plan.replace(/(?<=^|\s)#.*$/gm, '').replace(PROSE, '');
