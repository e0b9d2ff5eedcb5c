/**
 * A plan without what is its author's own: names, texts, comments and paths. Words of the language and
 * numbers stay, and every word that goes is replaced by one of the same length, the same for the same,
 * so that columns, references and most findings stay where they are. It works on the text as it stands,
 * broken or not, and never needs to read it as a plan.
 */
import { languageWords } from './vocabulary.ts';

/** A word as plans have them, and digits beside letters. */
const WORD = /[\p{L}_][\p{L}\p{N}\p{M}_-]*/gu;

/** Everything behind these keys is somebody's own words, whatever it says. */
const OWN_WORDS = /^(\s*(?:- )?\s*["']?(?:title|about|note|because|by|file)["']?\s*:)(.*)$/;
/** The same inside braces, up to the next comma or brace. */
const OWN_WORDS_INSIDE = /([{,]\s*["']?(?:title|about|note|because|by|file)["']?\s*:)([^,}]*)/g;
const COMMENT = /(^|\s)#.*$/;

const PLAN_ENDING = /\.shootplan\.ya?ml$/i;

export class Redactor {
  readonly #words = languageWords();
  readonly #instead = new Map<string, string>();
  readonly #taken = new Set<string>();

  /** Line by line; a text that runs on over lines is replaced word by word. */
  text(text: string): string {
    return text
      .split(/(\r\n|\r|\n)/)
      .map((part, index) => (index % 2 ? part : this.#line(part)))
      .join('');
  }

  /** A path or an address: every folder and name in it, but for the ending of plans. */
  path(path: string): string {
    const ending = PLAN_ENDING.exec(path)?.[0] ?? '';
    return this.#all(path.slice(0, path.length - ending.length)) + ending;
  }

  #line(line: string): string {
    const comment = COMMENT.exec(line);
    const end = comment ? comment.index + comment[1]!.length : line.length;
    return this.#value(line.slice(0, end)) + this.#all(line.slice(end));
  }

  #value(line: string): string {
    const own = OWN_WORDS.exec(line);
    if (own) return own[1]! + this.#own(own[2]!);
    let [out, at] = ['', 0];
    for (const found of line.matchAll(OWN_WORDS_INSIDE)) {
      const start = found.index + found[1]!.length;
      out += this.#strange(line.slice(at, start)) + this.#own(found[2]!);
      at = start + found[2]!.length;
    }
    return out + this.#strange(line.slice(at));
  }

  /** What an author wrote; the ending of plans in a path stays. */
  #own(text: string): string {
    return text
      .split(/(\.shootplan\.ya?ml)/i)
      .map((part, index) => (index % 2 ? part : this.#all(part)))
      .join('');
  }

  /** Every word and every digit. */
  #all(text: string): string {
    return text.replace(WORD, (word) => this.#replacement(word)).replace(/\p{N}/gu, '0');
  }

  /** Words that are not the language's. */
  #strange(text: string): string {
    const parts = text.split(/(\.shootplan\.ya?ml)/i);
    return parts
      .map((part, index) =>
        index % 2
          ? part
          : part.replace(WORD, (word) => (this.#words.has(word) ? word : this.#replacement(word))),
      )
      .join('');
  }

  #replacement(word: string): string {
    const known = this.#instead.get(word);
    if (known !== undefined) return known;
    let [count, made] = [0, ''];
    do made = spelled(count++, word.length);
    while (this.#taken.has(made) || this.#words.has(made));
    this.#taken.add(made);
    this.#instead.set(word, made);
    return made;
  }
}

/** Words of one length in turn: aaaa, baaa, caaa …; longer ones once there are no more. */
function spelled(count: number, length: number): string {
  let [rest, word] = [count, ''];
  while (word.length < length || rest > 0) {
    word += String.fromCharCode(97 + (rest % 26));
    rest = Math.floor(rest / 26);
  }
  return word;
}
