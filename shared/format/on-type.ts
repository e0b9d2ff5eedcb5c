/** Where a new line starts, by the line above it. */
import { isFlowOpen, isOpening } from '../syntax/flow.ts';
import { isEmptyValue, keyAt } from '../syntax/keys.ts';
import { indentAt, isBlank } from '../syntax/lines.ts';
import { STEP } from './rows.ts';

/** @returns the column; null: the line above doesn't say */
export function columnBelow(line: string): number | null {
  const end = line.length;
  const indent = indentAt(line, 0, end);
  if (isBlank(line, indent, end)) return null;
  let at = indent;
  while (line[at] === '-' && (line[at + 1] === ' ' || at + 1 === end))
    at = Math.min(end, at + 1 + indentAt(line, at + 1, end));
  const key = keyAt(line, at, end);
  if (!key) return at > indent || isClosed(line, indent) ? indent : null;
  if (isEmptyValue(line, key.colon + 1, end)) return at + STEP;
  const value = key.colon + 1 + indentAt(line, key.colon + 1, end);
  const code = line.charCodeAt(value);
  const isProse = line[value] === '|' || line[value] === '>';
  const isOpen = isOpening(code) && isFlowOpen(line, value, end);
  if (isProse || isOpen) return at + STEP;
  return isClosed(line, value) ? at : null;
}

/** Whether brackets and quotes are closed where they were opened, as far as the line tells. */
function isClosed(line: string, from: number): boolean {
  const rest = line.slice(from);
  if (/^["']/.test(rest)) return /^(?:"(?:[^"\\]|\\.)*"|'(?:[^']|'')*')\s*(?:#.*)?$/.test(rest);
  if (isOpening(line.charCodeAt(from))) return true;
  return !/[\]}]\s*,?\s*(?:#.*)?$/.test(rest);
}
