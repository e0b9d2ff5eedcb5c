/**
 * Single wrong lines that a source could have: an operator, a bound, a constant, a condition or a
 * returned value that is another. Never in comments, types or the words of a message.
 */
import { parseAst } from 'vitest/node';

export interface Mutation {
  /** From the root: 'shared/optics/chain.ts'. */
  readonly file: string;
  /** Counted from 1. */
  readonly line: number;
  readonly start: number;
  readonly end: number;
  /** What takes the place of the text from `start` to `end`. */
  readonly text: string;
  /** The body of the function around it; undefined for what runs once, when the file is loaded. */
  readonly body: Body | undefined;
}

export interface Body {
  readonly start: number;
  readonly end: number;
  /** In braces, not a single expression. */
  readonly isBlock: boolean;
}

interface Node {
  readonly type: string;
  readonly start: number;
  readonly end: number;
  readonly [key: string]: unknown;
}

type Change = Pick<Mutation, 'start' | 'end' | 'text'>;

/** Each operator, and what somebody may have typed in its place. */
const OPERATORS: Readonly<Record<string, string>> = {
  '<': '<=',
  '<=': '<',
  '>': '>=',
  '>=': '>',
  '===': '!==',
  '!==': '===',
  '+': '-',
  '-': '+',
  '*': '/',
  '/': '*',
  '**': '*',
  '%': '*',
  '&&': '||',
  '||': '&&',
  '+=': '-=',
  '-=': '+=',
};

const TURNED: Readonly<Record<string, string>> = { '<': '>', '<=': '>=', '>': '<', '>=': '<=' };

const NAMES: Readonly<Record<string, string>> = {
  min: 'max',
  max: 'min',
  floor: 'ceil',
  ceil: 'floor',
  sin: 'cos',
  cos: 'sin',
  some: 'every',
  every: 'some',
};

const isNode = (value: unknown): value is Node =>
  typeof value === 'object' && value !== null && typeof (value as Node).type === 'string';

/** Expressions that carry a type beside their value: the value is code. */
const WITH_VALUE = ['TSAsExpression', 'TSNonNullExpression', 'TSSatisfiesExpression'];

/** @returns every mutation of the file, in the order of its text */
export function mutationsOf(file: string, source: string): readonly Mutation[] {
  const found: (Change & Pick<Mutation, 'body'>)[] = [];
  visit(parseAst(source, { lang: 'ts' }, file), undefined, undefined);
  return found
    .sort((a, b) => a.start - b.start)
    .map((change) => ({
      file,
      line: source.slice(0, change.start).split('\n').length,
      ...change,
    }));

  function visit(value: unknown, parent: Node | undefined, body: Body | undefined): void {
    if (Array.isArray(value)) for (const item of value) visit(item, parent, body);
    if (!isNode(value)) return;
    if (value.type.startsWith('TS') && !WITH_VALUE.includes(value.type)) return;
    if (value.type === 'ImportDeclaration') return;
    found.push(...changesOf(value, parent, source).map((change) => ({ ...change, body })));
    const own = bodyOf(value);
    for (const child of Object.values(value))
      visit(child, value, child === value.body ? (own ?? body) : body);
  }
}

function bodyOf({ type, body }: Node): Body | undefined {
  if (!/Function/.test(type) || !isNode(body)) return undefined;
  return { start: body.start, end: body.end, isBlock: body.type === 'BlockStatement' };
}

function changesOf(node: Node, parent: Node | undefined, source: string): readonly Change[] {
  switch (node.type) {
    case 'BinaryExpression':
    case 'LogicalExpression':
    case 'AssignmentExpression':
      return operatorChanges(node, source);
    case 'UnaryExpression':
      return node.operator === '!' || node.operator === '-'
        ? [{ start: node.start, end: node.start + 1, text: ' ' }]
        : [];
    case 'Literal':
      return literalChanges(node, parent);
    case 'IfStatement':
    case 'ConditionalExpression':
      return [turned(node.test as Node, source)];
    case 'ReturnStatement':
      return isNode(node.argument)
        ? [{ start: node.argument.start, end: node.argument.end, text: 'undefined' }]
        : [];
    case 'MemberExpression':
      return nameChanges(node.property as Node);
    default:
      return [];
  }
}

function operatorChanges(node: Node, source: string): readonly Change[] {
  const operator = String(node.operator);
  const from = (node.left as Node).end;
  const at = source.slice(from, (node.right as Node).start).indexOf(operator) + from;
  return [OPERATORS[operator], TURNED[operator]].flatMap((text) =>
    text === undefined ? [] : [{ start: at, end: at + operator.length, text }],
  );
}

function literalChanges(node: Node, parent: Node | undefined): readonly Change[] {
  const { start, end, value } = node;
  const isKey = parent?.type === 'Property' && parent.key === node;
  if (isKey) return [];
  if (typeof value === 'boolean') return [{ start, end, text: String(!value) }];
  if (typeof value !== 'number') return [];
  // A quarter more: beyond what any tolerance of a check should let pass.
  return [{ start, end, text: String(Number.isInteger(value) ? value + 1 : value * 1.25) }];
}

const turned = (test: Node, source: string): Change => ({
  start: test.start,
  end: test.end,
  text: `!(${source.slice(test.start, test.end)})`,
});

function nameChanges({ type, name, start, end }: Node): readonly Change[] {
  const text = type === 'Identifier' ? NAMES[String(name)] : undefined;
  return text === undefined ? [] : [{ start, end, text }];
}

export const mutated = (source: string, { start, end, text }: Change): string =>
  source.slice(0, start) + text + source.slice(end);

/** The lines that a mutation changes, as they are and as they become, in one line each. */
export function linesOf(source: string, mutation: Mutation): readonly [string, string] {
  const from = source.lastIndexOf('\n', mutation.start - 1) + 1;
  const upTo = (text: string, at: number) => {
    const end = text.indexOf('\n', at);
    return text
      .slice(from, end < 0 ? undefined : end)
      .replace(/\s+/g, ' ')
      .trim();
  };
  return [
    upTo(source, mutation.end),
    upTo(mutated(source, mutation), mutation.start + mutation.text.length),
  ];
}
