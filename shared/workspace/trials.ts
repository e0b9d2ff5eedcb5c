import type { Graph } from '../engine/graph.ts';

/**
 * By measurement, in tenths of what reading a character of a text anew costs: reading a kept value with
 * what is made of it, and calculating a shot with its rules.
 */
const EFFORT_OF_STEP = 4;
const EFFORT_OF_SHOT = 1000;

/** Changes of the plan that are made to see what follows, and taken back. */
export class Trials {
  readonly #graph: Graph;
  #effort = 0;
  /** How many of the graph's changes were trials': they left everything as it was. */
  #own = 0;
  #kept: { readonly of: number; readonly results: Map<string, unknown> } | undefined;

  constructor(graph: Graph) {
    this.#graph = graph;
  }

  /** What trials have cost so far, in tenths of reading a character anew. */
  get effort(): number {
    return this.#effort;
  }

  /** Another number whenever something else than a trial has changed the plan. */
  get version(): number {
    return this.#graph.changes - this.#own;
  }

  spend(effort: number): void {
    this.#effort += effort;
  }

  /** Runs what changes the plan and takes all of it back. */
  run<T>(work: () => T): T {
    const { changes } = this.#graph;
    try {
      return this.counted(work);
    } finally {
      this.#own += this.#graph.changes - changes;
    }
  }

  /** What `work` finds in the plan as it stands, kept until something else than a trial changes it. */
  kept<T>(key: string, work: () => T): T {
    const of = this.version;
    if (this.#kept?.of !== of) this.#kept = { of, results: new Map() };
    const { results } = this.#kept;
    if (!results.has(key)) results.set(key, this.counted(work));
    return results.get(key) as T;
  }

  counted<T>(work: () => T): T {
    const graph = this.#graph;
    const shots = () => graph.computed.get('shot') ?? 0;
    const [steps, before] = [graph.steps, shots()];
    try {
      return work();
    } finally {
      this.#effort += EFFORT_OF_STEP * (graph.steps - steps) + EFFORT_OF_SHOT * (shots() - before);
    }
  }
}
