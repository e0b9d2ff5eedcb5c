/** What a text was likely meant as that is neither a value nor a range: `50 bis 80 mm`, `ca. 50 mm`. */
import type { Failure, QuantityKind } from './kind.ts';
import { plainNumber, repairNumbers } from './number.ts';
import type { RoughForm } from './rough.ts';

const LONGEST = 80;
/** What people put before a number that they know only about. */
const ABOUT =
  /^(?:~|\u2248|\u223c|(?:ca|circa|about|approx|approximately|around|roughly|etwa|env|environ)(?![a-z]))\.?\s*/iu;
/** What opens a range in words: "between 50 and 80 mm". */
const OPENING = /^(?:between|from|von|zwischen|entre|de)\s+/iu;
/** What other people put between two ends. */
const BETWEEN =
  /(?<=[0-9][\p{L}%\u00b0/0-9]{0,9})\s*(?:\b(?:to|bis|until|till|til|through|thru|up to|and|und|or|oder|et|a|au)\b|\u00e0|\u2014|~|\u2026|(?<=\s)\/(?=\s))\s*(?=[-+]?[0-9])/iu;
const EXPONENT = /[0-9]+(?:\.[0-9]+)?[eE][-+]?[0-9]+/g;
/** How roughly "about" is where somebody doesn't say. */
const ABOUT_PERCENT = 10;
const MOST = 4;

/** Why it is no range, with what was likely meant; undefined: it doesn't look like one. */
export function roughFailure<T>(kind: QuantityKind<T>, text: string): Failure | undefined {
  const { rough } = kind;
  const trimmed = text.trim();
  if (!rough || trimmed.length > LONGEST) return undefined;
  return aboutOne(kind, rough, trimmed) ?? betweenTwo(kind, rough, trimmed);
}

/** The usual spelling of one value, mended where it isn't right. */
function valuesIn<T>(kind: QuantityKind<T>, text: string): readonly string[] {
  const parsed = kind.parse(text);
  return parsed.ok ? [parsed.usual ?? text] : parsed.likely;
}

function aboutOne<T>(
  kind: QuantityKind<T>,
  rough: RoughForm<T>,
  text: string,
): Failure | undefined {
  const rest = text.replace(ABOUT, '');
  if (rest === text) return undefined;
  const [value] = valuesIn(kind, rest);
  if (value === undefined) return undefined;
  // A share of a percentage would read like the percentage itself: that has no such form.
  const about = rough.parse(`${value} \u00b1 ${ABOUT_PERCENT} %`);
  const share = about?.ok && !value.includes('%') ? [`${value} \u00b1 ${ABOUT_PERCENT} %`] : [];
  return { ok: false, code: 'form', likely: [...share, value] };
}

function betweenTwo<T>(
  kind: QuantityKind<T>,
  rough: RoughForm<T>,
  text: string,
): Failure | undefined {
  const opened = text
    .replace(OPENING, '')
    .replace(/[()]/g, '')
    .replace(/(?<=[0-9])\.{2,3}(?=[0-9])/, ' to ');
  const exponent = opened.match(EXPONENT)?.[0];
  const numbers = repairNumbers(opened.replace(EXPONENT, plainNumber));
  const likely = new Set<string>();
  let lacksUnit = false;
  for (const candidate of numbers.texts.map((one) => one.replace(BETWEEN, ' to '))) {
    const found = usualOf(rough, candidate);
    if (found !== undefined) likely.add(found);
    else
      for (const unit of unitsFor(kind, candidate)) {
        const with_ = usualOf(rough, `${candidate} ${unit}`);
        if (with_ === undefined) continue;
        lacksUnit = true;
        likely.add(with_);
      }
  }
  if (likely.size === 0) return undefined;
  const code =
    exponent !== undefined
      ? 'not-a-number'
      : (numbers.code ??
        (lacksUnit && !/[\p{L}%\u00b0]/u.test(opened.replace(BETWEEN, '')) ? 'no-unit' : 'form'));
  const detail = exponent ?? numbers.detail;
  return {
    ok: false,
    code,
    likely: [...likely].slice(0, MOST),
    ...(detail !== undefined && { detail }),
  };
}

function usualOf<T>(rough: RoughForm<T>, text: string): string | undefined {
  const parsed = rough.parse(text);
  return parsed?.ok ? (parsed.usual ?? text) : undefined;
}

/** Units that the second number may have been meant in: the first one's, or what a bare one likely has. */
function unitsFor<T>(kind: QuantityKind<T>, text: string): readonly string[] {
  const parts = /^[-\u2212+]?[0-9.]+\s*(\p{L}[\p{L}/0-9]*|%|\u00b0)?.*?([0-9.]+)$/u.exec(text);
  if (!parts) return [];
  const [, own, last = ''] = parts;
  if (own !== undefined && own !== 'to') return [own];
  const bare = kind.parse(last);
  return bare.ok
    ? []
    : bare.likely.filter((one) => one.startsWith(last)).map((one) => one.slice(last.length).trim());
}
