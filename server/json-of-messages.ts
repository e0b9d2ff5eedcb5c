/**
 * Messages as JSON. Findings go out whole each time, hundreds of them in a long plan, though an
 * edit changes one: what a finding that stays the same object comes to is kept with it.
 */
export class JsonOfMessages {
  readonly #kept = new WeakMap<object, string>();

  of(message: object): string {
    const { params, result } = message as { params?: unknown; result?: unknown };
    if (isListOf(params, 'diagnostics'))
      return this.#spliced(message, 'params', params, 'diagnostics');
    if (isListOf(result, 'items')) return this.#spliced(message, 'result', result, 'items');
    return JSON.stringify(message);
  }

  /** `message` with the list under `list` in its `part` put together from what is kept. */
  #spliced(message: object, part: string, value: Lists, list: string): string {
    const { [list]: items, ...others } = value;
    const rest = JSON.stringify({ ...message, [part]: undefined });
    const beside = JSON.stringify(others);
    const json = `[${(items as readonly object[]).map((item) => this.#of(item)).join(',')}]`;
    const inner = `${beside.slice(0, -1)}${beside === '{}' ? '' : ','}${JSON.stringify(list)}:${json}}`;
    return `${rest.slice(0, -1)}${rest === '{}' ? '' : ','}${JSON.stringify(part)}:${inner}}`;
  }

  #of(item: object): string {
    let json = this.#kept.get(item);
    if (json === undefined) {
      json = JSON.stringify(item);
      this.#kept.set(item, json);
    }
    return json;
  }
}

type Lists = Readonly<Record<string, unknown>>;

const isListOf = (value: unknown, list: string): value is Lists =>
  typeof value === 'object' &&
  value !== null &&
  Array.isArray((value as Lists)[list]) &&
  ((value as Lists)[list] as unknown[]).every((item) => typeof item === 'object' && item !== null);
