/** Reads untrusted JSON by its expected form: each error names its place, and other keys are told. */
import { message } from '../words/message.ts';

/** The text can't be used; its message says where and why. */
export class NotReadable extends Error {
  /** Empty: the document, or the text before it. */
  readonly where: Where;

  constructor(why: string, where: Where = '') {
    super(why);
    this.where = where;
  }
}

/** A place in the document, as errors name it: `takes[2].clip`. */
export type Where = string;

const LONGEST_SHOWN = 40;

/** As JSON shows it, cut short. */
function shown(value: unknown): string {
  if (value === undefined) return message`nothing`;
  if (Array.isArray(value)) return message`a list`;
  if (typeof value === 'object' && value !== null) return message`an object`;
  const text = JSON.stringify(value);
  return text.length > LONGEST_SHOWN ? `${text.slice(0, LONGEST_SHOWN)}…` : text;
}

export function refuse(where: Where, expected: string, value: unknown): never {
  throw new NotReadable(message`${where} needs ${expected}, not ${shown(value)}`, where);
}

/** What is wrong with a document, so that all of it is told: each entry is read, whatever the others are. */
export class Faults {
  readonly #all: NotReadable[] = [];

  /** undefined: it can't be read, which is kept. */
  tried<T>(read: () => T): T | undefined {
    try {
      return read();
    } catch (cause) {
      if (!(cause instanceof NotReadable)) throw cause;
      this.#all.push(cause);
      return undefined;
    }
  }

  get all(): readonly NotReadable[] {
    return this.#all;
  }
}

/** An object's own values; never its prototype's. */
export class Reading {
  readonly #values: ReadonlyMap<string, unknown>;
  readonly #read = new Set<string>();
  readonly where: Where;

  constructor(value: unknown, where: Where) {
    if (typeof value !== 'object' || value === null || Array.isArray(value))
      refuse(where || message`the document`, message`an object`, value);
    this.where = where;
    this.#values = new Map(Object.entries(value));
  }

  get(key: string): unknown {
    this.#read.add(key);
    return this.#values.get(key);
  }

  at(key: string): Where {
    return this.where === '' ? key : `${this.where}.${key}`;
  }

  /** @param most characters */
  text(key: string, most: number): string {
    return textOf(this.get(key), this.at(key), most);
  }

  /** null: left out, null, or nothing but blanks. */
  maybeText(key: string, most: number): string | null {
    const value = this.get(key);
    if (value === undefined || value === null) return null;
    if (typeof value === 'string' && value.trim() === '') return null;
    return this.text(key, most);
  }

  /** Left out: empty. */
  list(key: string, most: number): readonly unknown[] {
    const value = this.get(key) ?? [];
    if (!Array.isArray(value)) return refuse(this.at(key), message`a list`, value);
    if (value.length > most)
      throw new NotReadable(
        message`${this.at(key)} has ${value.length} entries; at most ${most} are read`,
        this.at(key),
      );
    return value;
  }

  keys(): readonly string[] {
    return [...this.#values.keys()];
  }

  /** Keys that nobody asked for, by their place. */
  unknown(): readonly Where[] {
    return [...this.#values.keys()]
      .filter((key) => !this.#read.has(key))
      .map((key) => this.at(key.slice(0, LONGEST_SHOWN)));
  }
}

/** No character that acts on a terminal or that a plan can't hold; line breaks and tabs may be. */
const ODD =
  /(?![\t\n\r])[\p{Cc}\p{Cs}\u061c\u200e\u200f\u202a-\u202e\u2028\u2029\u2066-\u2069\ufeff\ufffe\uffff]/u;

export function textOf(value: unknown, where: Where, most: number): string {
  if (typeof value !== 'string' || value.trim() === '') return refuse(where, message`text`, value);
  if (value.length > most)
    throw new NotReadable(
      message`${where} has ${value.length} characters; at most ${most} are read`,
      where,
    );
  if (ODD.test(value))
    throw new NotReadable(message`${where} has a control character; remove it`, where);
  return value.trim();
}
