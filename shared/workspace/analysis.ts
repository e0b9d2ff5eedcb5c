/**
 * From entries to findings. What is calculated from each shot is kept until something that it read
 * changes. Findings are collected by groups of entries, so that an edit in one of thousands of
 * shots collects one group again and not all.
 */

import type { CoreOptions } from '../api/facade.ts';
import { sameData } from '../engine/equal.ts';
import type { Query } from '../engine/graph.ts';
import type { Bench } from '../figures/bench.ts';
import { figuresOf } from '../figures/compute.ts';
import { type DayFigures, dayFigures } from '../figures/day-figures.ts';
import type { DayPlan } from '../figures/day-plan.ts';
import { type EditFigures, editFigures } from '../figures/edit-figures.ts';
import type { Footage } from '../figures/edit-footage.ts';
import type { Need } from '../figures/figure.ts';
import { readBench } from '../figures/read-bench.ts';
import type { PlanReader } from '../figures/reader.ts';
import { takesOfShot } from '../figures/recording.ts';
import { type BodySums, sumsByBody } from '../figures/recording-sums.ts';
import { layOutRig } from '../figures/rig-layout.ts';
import type { ShotFigures } from '../figures/shot-figures.ts';
import { UncertainShot } from '../figures/uncertain.ts';
import { idOf, isFirst, isOf, nameOf } from '../plan/entry-id.ts';
import type { Field } from '../plan/field.ts';
import type { Shot } from '../plan/generated/types.ts';
import type { EntryId, FileId } from '../plan/place.ts';
import type { PlanView, ShotSummary } from '../rules/plan-rule.ts';
import type { Readiness } from '../rules/readiness.ts';
import type { Finding } from '../rules/rule.ts';
import { Ahead } from './ahead.ts';
import { duplicateClips } from './clip-problems.ts';
import { readEdit } from './edit-plan.ts';
import { Entries } from './entries.ts';
import { fileFindings } from './file-findings.ts';
import { type Key, keyOf, splitKey } from './keys.ts';
import { Names } from './names.ts';
import { findInPlan } from './plan-findings.ts';
import { planReader } from './plan-reader.ts';
import { planView } from './plan-view.ts';
import { shotsReadiness } from './readiness.ts';
import { withSeverities } from './severities.ts';
import { dependsOnFigures, findInShot, withCertainty } from './shot-findings.ts';
import type { Store } from './store.ts';
import { settledBy, summaryOf } from './summary.ts';
import { chunkFindings, entryFindings, type TextFinding } from './text-findings.ts';
import { usedNames } from './used-names.ts';

/** The kept results of a shot: its findings, and what the plan's rules read of it. */
interface WorkedShot {
  readonly findings: readonly Finding[];
  readonly silenced?: readonly Finding[];
  /** Empty for a shot with errors in its own text, shape or names. */
  readonly summary?: ShotSummary;
}

const isError = ({ severity }: Finding): boolean => severity === 'error';

const NOTHING_FOUND: WorkedShot = { findings: [] };

/** Number of entries whose findings are collected together. */
const GROUP_SIZE = 64;

export class Analysis {
  readonly entries: Entries;
  readonly names: Names;
  readonly #store: Store;
  readonly #reader: Query<PlanReader>;
  readonly #chunkText: Query<readonly TextFinding[], Key>;
  readonly #entryText: Query<readonly TextFinding[], Key>;
  readonly #bench: Query<Bench | undefined, Key>;
  readonly #figures: Query<ShotFigures | undefined, Key>;
  readonly #uncertain: Query<UncertainShot | undefined, Key>;
  readonly #shot: Query<WorkedShot, Key>;
  readonly #certain: Query<readonly Finding[], Key>;
  readonly #unsureGroup: Query<readonly Need[], Key<string>>;
  readonly #summaryGroup: Query<readonly ShotSummary[], Key<string>>;
  readonly #usedGroup: Query<readonly EntryId[], Key<string>>;
  readonly #readiness: Query<ReadonlyMap<string, Readiness>>;
  readonly #partly: Query<boolean>;
  readonly #footage: Query<Footage | null, Key>;
  readonly #edit: Query<EditFigures | null>;
  readonly #day: Query<DayFigures | null>;
  readonly #chunkGroup: Query<readonly Finding[], Key<string>>;
  readonly #ids: Query<readonly EntryId[]>;
  readonly #file: Query<readonly Finding[]>;
  readonly #ahead: Ahead;
  readonly #findings: Query<readonly Finding[]>;
  /** The same without a word on how sure they are, which costs as much again. */
  readonly #plain: Query<readonly Finding[]>;

  constructor(store: Store, { rootOf, otherRoots }: Pick<CoreOptions, 'rootOf' | 'otherRoots'>) {
    this.#store = store;
    const { graph } = store;
    const entries = new Entries(store);
    const names = new Names(store, entries, (file) => [
      rootOf(file),
      ...(otherRoots?.(file) ?? []),
    ]);
    this.entries = entries;
    this.names = names;
    const rigLayout = graph.query(
      'rig',
      (key: Key<string>) => {
        const [file, name] = splitKey(key);
        return layOutRig(this.#reader(file), names.find(file, 'rigs', name));
      },
      sameData,
    );
    this.#reader = graph.query('reader', (file) => planReader(file, entries, names, rigLayout));
    this.#ids = graph.query('entry-ids', (file) => entries.list(file).map((ref) => ref.id));
    this.#chunkText = graph.query(
      'chunk-text',
      (key) => chunkFindings(entries, ...splitKey(key)),
      sameData,
    );
    this.#entryText = graph.query(
      'entry-text',
      (key) => entryFindings(entries, names, ...splitKey(key)),
      sameData,
    );
    this.#bench = graph.passing('bench', (key) => this.#benchOf(...splitKey(key)), GROUP_SIZE);
    this.#figures = graph.passing(
      'figures',
      (key) => {
        const bench = this.#bench(key);
        return bench && figuresOf(bench);
      },
      GROUP_SIZE,
    );
    this.#uncertain = graph.passing('uncertain', (key) => this.#uncertainOf(key), GROUP_SIZE);
    this.#shot = graph.query('shot', (key) => this.#workOut(key), sameData);
    this.#certain = graph.query('certainty', (key) => this.#certaintyOf(key), sameData);
    this.#unsureGroup = graph.query(
      'unsure-group',
      (key) => this.#gather(key, this.#entryIds, (entry) => this.#unsureIn(entry)),
      sameData,
    );
    this.#summaryGroup = graph.query(
      'summary-group',
      (key) =>
        this.#gather(key, this.#entryIds, (entry) =>
          this.isShot(splitKey(entry)[1]) ? (this.#shot(entry).summary ?? []) : [],
        ),
      sameData,
    );
    this.#usedGroup = graph.query('used-group', (key) => this.#usedIn(key), sameData);
    this.#footage = graph.query(
      'footage',
      (key) => this.#shot(key).summary?.footage ?? null,
      sameData,
    );
    const editField = graph.query(
      'edit-field',
      (key: Key) => this.#fieldOf(...splitKey(key)),
      sameData,
    );
    const editPlan = graph.query(
      'edit-plan',
      (file) => this.#readEdit(file, (entry) => editField(keyOf(file, entry))),
      sameData,
    );
    this.#edit = graph.query('edit', (file) => editFigures(editPlan(file)));
    const dayPlan = graph.query('day-plan', (file) => this.#readDay(file), sameData);
    this.#day = graph.query('day', (file) => dayFigures(dayPlan(file)));
    this.#chunkGroup = graph.query('chunk-group', (key) =>
      this.#gather(key, (file) => store.ids(file), this.#chunkText),
    );
    this.#file = graph.query(
      'file-findings',
      (file) => [...fileFindings(store, names, file), ...duplicateClips(entries, file)],
      sameData,
    );
    this.#partly = graph.query('partly', (file) => this.#isPartly(file), sameData);
    this.#readiness = graph.query('readiness', (file) => this.#readinessIn(file));
    const group = this.#grouped('', true);
    this.#findings = this.#gathered('', true, group);
    this.#ahead = new Ahead(graph, { group, of: (entry) => this.#readAhead(entry) }, GROUP_SIZE);
    this.#plain = this.#gathered('plain-', false, this.#grouped('plain-', false));
  }

  /** The findings of one group of entries. */
  #grouped(prefix: string, isCertain: boolean): Query<readonly Finding[], Key<string>> {
    return this.#store.graph.query(`${prefix}entry-group`, (key) =>
      this.#gather(key, this.#entryIds, (entry) => this.#entryFindings(entry, isCertain)),
    );
  }

  /** All findings of a file, shot by shot, group by group. */
  #gathered(
    prefix: string,
    isCertain: boolean,
    group: Query<readonly Finding[], Key<string>>,
  ): Query<readonly Finding[]> {
    const { graph } = this.#store;
    const plan = graph.query(
      `${prefix}plan-findings`,
      (file) => findInPlan(this.planView(file, isCertain), this.#reader(file).plan('allow')),
      sameData,
    );
    return graph.query(`${prefix}findings`, (file) => {
      const found = [
        ...this.#file(file),
        ...this.#groups(file, this.#store.ids(file).length, this.#chunkGroup),
        ...this.#groups(file, this.entries.list(file).length, group),
        ...plan(file),
      ];
      return withSeverities(found, this.names.reaches(file), this.#reader);
    });
  }

  /** How figures read the plan in `file`. */
  reader(file: FileId): PlanReader {
    return this.#reader(file);
  }

  isShot(id: EntryId): boolean {
    return isOf('shots', id) && isFirst(id);
  }

  shots(file: FileId): readonly EntryId[] {
    return this.entries.list(file).flatMap(({ id }) => (this.isShot(id) ? [id] : []));
  }

  bench(file: FileId, shot: EntryId): Bench | undefined {
    return this.#bench(keyOf(file, shot));
  }

  figures(file: FileId, shot: EntryId): ShotFigures | undefined {
    return this.#figures(keyOf(file, shot));
  }

  /** The uncertainty of the figures, calculated as far as somebody asks. */
  uncertain(file: FileId, shot: EntryId): UncertainShot | undefined {
    return this.#uncertain(keyOf(file, shot));
  }

  /** Sums of a plan's takes for each body; a shot that can't be read counts as unknown. */
  recording(file: FileId): readonly BodySums[] {
    const takes = this.shots(file).map((id) => {
      const [bench, figures] = [this.bench(file, id), this.figures(file, id)];
      return bench && figures ? takesOfShot(bench, figures) : null;
    });
    return sumsByBody(takes.filter((one) => one !== null));
  }

  /** The figures of the edit; null if the plan has no cuts. */
  edit(file: FileId): EditFigures | null {
    return this.#edit(file);
  }

  /** The figures of the day; null if the plan has none that can be read. */
  day(file: FileId): DayFigures | null {
    return this.#day(file);
  }

  /** Findings that `file` causes, in whatever file they are, in the order of its text. */
  findings(file: FileId): readonly Finding[] {
    return this.#findings(file);
  }

  /** The same, each as if it were sure: what trials compare. */
  plainFindings(file: FileId): readonly Finding[] {
    return this.#plain(file);
  }

  shotFindings(file: FileId, shot: EntryId): readonly Finding[] {
    return this.#shot(keyOf(file, shot)).findings;
  }

  /** A plain finding of a shot with how sure it is. */
  certain(finding: Finding): Finding {
    if (finding.shot === undefined) return finding;
    const shot = idOf('shots', finding.shot);
    for (const file of this.#store.files()) {
      const uncertain = this.entries.source(file, shot) && this.uncertain(file, shot);
      if (uncertain) return withCertainty(finding, uncertain);
    }
    return finding;
  }

  /** Findings about an entry's own text, shape and names. */
  textFindings(file: FileId, id: EntryId): readonly TextFinding[] {
    const source = this.entries.source(file, id);
    const chunk = source ? this.#chunkText(keyOf(file, source.chunk)) : [];
    return [...chunk, ...this.#entryText(keyOf(file, id))];
  }

  #benchOf(file: FileId, id: EntryId): Bench | undefined {
    const lowered = this.entries.lowered(file, id);
    if (lowered?.def !== 'shot') return undefined;
    const name = nameOf('shots', id);
    return readBench(this.#reader(file), {
      name,
      group: 'shots',
      file,
      entry: id,
      fields: lowered.value as Shot,
    });
  }

  #uncertainOf(key: Key): UncertainShot | undefined {
    const [bench, figures] = [this.#bench(key), this.#figures(key)];
    return bench && figures && new UncertainShot({ bench, figures });
  }

  #readinessIn(file: FileId): ReadonlyMap<string, Readiness> {
    const count = this.entries.list(file).length;
    return shotsReadiness({
      shots: this.shots(file).map((id) => nameOf('shots', id)),
      findings: this.findings(file),
      summaries: this.#groups(file, count, this.#summaryGroup),
      partly: this.#partly(file),
    });
  }

  /** Whether a text that the plan reaches has errors outside its shots, or isn't there. */
  #isPartly(file: FileId): boolean {
    return this.names.reaches(file).some((one) => {
      const chunks = this.#groups(one, this.#store.ids(one).length, this.#chunkGroup);
      return [...this.#file(one), ...chunks].some(
        (found) => isError(found) && !isOf('shots', found.at.entry),
      );
    });
  }

  #usedIn(group: Key<string>): readonly EntryId[] {
    const used = this.#gather(group, this.#entryIds, (entry) =>
      usedNames(this.entries.lowered(...splitKey(entry))),
    );
    return [...new Set(used)];
  }

  #entryFindings(entry: Key, isCertain: boolean): readonly Finding[] {
    const text = this.#entryText(entry);
    const isShot = this.isShot(splitKey(entry)[1]);
    const shot = !isShot ? [] : isCertain ? this.#certain(entry) : this.#shot(entry).findings;
    return shot.length === 0 ? text : [...text, ...shot];
  }

  #fieldOf(file: FileId, entry: EntryId): Field<unknown> {
    const lowered = this.entries.lowered(file, entry);
    if (lowered?.value !== undefined) return lowered.value as Field<unknown>;
    return { state: lowered ? 'invalid' : 'missing', at: { file, entry, path: [] } };
  }

  #readEdit(file: FileId, field: (entry: EntryId) => Field<unknown>) {
    return readEdit(file, this.entries, field, (shot) => {
      const found = this.names.define(file, 'shots', shot);
      return found ? this.#footage(keyOf(found.file, found.entry)) : null;
    });
  }

  /** Without a day, none of its shots is looked at. */
  #readDay(file: FileId): DayPlan {
    const day = this.#reader(file).plan('day');
    const count = day.state === 'known' ? this.entries.list(file).length : 0;
    const shots = this.#groups(file, count, this.#summaryGroup).map((one) => one.day);
    const read = new Set(shots.map(({ shot }) => shot));
    const names = count === 0 ? [] : this.shots(file).map((id) => nameOf('shots', id));
    return { file, day, shots, unread: names.filter((name) => !read.has(name)) };
  }

  /** Bench and figures are large and are dropped; their results are small and are kept. */
  #workOut(key: Key): WorkedShot {
    const [file] = splitKey(key);
    if (this.#isBroken(key)) return NOTHING_FOUND;
    const bench = this.#bench(key);
    const figures = this.#figures(key);
    if (!bench || !figures) return NOTHING_FOUND;
    const found = findInShot({ bench, figures }, this.#reader(file).plan('allow'));
    const { findings, silenced } = found;
    return { findings, silenced, summary: summaryOf(bench, figures, found) };
  }

  #certaintyOf(key: Key): readonly Finding[] {
    const { findings, silenced } = this.#shot(key);
    if (!findings.some(dependsOnFigures)) return findings;
    const uncertain = this.#uncertain(key);
    return uncertain ? findings.map((one) => withCertainty(one, uncertain, silenced)) : findings;
  }

  #readAhead(entry: Key): void {
    this.#entryText(entry);
    if (this.isShot(splitKey(entry)[1])) this.#certain(entry);
  }

  /** Values of the plan that would make probable findings of a shot sure. */
  #unsureIn(entry: Key): readonly Need[] {
    return this.isShot(splitKey(entry)[1]) ? this.#certain(entry).flatMap(settledBy) : [];
  }

  /** An entry that is broken or being typed shows only what is wrong with its text. */
  #isBroken(key: Key): boolean {
    const [file, id] = splitKey(key);
    const source = this.entries.source(file, id);
    return (
      (source !== undefined && this.#chunkText(keyOf(file, source.chunk)).some(isError)) ||
      this.#entryText(key).some(isError)
    );
  }

  /** By name of each shot, in the order of the text. */
  readiness(file: FileId): ReadonlyMap<string, Readiness> {
    return this.#readiness(file);
  }

  prepare(file: FileId, until: () => boolean): boolean {
    return this.#ahead.prepare(file, this.#ids(file), until);
  }

  /** The input of rules about the whole plan. */
  planView(file: FileId, isCertain = true): PlanView {
    const unsure = isCertain
      ? this.#groups(file, this.entries.list(file).length, this.#unsureGroup)
      : [];
    const shots = this.#groups(file, this.entries.list(file).length, this.#summaryGroup);
    const used = this.#groups(file, this.entries.list(file).length, this.#usedGroup);
    const entries = this.entries.list(file);
    const of = { edit: this.edit(file), day: this.day(file) };
    return { ...planView(file, shots, entries, new Set(used), this.#reader(file), of), unsure };
  }

  readonly #entryIds = (file: FileId): readonly EntryId[] => this.#ids(file);

  /** The results of `of` for the entries of one group; the key names file and group. */
  #gather<T>(
    key: Key<string>,
    idsOf: (file: FileId) => readonly EntryId[],
    of: (entry: Key) => T | readonly T[],
  ): readonly T[] {
    const [file, group] = splitKey(key);
    const first = Number(group) * GROUP_SIZE;
    return idsOf(file)
      .slice(first, first + GROUP_SIZE)
      .flatMap((id) => of(keyOf(file, id)));
  }

  #groups<T>(file: FileId, count: number, of: Query<readonly T[], Key<string>>): readonly T[] {
    const all: T[] = [];
    for (let index = 0; index * GROUP_SIZE < count; index++)
      for (const one of of(keyOf(file, String(index)))) all.push(one);
    return all;
  }
}
