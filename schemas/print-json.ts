/**
 * JSON as the formatter leaves it, so that the generated file isn't reformatted and then stale:
 * objects open, arrays of plain values on one line where they fit.
 */
const WIDTH = 100;

/** On one line; undefined where an object is in it. */
function flatArray(value: readonly unknown[]): string | undefined {
  const items = value.map((item) =>
    Array.isArray(item)
      ? flatArray(item)
      : typeof item === 'object' && item !== null
        ? undefined
        : JSON.stringify(item),
  );
  return items.includes(undefined) ? undefined : `[${items.join(', ')}]`;
}

export function printJson(value: unknown, indent = 0, before = 0): string {
  const pad = ' '.repeat(indent + 2);
  const end = ' '.repeat(indent);
  if (Array.isArray(value)) {
    const flat = flatArray(value);
    // One column stays free for the comma.
    if (flat !== undefined && before + flat.length < WIDTH) return flat;
    const items = value.map((item) => pad + printJson(item, indent + 2, indent + 2));
    return `[\n${items.join(',\n')}\n${end}]`;
  }
  if (typeof value === 'object' && value !== null) {
    const pairs = Object.entries(value).map(([key, inner]) => {
      const head = `${pad}${JSON.stringify(key)}: `;
      return head + printJson(inner, indent + 2, head.length);
    });
    return pairs.length === 0 ? '{}' : `{\n${pairs.join(',\n')}\n${end}}`;
  }
  return JSON.stringify(value);
}
