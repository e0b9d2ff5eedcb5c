/**
 * A graph of remembered computations. Inputs are set from outside; queries are functions of
 * inputs and other queries. What a query reads is recorded while it runs, so dependencies are
 * never listed by hand, and reading something absent is recorded like any other reading.
 *
 * Setting an input marks what depends on it as stale (pushed, so that clean parts of a large
 * plan cost nothing); reading a stale query first asks whether anything it read really changed
 * and recomputes only then. A query whose new value equals its old one stops the wave there.
 *
 * A passing query keeps only its last few values, for what is large and read once by a query that
 * keeps something small of it. Of the others it still knows what they read, so it is worked out
 * again no sooner than somebody asks for it.
 */

/** Clean: value holds. Check: something further up may have changed. Stale: something read did. */
enum State {
  Clean,
  Check,
  Stale,
}

type Equal<T> = (a: T, b: T) => boolean;

/** Who reads a cell: mostly nobody or one, so no set is made before the second. */
type Observers = Cell<unknown> | Set<Cell<unknown>> | null;

class Cell<T> {
  value: T | undefined = undefined;
  state: State = State.Stale;
  sources: Cell<unknown>[] = [];
  observers: Observers = null;
  /** Who was the last to be told of: most cells are read again at once by who has just read them. */
  latest: Cell<unknown> | null = null;
  /** The graph's revision when this cell was last read; cells nobody reads are let go. */
  readAt = 0;
  running = false;
  /** A query that has computed at least once; an input that was set and not deleted since. */
  settled = false;
  /** False while the value of a passing query is let go. */
  held = true;

  constructor(
    readonly home: Map<string, Cell<T>>,
    readonly key: string,
    readonly equal: Equal<T>,
    readonly compute: ((key: string) => T) | null,
    readonly name: string,
    readonly passing: Passing | null = null,
  ) {}
}

/** The cells of a passing query whose values are held, the oldest let go first. */
class Passing {
  readonly #cells: (Cell<unknown> | undefined)[];
  #next = 0;

  constructor(count: number) {
    this.#cells = new Array(count).fill(undefined);
  }

  hold(cell: Cell<unknown>): void {
    const oldest = this.#cells[this.#next];
    if (oldest) letGo(oldest);
    cell.held = true;
    this.#cells[this.#next] = cell;
    this.#next = (this.#next + 1) % this.#cells.length;
  }

  clear(): void {
    for (const cell of this.#cells) if (cell) letGo(cell);
    this.#cells.fill(undefined);
  }
}

function letGo(cell: Cell<unknown>): void {
  cell.value = undefined;
  cell.held = false;
}

/** False where it was observed already. */
function observe(cell: Cell<unknown>, reader: Cell<unknown>): boolean {
  const { observers } = cell;
  if (cell.latest === reader) return false;
  cell.latest = reader;
  if (observers === null) cell.observers = reader;
  else if (observers instanceof Set) {
    const before = observers.size;
    return observers.add(reader).size > before;
  } else if (observers === reader) return false;
  else cell.observers = new Set([observers, reader]);
  return true;
}

function unobserve(cell: Cell<unknown>, reader: Cell<unknown>): void {
  if (cell.latest === reader) cell.latest = null;
  if (cell.observers instanceof Set) cell.observers.delete(reader);
  else if (cell.observers === reader) cell.observers = null;
}

const isObserved = ({ observers }: { observers: Observers }): boolean =>
  observers instanceof Set ? observers.size > 0 : observers !== null;

function forEachObserver(
  { observers }: { observers: Observers },
  visit: (observer: Cell<unknown>) => void,
): void {
  if (observers instanceof Set) for (const observer of observers) visit(observer);
  else if (observers !== null) visit(observers);
}

export interface Input<T> {
  /** The value under `key`; the input's own default where none was set. */
  get(key: string): T;
  set(key: string, value: T): void;
  delete(key: string): void;
}

export type Query<T> = (key: string) => T;

/** A query that reads itself. A fault of the program, never of a plan: `use` cycles are data. */
export class CircularQueryError extends Error {
  constructor(name: string, key: string) {
    super(`The computation "${name}" of "${key}" needs its own result.`);
    this.name = 'CircularQueryError';
  }
}

/** How many revisions a cell that nothing reads is kept. */
const KEPT_REVISIONS = 64;

export class Graph {
  #reader: Cell<unknown> | null = null;
  #revision = 1;
  readonly #homes: Map<string, Cell<unknown>>[] = [];
  readonly #passing: Passing[] = [];
  /** How often each query computed, by its name: what the work-counter tests read. */
  readonly computed = new Map<string, number>();

  input<T>(name: string, fallback: T, equal: Equal<T> = Object.is): Input<T> {
    const home = this.#home<T>();
    const cellOf = (key: string): Cell<T> => {
      let cell = home.get(key);
      if (!cell) {
        cell = new Cell<T>(home, key, equal, null, name);
        cell.value = fallback;
        cell.state = State.Clean;
        home.set(key, cell);
      }
      return cell;
    };
    const set = (key: string, value: T): void => {
      const cell = cellOf(key);
      cell.settled = true;
      if (equal(cell.value as T, value)) return;
      cell.value = value;
      this.#revision++;
      forEachObserver(cell, (observer) => this.#mark(observer, State.Stale));
    };
    return {
      get: (key) => this.#read(cellOf(key)),
      set,
      delete: (key) => {
        const cell = home.get(key);
        if (!cell) return;
        set(key, fallback);
        cell.settled = false;
      },
    };
  }

  query<T>(name: string, compute: (key: string) => T, equal: Equal<T> = Object.is): Query<T> {
    return this.#query(name, compute, equal, null);
  }

  /** A query that holds no more than its last `count` values. */
  passing<T>(name: string, compute: (key: string) => T, count: number): Query<T> {
    const passing = new Passing(count);
    this.#passing.push(passing);
    return this.#query(name, compute, Object.is, passing);
  }

  #query<T>(
    name: string,
    compute: (key: string) => T,
    equal: Equal<T>,
    passing: Passing | null,
  ): Query<T> {
    const home = this.#home<T>();
    return (key) => {
      let cell = home.get(key);
      if (!cell) {
        cell = new Cell<T>(home, key, equal, compute, name, passing);
        home.set(key, cell);
      }
      return this.#read(cell);
    };
  }

  /** Cells held, for tests of memory. */
  get size(): number {
    return this.#homes.reduce((sum, home) => sum + home.size, 0);
  }

  /** How many cells have read cells of an input or query, for tests of how work grows. */
  readers(name: string): number {
    let count = 0;
    for (const home of this.#homes)
      for (const cell of home.values())
        if (cell.name === name) forEachObserver(cell, () => count++);
    return count;
  }

  /** Lets go of what no query observes and nobody has read for a while. */
  sweep(all = false): void {
    if (all) for (const passing of this.#passing) passing.clear();
    const before = all ? this.#revision + 1 : this.#revision - KEPT_REVISIONS;
    const unused: Cell<unknown>[] = [];
    for (const home of this.#homes)
      for (const cell of home.values())
        if (!isObserved(cell) && cell.readAt < before) unused.push(cell);
    for (let cell = unused.pop(); cell; cell = unused.pop()) {
      // An input that is set holds knowledge; only queries and inputs never set are let go.
      if (!cell.compute && cell.settled) continue;
      cell.home.delete(cell.key);
      for (const source of cell.sources) {
        unobserve(source, cell);
        if (!isObserved(source) && source.readAt < before) unused.push(source);
      }
      cell.sources = [];
    }
  }

  #home<T>(): Map<string, Cell<T>> {
    const home = new Map<string, Cell<T>>();
    this.#homes.push(home as unknown as Map<string, Cell<unknown>>);
    return home;
  }

  #read<T>(cell: Cell<T>): T {
    const reader = this.#reader;
    if (reader && observe(cell as unknown as Cell<unknown>, reader))
      reader.sources.push(cell as unknown as Cell<unknown>);
    cell.readAt = this.#revision;
    if (cell.state !== State.Clean) this.#refresh(cell as unknown as Cell<unknown>);
    if (!cell.held) this.#recompute(cell as unknown as Cell<unknown>);
    return cell.value as T;
  }

  #refresh(cell: Cell<unknown>): void {
    if (cell.running) throw new CircularQueryError(cell.name, cell.key);
    if (cell.state === State.Check) {
      for (const source of cell.sources) {
        if (source.state !== State.Clean) this.#refresh(source);
        // A source that really changed has marked this cell stale while refreshing.
        if ((cell.state as State) === State.Stale) break;
      }
      if ((cell.state as State) === State.Check) {
        cell.state = State.Clean;
        return;
      }
    }
    this.#recompute(cell);
  }

  #recompute(cell: Cell<unknown>): void {
    const compute = cell.compute;
    if (!compute) {
      cell.state = State.Clean;
      return;
    }
    const outer = this.#reader;
    const before = cell.sources;
    cell.sources = [];
    for (const source of before) unobserve(source, cell);
    this.#reader = cell;
    cell.running = true;
    try {
      const value = compute(cell.key);
      this.computed.set(cell.name, (this.computed.get(cell.name) ?? 0) + 1);
      if (!cell.held && cell.state === State.Clean) {
        // What was let go is the same again: nothing that follows from it has changed.
        cell.value = value;
      } else if (!cell.settled || !cell.equal(cell.value, value)) {
        cell.value = value;
        cell.settled = true;
        forEachObserver(cell, (observer) => {
          observer.state = State.Stale;
        });
      }
      cell.state = State.Clean;
      cell.passing?.hold(cell);
    } finally {
      cell.running = false;
      this.#reader = outer;
    }
  }

  /** Marks `cell` and, unless it was marked already, everything above it. */
  #mark(first: Cell<unknown>, as: State.Check | State.Stale): void {
    const pending: [Cell<unknown>, State][] = [[first, as]];
    for (let next = pending.pop(); next; next = pending.pop()) {
      const [cell, state] = next;
      const was = cell.state;
      if (was < state) cell.state = state;
      if (was === State.Clean)
        forEachObserver(cell, (observer) => pending.push([observer, State.Check]));
    }
  }
}
