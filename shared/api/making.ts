/** Long answers that a host has made in slices, between which it does other things. */

export interface Making<T> {
  /**
   * Works on until it is done or `until` answers true, which is asked every few milliseconds.
   * Where a text was changed since the last slice it begins anew: an answer is always about the
   * texts as they are when it is given.
   *
   * @returns null: not done yet
   */
  work(until: () => boolean): { readonly answer: T } | null;
}
