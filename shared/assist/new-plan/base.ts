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

/** What is filmed, and its light. */
const filmed = (subject: SubjectKind, lens: Lens): string => `
lights:
${indent(entry(subject.light, subject.lightLines(lens)), 2)}

subjects:
${indent(entry(subject.entry, subject.lines), 2)}
`;

export function ownKit(body: Body, lens: Lens, subject: SubjectKind): string {
  const groups = {
    bodies: entry(body.name, body.lines),
    lenses: entry(lens.name, lens.lines),
    ...lens.between,
    heads: 'ball-head: { payload: 10 kg }',
  };
  const kit = Object.entries(groups).map(([group, lines]) => entry(group, lines));
  return `${HEAD}${DELIVERED}
kit:
${indent(kit.join('\n'), 2)}

rigs:
  near:
    parts: [${[body.name, ...lens.parts, lens.name].join(', ')}]
    support: { head: ball-head, foot: ${lens.footMm} mm }
${filmed(subject, lens)}${PREFLIGHT}`;
}
