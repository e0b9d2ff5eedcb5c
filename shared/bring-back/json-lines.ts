/** On which line of a JSON text a place is, as errors name it: `takes[2].clip`. The text is valid JSON. */
import type { Where } from './read-json.ts';

type Step = string | number;

/** Its keys are names of the form or of the plan, which have no dots and brackets. */
const stepsOf = (where: Where): readonly Step[] =>
  [...where.matchAll(/([^.[\]]+)|\[(\d+)\]/g)].map(([, key, index]) =>
    key === undefined ? Number(index) - 1 : key,
  );

/** Counted from 1; where a key is left out, the line of the nearest thing around it. */
export function lineOf(json: string, where: Where): number {
  let at = nextIn(json, 0);
  for (const step of stepsOf(where)) {
    const inside = childOf(json, at, step);
    if (inside === null) break;
    at = inside;
  }
  return json.slice(0, at).split('\n').length;
}

function nextIn(json: string, from: number): number {
  let at = from;
  while (/\s/.test(json[at] ?? '')) at++;
  return at;
}

/** Where the value of a key, or an element, begins; null: it isn't there. */
function childOf(json: string, container: number, step: Step): number | null {
  const isObject = json[container] === '{';
  if (isObject !== (typeof step === 'string')) return null;
  let at = nextIn(json, container + 1);
  for (let index = 0; json[at] !== '}' && json[at] !== ']' && at < json.length; index++) {
    let name: Step = index;
    if (isObject) {
      const end = endOf(json, at);
      name = JSON.parse(json.slice(at, end)) as string;
      at = nextIn(json, nextIn(json, end) + 1);
    }
    if (name === step) return at;
    at = nextIn(json, endOf(json, at));
    if (json[at] === ',') at = nextIn(json, at + 1);
  }
  return null;
}

/** After the value that begins at `from`. */
function endOf(json: string, from: number): number {
  const first = json[from];
  if (first === '"') return closing(json, from) + 1;
  if (first !== '{' && first !== '[') {
    let at = from;
    while (at < json.length && !/[\s,}\]]/.test(json[at]!)) at++;
    return at;
  }
  let depth = 0;
  for (let at = from; at < json.length; at++) {
    const sign = json[at];
    if (sign === '"') at = closing(json, at);
    if (sign === '{' || sign === '[') depth++;
    if (sign === '}' || sign === ']') depth--;
    if (depth === 0) return at + 1;
  }
  return json.length;
}

/** The quote that ends the string that begins at `from`. */
function closing(json: string, from: number): number {
  let at = from + 1;
  while (at < json.length && json[at] !== '"') at += json[at] === '\\' ? 2 : 1;
  return at;
}
