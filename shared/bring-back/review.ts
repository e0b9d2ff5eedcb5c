/** A reviewer's comments as data. */

export interface NewComment {
  readonly shot: string;
  /** ISO 8601, as the page wrote it. */
  readonly time: string;
  readonly by: string | null;
  readonly says: string;
}

export interface Review {
  /** Name of the plan's file. */
  readonly plan: string;
  readonly comments: readonly NewComment[];
  /** Keys that are not known here, each by its place: `comments[2].colour`. */
  readonly unknown: readonly string[];
}
