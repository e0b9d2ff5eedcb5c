/** A plan up to its shots: what is chosen of the kit, put together. */
import type { Body, Lens, SubjectKind } from './kit.ts';

const indent = (text: string, columns: number): string =>
  text.replace(/^(?=.)/gm, ' '.repeat(columns));

const entry = (name: string, lines: string): string => `${name}:\n${indent(lines, 2)}`;

const HEAD = `shootplan: 1
title: New plan
about: What is filmed, for whom, and where it will be shown.
`;

const DELIVERED = `deliver: { resolution: 1920 x 1080, rate: 25 fps, duration: 1 min }
mains: 50 Hz
`;

const PREFLIGHT = `
preflight:
  once: { card-and-battery: open }
  every-shot:
    - focus-at-full-size
    - record-setting-read-back
    - exposure-confirmed
    - white-balance-fixed
`;

/** Kind and place of a light, and what its sheet says of it. */
function lightLines(subject: SubjectKind, lens: Lens, sheet: string | null): string {
  const usual = subject.lightLines(lens);
  if (sheet === null) return usual;
  const kept = usual.split('\n').filter((line) => /^(?:kind|at):/.test(line));
  return [...kept, ...(sheet === '' ? [] : [sheet])].join('\n');
}

/** What is filmed, and its light. */
const filmed = (subject: SubjectKind, lens: Lens, sheet: string | null): string => `
lights:
${indent(entry(subject.light, lightLines(subject, lens, sheet)), 2)}

subjects:
${indent(entry(subject.entry, subject.lines), 2)}
`;

/** @param light lines of a light by its sheet; null: the usual light for the subject */
export function ownKit(
  body: Body,
  lens: Lens,
  subject: SubjectKind,
  light: string | null = null,
): string {
  const support =
    lens.footMm === null ? '' : `\n    support: { head: ball-head, foot: ${lens.footMm} mm }`;
  const groups = {
    bodies: entry(body.name, body.lines),
    lenses: entry(lens.name, lens.lines),
    ...lens.between,
    ...(lens.footMm !== null && { heads: 'ball-head: { payload: 10 kg }' }),
  };
  const kit = Object.entries(groups).map(([group, lines]) => entry(group, lines));
  return `${HEAD}${DELIVERED}
kit:
${indent(kit.join('\n'), 2)}

rigs:
  near:
    parts: [${[body.name, ...lens.parts, lens.name].join(', ')}]${support}
${filmed(subject, lens, light)}${PREFLIGHT}`;
}
