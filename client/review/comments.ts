/// <reference lib="dom" />
/** What is kept of a review, and the one text that brings it into the plan. */
import type { ReviewData } from '../../shared/report/compare/review.ts';
import { plain } from '../fill/as-written.ts';
import { Store } from '../fill/store.ts';

interface Comment {
  /** When it was begun, by ISO 8601: it is known again by that. */
  readonly time: string;
  readonly says: string;
}

const isComment = (value: unknown): value is Comment =>
  typeof value === 'object' &&
  value !== null &&
  'time' in value &&
  typeof value.time === 'string' &&
  Number.isFinite(Date.parse(value.time)) &&
  'says' in value &&
  typeof value.says === 'string';

const isText = (value: unknown): value is string => typeof value === 'string';

const startOf = (shot: string): string => `comment/${shot}/`;

export class Comments {
  readonly store: Store;

  constructor(readonly data: ReviewData) {
    this.store = new Store(data.plan, data.mark, 'lamella-review');
  }

  /** By number, in the order in which they were begun. */
  of(shot: string): readonly (readonly [number, Comment])[] {
    return this.#numbers(shot).flatMap((number) => {
      const comment = this.store.get(startOf(shot) + number, isComment);
      return comment ? [[number, comment] as const] : [];
    });
  }

  /** One that can't be read keeps its number. */
  #numbers(shot: string): readonly number[] {
    const start = startOf(shot);
    return this.store
      .names(start)
      .map((name) => Number(name.slice(start.length)))
      .filter((number) => Number.isSafeInteger(number) && number > 0)
      .sort((a, b) => a - b);
  }

  /** @returns its number */
  add(shot: string): number {
    const number = (this.#numbers(shot).at(-1) ?? 0) + 1;
    this.store.set(startOf(shot) + number, { time: new Date().toISOString(), says: '' });
    return number;
  }

  /** Changes what is kept now, which another tab may have removed. */
  change(shot: string, number: number, says: string): void {
    const comment = this.store.get(startOf(shot) + number, isComment);
    const time = comment?.time ?? new Date().toISOString();
    this.store.set(startOf(shot) + number, { time, says });
  }

  remove(shot: string, number: number): void {
    this.store.set(startOf(shot) + number, null);
  }

  by = (): string => this.store.get('by', isText) ?? '';

  setBy(by: string): void {
    this.store.set('by', by);
  }

  /** Those that say something, in the order of the page. */
  said(shots: readonly string[]): readonly (Comment & { readonly shot: string })[] {
    const others = this.store.names('comment/').map((name) => name.split('/')[1] ?? '');
    return [...new Set([...shots, ...others])].flatMap((shot) =>
      this.of(shot).flatMap(([, { time, says }]) => {
        const text = says
          .split(/\r\n|\r|\n/)
          .map(plain)
          .join('\n')
          .trim();
        return text === '' ? [] : [{ shot, time, says: text }];
      }),
    );
  }

  /** A line that says what it is, then one JSON document. */
  text(shots: readonly string[]): string {
    const by = plain(this.by());
    const json = {
      plan: this.data.plan,
      saved: new Date().toISOString(),
      comments: this.said(shots).map(({ shot, time, says }) => ({
        shot,
        time,
        ...(by !== '' && { by }),
        says,
      })),
    };
    return `lamella review 1\n${JSON.stringify(json, null, 1)}\n`;
  }
}
