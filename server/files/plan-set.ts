/** The plans of one run of the command line, with all the files that they use. */
import path from 'node:path';
import type { Checker, Core, CoreOptions } from '../../shared/api/facade.ts';
import type { LocatedFinding, LocatedFix } from '../../shared/api/located.ts';
import type { FileId } from '../../shared/plan/place.ts';
import type { LengthUnit } from '../../shared/say/say.ts';
import { message } from '../../shared/words/message.ts';
import { EFFORT_OF_FILE, fixesWithin } from '../../shared/workspace/most-tried.ts';
import { notText, tooLarge, untried } from '../unread.ts';
import { decode, MOST_BYTES } from './decode.ts';
import { isInside, type ReadPlan, readPlan, sizeIn } from './read-plan.ts';
import { nearestRoot } from './root.ts';
import { pathOfUri, uriOfPath } from './uri.ts';

export type Create<C extends Checker> = (options: CoreOptions) => C;

export interface PlanSetOptions<C extends Checker = Core> {
  readonly cwd: string;
  /** Absolute; left out: the nearest repository's root, else each plan's own folder. */
  readonly root?: string;
  readonly lengths?: LengthUnit;
  readonly createCore: Create<C>;
  /** Where plans are read from; left out: the disk. */
  readonly read?: (file: string, root: string) => Promise<ReadPlan>;
}

/** By default over the whole core; a check needs no more than its first part. */
export class PlanSet<C extends Checker = Core> {
  readonly core: C;
  readonly #options: PlanSetOptions<C>;
  /** In the order of the report. */
  readonly #listed = new Set<FileId>();
  /** Every file that was tried, with the root that it lies in. */
  readonly #roots = new Map<FileId, string>();
  readonly #given = new Set<FileId>();
  /** As last given, of those that could be read whole. */
  readonly #texts = new Map<FileId, string>();
  /** What the host itself found, where it could not give the core the text as it is. */
  readonly #unread = new Map<FileId, LocatedFinding>();

  constructor(options: PlanSetOptions<C>) {
    this.#options = options;
    this.core = options.createCore({
      rootOf: (file) => uriOfPath(this.rootOf(file)),
      ...(options.lengths && { lengths: options.lengths }),
    });
  }

  /** Files with findings to report, the named ones first, then those that they use. */
  get files(): readonly FileId[] {
    return [...this.#listed];
  }

  /** Adds a plan that the user named; answers with why it can't be checked, or null. */
  async add(file: string): Promise<string | null> {
    const root = this.#options.root ?? nearestRoot(path.dirname(file));
    const id = this.#note(file, root);
    const read = await this.#read(file, root);
    if (read.ok) this.#give(id, read.text);
    else if (read.why === 'too-large')
      this.#unread.set(id, tooLarge(id, read.detail, sizeIn(MOST_BYTES)));
    else if (read.decoded) this.#giveLenient(id, read.decoded);
    else {
      this.#listed.delete(id);
      return `${this.nameOf(id)}: ${read.detail}.`;
    }
    return null;
  }

  /** Adds a text that stands for the file at `file`, which need not exist. */
  addText(file: string, bytes: Uint8Array): void {
    const id = this.#note(file, this.#options.root ?? nearestRoot(path.dirname(file)));
    if (bytes.length > MOST_BYTES) {
      this.#unread.set(
        id,
        tooLarge(id, message`more than ${sizeIn(MOST_BYTES)}`, sizeIn(MOST_BYTES)),
      );
      return;
    }
    const decoded = decode(bytes);
    if (decoded.ok) this.#give(id, decoded.text);
    else this.#giveLenient(id, decoded);
  }

  /** Reads what the plans use, and what that uses, until nothing is wanted. */
  async follow(): Promise<void> {
    for (const plan of this.files.filter((file) => this.#given.has(file))) {
      for (let wanted = this.core.wanted(plan); wanted.length > 0; ) {
        for (const file of wanted) await this.#provide(file, this.rootOf(plan));
        wanted = this.core.wanted(plan);
      }
    }
  }

  /** Why nothing of `file` reached the core; null where something did. */
  unread(file: FileId): LocatedFinding | null {
    return this.#given.has(file) ? null : (this.#unread.get(file) ?? null);
  }

  findings(file: FileId): readonly { finding: LocatedFinding; fixes: readonly LocatedFix[] }[] {
    const whole = this.unread(file);
    if (whole) return [{ finding: whole, fixes: [] }];
    const unread = this.#unread.get(file);
    const found = this.core.findings(file);
    const fixes = fixesWithin(this.core, found, EFFORT_OF_FILE);
    const tried = fixes.length;
    const rest = found
      .map((finding, index) => ({ finding, fixes: fixes[index] ?? [] }))
      .filter(({ finding }) => !unread || !standsOn(finding, unread));
    return [
      ...(unread ? [{ finding: unread, fixes: [] }] : []),
      ...(tried < found.length ? [{ finding: untried(file, tried), fixes: [] }] : []),
      ...rest,
    ];
  }

  /** As a reader names it: from the current folder where it lies below it, with `/`. */
  nameOf(file: FileId): string {
    const absolute = pathOfUri(file);
    if (absolute === null) return file;
    const { cwd } = this.#options;
    const name = isInside(cwd, absolute) ? path.relative(cwd, absolute) : absolute;
    return name.split(path.sep).join('/');
  }

  /** The text of a file that was read whole; null: it was not, or only in part. */
  text(file: FileId): string | null {
    return this.#unread.has(file) ? null : (this.#texts.get(file) ?? null);
  }

  /** Gives another text for a file that was read. */
  give(file: FileId, text: string): void {
    this.#give(file, text);
  }

  #read(file: string, root: string): Promise<ReadPlan> {
    return (this.#options.read ?? readPlan)(file, root);
  }

  #give(file: FileId, text: string): void {
    this.#given.add(file);
    this.#texts.set(file, text);
    this.core.give(file, text);
  }

  #note(file: string, root: string): FileId {
    const id = uriOfPath(file);
    this.#roots.set(id, root);
    this.#listed.add(id);
    return id;
  }

  /** The folder that a plan may use files from. */
  rootOf(file: FileId): string {
    return this.#roots.get(file) ?? this.#options.root ?? this.#options.cwd;
  }

  async #provide(file: FileId, root: string): Promise<void> {
    this.#roots.set(file, root);
    const at = pathOfUri(file);
    const read = at === null ? null : await this.#read(at, root);
    if (read?.ok) {
      this.#listed.add(file);
      this.#give(file, read.text);
    } else this.core.refuse(file, read?.why ?? 'not-found');
  }

  #giveLenient(id: FileId, decoded: Extract<ReturnType<typeof decode>, { ok: false }>): void {
    this.#unread.set(id, notText(id, decoded.at, decoded.offset));
    if (decoded.lenient !== null) this.#give(id, decoded.lenient);
  }
}

/** One cause, one finding: what the unreadable character itself leads to isn't said again. */
const standsOn = ({ range }: LocatedFinding, { range: { start } }: LocatedFinding): boolean =>
  range.start.line === start.line &&
  range.end.line === start.line &&
  range.start.character <= start.character &&
  start.character <= range.end.character;
