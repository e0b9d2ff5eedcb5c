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
 *
 * A computation that throws is worked out again whenever it is asked for, and so is what follows
 * from it where a reader caught that: nothing that failed is taken for known.
 *
 * What holds throughout: whoever reads a cell that isn't clean isn't clean either.
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
  /** The graph's age when this cell was last read; cells nobody reads are let go. */
  readAt = 0;
  running = false;
  /** Read something that failed, or that follows from a failure, while it was last worked out. */
  unsure = false;
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

/** The cells of a passing query whose values are held, each once; the longest held is let go first. */
class Passing {
  readonly #cells = new Set<Cell<unknown>>();
  readonly #most: number;

  constructor(most: number) {
    if (!(most >= 1))
      throw new RangeError(`A passing query holds one value at least, not ${most}.`);
    this.#most = most;
  }

  /** How many are held: tests of memory count them. */
  get size(): number {
    return this.#cells.size;
  }

  /** The value of `cell` has been worked out just now: it is let go last. */
  hold(cell: Cell<unknown>): void {
    this.#cells.delete(cell);
    this.#cells.add(cell);
    cell.held = true;
    if (this.#cells.size <= this.#most) return;
    for (const longest of this.#cells) {
      this.letGo(longest);
      return;
    }
  }

  letGo(cell: Cell<unknown>): void {
    if (!this.#cells.delete(cell)) return;
    cell.value = undefined;
    cell.held = false;
  }

  clear(): void {
    for (const cell of this.#cells) this.letGo(cell);
  }
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

export interface Input<T, K extends string = string> {
  /** The value under `key`; the input's own default where none was set. */
  get(key: K): T;
  set(key: K, value: T): void;
  delete(key: K): void;
}

export type Query<T, K extends string = string> = (key: K) => T;

/** A query that reads itself. A fault of the program, never of a plan: `use` cycles are data. */
export class CircularQueryError extends Error {
  constructor(name: string, key: string) {
    super(`The computation "${name}" of "${key}" needs its own result.`);
    this.name = 'CircularQueryError';
  }
}

/** So many new cells are no reason to look for old ones. */
const FEW_CELLS = 4096;

export class Graph {
  #reader: Cell<unknown> | null = null;
  /** How often cells that nobody reads have been let go. */
  #age = 1;
  /** Cells made since, and how many older ones were left then. */
  #made = 0;
  #left = 0;
  readonly #homes: Map<string, Cell<unknown>>[] = [];
  readonly #passing: Passing[] = [];
  readonly #homeOf = new WeakMap<Query<unknown>, ReadonlyMap<string, Cell<unknown>>>();
  #changes = 0;
  #steps = 0;
  /** How often each query computed, by its name: what the work-counter tests read. */
  readonly computed = new Map<string, number>();

  input<T, K extends string = string>(
    name: string,
    fallback: T,
    equal: Equal<T> = Object.is,
  ): Input<T, K> {
    const home = this.#home<T>();
    const cellOf = (key: string): Cell<T> => {
      let cell = home.get(key);
      if (!cell) {
        cell = new Cell<T>(home, key, equal, null, name);
        cell.value = fallback;
        cell.state = State.Clean;
        this.#keep(home, cell);
      }
      return cell;
    };
    const set = (key: string, value: T): void => {
      const cell = cellOf(key);
      cell.settled = true;
      if (equal(cell.value as T, value)) return;
      cell.value = value;
      this.#changes++;
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

  query<T, K extends string = string>(
    name: string,
    compute: (key: K) => T,
    equal: Equal<T> = Object.is,
  ): Query<T, K> {
    return this.#query(name, compute, equal, null);
  }

  /** A query that holds no more than its last `count` values, one at least. */
  passing<T, K extends string = string>(
    name: string,
    compute: (key: K) => T,
    count: number,
  ): Query<T, K> {
    const passing = new Passing(count);
    this.#passing.push(passing);
    return this.#query(name, compute, Object.is, passing);
  }

  #query<T, K extends string>(
    name: string,
    compute: (key: K) => T,
    equal: Equal<T>,
    passing: Passing | null,
  ): Query<T, K> {
    const home = this.#home<T>();
    const query: Query<T, K> = (key) => {
      let cell = home.get(key);
      if (!cell) {
        cell = new Cell<T>(home, key, equal, compute as (key: string) => T, name, passing);
        this.#keep(home, cell);
      }
      return this.#read(cell);
    };
    this.#homeOf.set(query as Query<unknown>, home as unknown as Map<string, Cell<unknown>>);
    return query;
  }

  /** How many changes of inputs there have been. */
  get changes(): number {
    return this.#changes;
  }

  /** How many values have been read so far and how many of them computed: it grows with the work. */
  get steps(): number {
    return this.#steps;
  }

  /** Whether a value is at hand, so that reading it works nothing out. Asking is no reading. */
  isAtHand<T, K extends string>(query: Query<T, K>, key: K): boolean {
    const cell = this.#homeOf.get(query as Query<unknown>)?.get(key);
    return cell?.state === State.Clean && cell.held;
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

  /** Values held of passing queries, for tests of memory. */
  get held(): number {
    return this.#passing.reduce((sum, passing) => sum + passing.size, 0);
  }

  /**
   * Lets go of what nobody reads any more once as many cells are new as older ones were left the last time: all
   * that is kept stays within a few times what is in use, and looking for it costs little a cell.
   * To be called between readings. True where it looked.
   */
  tidy(): boolean {
    if (this.#made <= Math.max(FEW_CELLS, this.#left)) return false;
    this.sweep();
    return true;
  }

  /** Lets go of what no query observes and nobody has read since the last time; `all`: or ever. */
  sweep(all = false): void {
    if (this.#reader) throw new Error('Cells are let go between readings and not within one.');
    if (all) for (const passing of this.#passing) passing.clear();
    const before = all ? this.#age + 1 : this.#age;
    const unused: Cell<unknown>[] = [];
    for (const home of this.#homes)
      for (const cell of home.values())
        if (!isObserved(cell) && cell.readAt < before) unused.push(cell);
    for (let cell = unused.pop(); cell; cell = unused.pop()) {
      // An input that is set holds knowledge; only queries and inputs never set are let go.
      if (!cell.compute && cell.settled) continue;
      cell.home.delete(cell.key);
      cell.passing?.letGo(cell);
      for (const source of cell.sources) {
        unobserve(source, cell);
        if (!isObserved(source) && source.readAt < before) unused.push(source);
      }
      cell.sources = [];
    }
    this.#age++;
    // What is new may be on its way out: counted as in use, it would put off the next time for ever.
    this.#left = Math.max(0, this.size - this.#made);
    this.#made = 0;
  }

  #keep<T>(home: Map<string, Cell<T>>, cell: Cell<T>): void {
    home.set(cell.key, cell);
    this.#made++;
  }

  #home<T>(): Map<string, Cell<T>> {
    const home = new Map<string, Cell<T>>();
    this.#homes.push(home as unknown as Map<string, Cell<unknown>>);
    return home;
  }

  #read<T>(cell: Cell<T>): T {
    this.#steps++;
    const reader = this.#reader;
    if (reader && observe(cell as unknown as Cell<unknown>, reader))
      reader.sources.push(cell as unknown as Cell<unknown>);
    cell.readAt = this.#age;
    if (cell.state === State.Clean && cell.held) return cell.value as T;
    try {
      if (cell.state !== State.Clean) this.#refresh(cell as unknown as Cell<unknown>);
      if (!cell.held) this.#recompute(cell as unknown as Cell<unknown>);
    } catch (error) {
      if (reader) reader.unsure = true;
      throw error;
    }
    if (reader && (cell.state as State) !== State.Clean) reader.unsure = true;
    return cell.value as T;
  }

  #refresh(cell: Cell<unknown>): void {
    if (cell.state === State.Check && !cell.running) {
      const isSure = this.#check(cell);
      // A source that really changed has marked this cell stale while refreshing.
      if ((cell.state as State) !== State.Stale) {
        if (isSure) cell.state = State.Clean;
        return;
      }
    }
    this.#recompute(cell);
  }

  /**
   * Brings what `cell` has read up to date, as far as that is what it was.
   * @returns whether all of it is known for sure
   */
  #check(cell: Cell<unknown>): boolean {
    let isSure = true;
    for (const source of cell.sources) {
      this.#steps++;
      if (source.state === State.Clean) continue;
      try {
        this.#refresh(source);
      } catch {
        // Whoever reads it meets the failure, and may know what to do about it.
        cell.state = State.Stale;
      }
      if (cell.state === State.Stale) break;
      if ((source.state as State) !== State.Clean) isSure = false;
    }
    return isSure;
  }

  #recompute(cell: Cell<unknown>): void {
    if (cell.running) throw new CircularQueryError(cell.name, cell.key);
    const compute = cell.compute;
    if (!compute) {
      cell.state = State.Clean;
      return;
    }
    // What was let go is the same again: nothing that follows from it has changed.
    const isAgain = !cell.held && cell.state === State.Clean;
    const outer = this.#reader;
    const before = cell.sources;
    cell.sources = [];
    for (const source of before) unobserve(source, cell);
    this.#reader = cell;
    cell.running = true;
    cell.unsure = false;
    try {
      const value = compute(cell.key);
      this.computed.set(cell.name, (this.computed.get(cell.name) ?? 0) + 1);
      const isSame = isAgain || (cell.settled && cell.held && cell.equal(cell.value, value));
      if (isAgain || !isSame) cell.value = value;
      cell.settled = true;
      if (!isSame)
        forEachObserver(cell, (observer) => {
          observer.state = State.Stale;
        });
      cell.state = cell.unsure ? State.Stale : State.Clean;
      if (isAgain && cell.unsure)
        forEachObserver(cell, (observer) => this.#mark(observer, State.Check));
      cell.passing?.hold(cell);
    } catch (error) {
      // What follows from the value that was let go has to hear still of all that it was made of.
      if (isAgain)
        for (const source of before) if (observe(source, cell)) cell.sources.push(source);
      throw error;
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
