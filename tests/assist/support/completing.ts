/** Completions applied to a text as an editor would. */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import type { Completion, Completions } from '../../../shared/api/completions.ts';
import type { Core } from '../../../shared/api/facade.ts';
import type { LocatedFinding, Position } from '../../../shared/api/located.ts';
import { TEXT_RULES } from '../../../shared/rules/registry.ts';
import { applied, coreWith, PLAN } from '../../support/plans.ts';

const SAMPLES = path.join(import.meta.dirname, '../../../samples');

export const sampleNames: readonly string[] = readdirSync(SAMPLES).filter((name) =>
  name.endsWith('.shootplan.yaml'),
);

export const sample = (name: string): string => readFileSync(path.join(SAMPLES, name), 'utf8');

/** The files that samples use. */
const KIT = 'workshop-kit.shootplan.yaml';

/** A core with `text` as the plan and, unless it is that, the kit beside it. */
export const coreBeside = (text: string): Core =>
  coreWith(text, /^title: Workshop kit$/m.test(text) ? {} : { [KIT]: sample(KIT) });

/** The text without its `|`, and the position where that stood. */
export function atMark(marked: string): { readonly text: string; readonly position: Position } {
  const at = marked.indexOf('|');
  return { text: marked.slice(0, at) + marked.slice(at + 1), position: positionAt(marked, at) };
}

export function positionAt(text: string, offset: number): Position {
  const lines = text.slice(0, offset).split(/\r\n|\n|\r/);
  return { line: lines.length - 1, character: lines.at(-1)!.length };
}

export function offeredAt(marked: string): Completions {
  const { text, position } = atMark(marked);
  return coreBeside(text).completions(PLAN, position);
}

/** The text with the item of that label written at the mark. */
export function written(marked: string, label: string): string {
  const { text } = atMark(marked);
  const { items } = offeredAt(marked);
  const item = items.find((each) => each.label === label);
  if (!item)
    throw new Error(`"${label}" is not offered: ${items.map((each) => each.label).join(', ')}`);
  return applied(text, [item]);
}

const ABOUT_TEXT = new Set(TEXT_RULES.map(({ name }) => name));

/** Errors of text, shape and names: those that stand before anything is worked out. */
export const textErrors = (findings: readonly LocatedFinding[]): readonly LocatedFinding[] =>
  findings.filter(({ severity, rule }) => severity === 'error' && ABOUT_TEXT.has(rule));

export const errorsOf = (core: Core): readonly LocatedFinding[] =>
  core.findings(PLAN).filter(({ severity }) => severity === 'error');

export type { Completion };
