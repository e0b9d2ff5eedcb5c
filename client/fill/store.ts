/// <reference lib="dom" />
/**
 * What is filled in, an entry at a time, so that two tabs of one sheet never overwrite each other's.
 * Nothing is lost silently: what the browser doesn't keep stays here for as long as the page is
 * open, and what can't be read is put aside as it is.
 */

type Trouble = 'not-kept' | 'full';

const PROBE = 'lamella-probe';
/** An entry that could not be read and was written anew, under its former name. */
const ASIDE = 'aside/';

export class Store {
  readonly #area: Storage | null = areaOrNone();
  readonly #prefix: string;
  readonly #unkept = new Map<string, string | null>();
  readonly #unreadable = new Map<string, string>();
  #trouble: Trouble | null;
  #told: () => void = () => undefined;

  constructor(
    readonly plan: string,
    readonly mark: string,
    /** Of which kind of page it is. */
    readonly root = 'lamella-day',
  ) {
    this.#prefix = `${root}/${encodeURIComponent(plan)}/${mark}/`;
    this.#trouble = this.#area ? null : 'not-kept';
    window.addEventListener('storage', ({ key }) => {
      if (key === null || key.startsWith(this.#prefix)) this.#told();
    });
  }

  /** @param told after every change, in this tab or another */
  onChange(told: () => void): void {
    this.#told = told;
  }

  get trouble(): Trouble | null {
    return this.#trouble;
  }

  /** Texts that stand where an entry should, by name. */
  get unreadable(): ReadonlyMap<string, string> {
    return this.#unreadable;
  }

  /** @returns null where there is none, or none that `is` what it should be */
  get<T>(name: string, is: (value: unknown) => value is T): T | null {
    const text = this.#text(name);
    this.#unreadable.delete(name);
    if (text === null) return null;
    try {
      const value: unknown = JSON.parse(text);
      if (is(value)) return value;
    } catch {
      // Told below, as what has another shape is.
    }
    this.#unreadable.set(name, text);
    return null;
  }

  /** @param value null: the entry goes */
  set(name: string, value: unknown): void {
    const spoiled = this.#unreadable.get(name);
    if (spoiled !== undefined)
      this.#write(`${ASIDE}${name}/${Date.now()}`, JSON.stringify(spoiled));
    this.#write(name, value === null ? null : JSON.stringify(value));
    this.#told();
  }

  names(start: string): string[] {
    const names = new Set(storedNames(this.#area, this.#prefix));
    for (const [name, text] of this.#unkept) {
      if (text === null) names.delete(name);
      else names.add(name);
    }
    return [...names].filter((name) => name.startsWith(start));
  }

  /** Puts aside and told again after a reload. */
  readAside(): void {
    const isText = (value: unknown): value is string => typeof value === 'string';
    for (const name of this.names(ASIDE)) {
      const text = this.get(name, isText);
      if (text !== null) this.#unreadable.set(name, text);
    }
  }

  clear(): void {
    for (const name of this.names('')) this.#write(name, null);
    this.#unreadable.clear();
    this.#told();
  }

  /** Marks of other versions of the same plan of which something is kept. */
  otherMarks(): string[] {
    const start = `${this.root}/${encodeURIComponent(this.plan)}/`;
    const marks = storedNames(this.#area, start).map((name) => name.split('/')[0] ?? '');
    return [...new Set(marks)].filter((mark) => mark !== this.mark);
  }

  #text(name: string): string | null {
    const unkept = this.#unkept.get(name);
    if (unkept !== undefined) return unkept;
    try {
      return this.#area?.getItem(this.#prefix + name) ?? null;
    } catch {
      return null;
    }
  }

  /** What was not kept before is tried again with the next entry. */
  #write(name: string, text: string | null): void {
    this.#unkept.set(name, text);
    if (!this.#area) return;
    try {
      for (const [each, its] of this.#unkept) {
        if (its === null) this.#area.removeItem(this.#prefix + each);
        else this.#area.setItem(this.#prefix + each, its);
        this.#unkept.delete(each);
      }
      this.#trouble = null;
    } catch {
      this.#trouble = 'full';
    }
  }
}

/** A browser that keeps nothing for a page may refuse even to be asked. */
function areaOrNone(): Storage | null {
  try {
    localStorage.setItem(PROBE, '1');
    localStorage.removeItem(PROBE);
    return localStorage;
  } catch (cause) {
    return isFull(cause) ? localStorage : null;
  }
}

const isFull = (cause: unknown): boolean =>
  cause instanceof DOMException && cause.name === 'QuotaExceededError';

function storedNames(area: Storage | null, start: string): string[] {
  return Array.from({ length: area?.length ?? 0 }, (_, index) => area?.key(index) ?? '')
    .filter((key) => key.startsWith(start))
    .map((key) => key.slice(start.length));
}
