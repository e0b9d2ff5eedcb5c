/**
 * That no text for people tells anybody to set what can't be set: every ISO, aperture and shutter
 * that findings, fixes and hovers say lies inside what body and lens have, or stands in the plan as
 * it is. Read off the plan's own text, apart from the code that says it.
 */
import { expect } from 'vitest';
import { parse } from 'yaml';
import type { Core } from '../../shared/api/facade.ts';
import type { LocatedFinding } from '../../shared/api/located.ts';
import { PLAN } from './plans.ts';

interface Range {
  readonly from: number;
  readonly to: number;
}

/** As bodies are marked where a plan doesn't say; common practice. */
const USUAL_ISO: Range = { from: 25, to: 102_400 };
const USUAL_APERTURE: Range = { from: 1, to: 90 };
const USUAL_RECIPROCAL: Range = { from: 1, to: 8000 };
/** Texts round to two digits. */
const ROUNDED = 1.05;

const isIn = (value: number, { from, to }: Range): boolean =>
  value >= from / ROUNDED && value <= to * ROUNDED;

type Data = Readonly<Record<string, unknown>>;
const data = (value: unknown): Data =>
  typeof value === 'object' && value !== null ? (value as Data) : {};

/** What the rig of a shot can be set to. */
function rangesOf(text: string, shot: string | undefined): { iso: Range; aperture: Range } {
  let plan: Data = {};
  try {
    plan = data(parse(text, { uniqueKeys: false }));
  } catch {
    // What can't be read has no ranges of its own.
  }
  const rig = data(data(plan.rigs)[String(data(data(plan.shots)[shot ?? '']).rig)]);
  const parts = Array.isArray(rig.parts) ? rig.parts.map(String) : [];
  const kit = data(plan.kit);
  const part = (group: string): Data =>
    data(data(kit[group])[parts.find((name) => name in data(kit[group])) ?? '']);
  const iso = data(part('bodies').iso);
  const [from, to] = String(part('lenses').aperture ?? '').match(/[0-9.]+/g) ?? [];
  return {
    iso: {
      from: Number(iso.lowest ?? USUAL_ISO.from),
      to: Number(iso.highest ?? USUAL_ISO.to),
    },
    aperture: to
      ? { from: Math.min(Number(from), Number(to)), to: Math.max(Number(from), Number(to)) }
      : USUAL_APERTURE,
  };
}

/** What an aperture works as at the sensor is no setting; of several rigs it is a column of a table. */
const EFFECTIVE_COLUMN = /\|[^|\n]+\| (?:works as|effective) \|.*\n(?:\|.*\n?)*/g;
const EFFECTIVE =
  /works as \**f\/[0-9.]+|effective f-number(?: \||:) \**f\/[0-9.]+|Effective: [^·\n]*|[Ee]ffective aperture (?:is )?f\/[0-9.]+|\**f\/[0-9.]+\**(?: effective| at the sensor)|(?:shows?|displays)(?: \||:?) f\/[0-9.]+|display about f\/[0-9.]+|\| (?:works as|effective) \| .*/g;

/** Settings in `said` that the shot's rig doesn't have, and that the plan doesn't hold. */
export function unsettable(text: string, shot: string | undefined, said: string): string[] {
  const written = (pattern: RegExp) =>
    new Set([...text.matchAll(pattern)].map(([, number = '']) => number));
  const { iso, aperture } = rangesOf(text, shot);
  const marked = said.replaceAll(EFFECTIVE_COLUMN, '').replaceAll(EFFECTIVE, '');
  const found = (pattern: RegExp, range: Range, inPlan: ReadonlySet<string>) =>
    [...marked.matchAll(pattern)]
      .filter(([, number = '']) => !inPlan.has(number) && !isIn(Number(number), range))
      .map(([whole]) => whole);
  return [
    ...found(
      /ISO(?: needed)?(?: \||:)? \**([0-9]+(?:\.[0-9]+)?)(?![0-9.]* stops?)/g,
      iso,
      written(/iso:? *([0-9.]+)/gi),
    ),
    ...found(/f\/([0-9]+(?:\.[0-9]+)?)/g, aperture, written(/(?:f\/?|aperture: *)([0-9.]+)/gi)),
    ...found(/1\/([0-9]+(?:\.[0-9]+)?) s\b/g, USUAL_RECIPROCAL, written(/1\/([0-9.]+)/g)),
  ];
}

/** Keys and values of a shot that a hover stands at. */
const HOVERED = /^( {4})(field|aperture|shutter|iso|rig|light|subject|tilt|flow)(: *\[?)\S/;

export const judgeSaid = (text: string, shot: string | undefined, said: string): void =>
  expect(unsettable(text, shot, said), said).toEqual([]);

export function judgeFindings(text: string, findings: readonly LocatedFinding[]): void {
  for (const { shot, what, why } of findings) judgeSaid(text, shot, `${what} ${why ?? ''}`);
}

/** What the hovers of the shots' lines say. */
export function judgeHovers(text: string, core: Core): void {
  let section = '';
  let shot: string | undefined;
  for (const [line, words] of text.split('\n').entries()) {
    section = /^[a-z]+(?=:)/.exec(words)?.[0] ?? section;
    if (section !== 'shots') continue;
    const name = /^ {2}([\w-]+):/.exec(words)?.[1];
    shot = name ?? shot;
    const hovered = HOVERED.exec(words);
    const at = name ? [3] : hovered ? [5, hovered[0].length] : [];
    for (const character of at)
      judgeSaid(text, shot, core.hover(PLAN, { line, character })?.markdown ?? '');
  }
}
