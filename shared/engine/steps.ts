/** A calculation that can be left off and gone on with: each step takes a few milliseconds. */
export type Steps<T> = Generator<undefined, T>;

/** Its result in one go. */
export function inOneGo<T>(steps: Steps<T>): T {
  for (;;) {
    const { done, value } = steps.next();
    if (done) return value;
  }
}
