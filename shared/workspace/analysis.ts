/**
 * From entries to findings: what is worked out of each shot, remembered until something that it
 * read changes. Findings are gathered group by group, so that an edit in one of thousands of
 * shots gathers one group again and not all of them.
 */
import { sameData } from '../engine/equal.ts';
import type { Query } from '../engine/graph.ts';
import type { Bench } from '../figures/bench.ts';
import { figuresOf } from '../figures/compute.ts';
import { readBench } from '../figures/read-bench.ts';
import type { PlanReader } from '../figures/reader.ts';
import type { ShotFigures } from '../figures/shot-figures.ts';
import type { Shot } from '../plan/generated/types.ts';
import type { EntryId, FileId } from '../plan/place.ts';
import type { Finding } from '../rules/rule.ts';
import { Entries, type EntryRef } from './entries.ts';
import { fileFindings } from './file-findings.ts';
import { Names } from './names.ts';
import { planReader } from './plan-reader.ts';
import { runShotRules } from './shot-findings.ts';
import { keyOf, type Store, splitKey } from './store.ts';
import { chunkFindings, entryFindings, type TextFinding } from './text-findings.ts';

/** Entries whose findings are gathered together. */
const GROUP_SIZE = 64;

export class Analysis {
  readonly entries: Entries;
  readonly names: Names;
  readonly #store: Store;
  readonly #reader: Query<PlanReader>;
  readonly #chunkText: Query<readonly TextFinding[]>;
  readonly #entryText: Query<readonly TextFinding[]>;
  readonly #bench: Query<Bench | undefined>;
  readonly #figures: Query<ShotFigures | undefined>;
  readonly #shot: Query<readonly Finding[]>;
  readonly #chunkGroup: Query<readonly Finding[]>;
  readonly #entryGroup: Query<readonly Finding[]>;
  readonly #refs: Query<ReadonlyMap<EntryId, EntryRef>>;
  readonly #file: Query<readonly Finding[]>;
  readonly #findings: Query<readonly Finding[]>;

  constructor(store: Store, rootOf: (file: FileId) => FileId) {
    this.#store = store;
    const { graph } = store;
    const entries = new Entries(store);
    const names = new Names(store, entries, rootOf);
    this.entries = entries;
    this.names = names;
    this.#reader = graph.query('reader', (file) => planReader(file, entries, names));
    this.#refs = graph.query(
      'refs',
      (file) => new Map(entries.list(file).map((ref) => [ref.id, ref])),
    );
    this.#chunkText = graph.query(
      'chunk-text',
      (key) => chunkFindings(entries, ...splitKey(key)),
      sameData,
    );
    this.#entryText = graph.query(
      'entry-text',
      (key) => {
        const [file, id] = splitKey(key);
        const ref = this.#refs(file).get(id);
        return ref ? entryFindings(entries, names, file, ref) : [];
      },
      sameData,
    );
    this.#bench = graph.query('bench', (key) => this.#benchOf(...splitKey(key)), sameData);
    this.#figures = graph.query('figures', (key) => {
      const bench = this.#bench(key);
      return bench && figuresOf(bench);
    });
    this.#shot = graph.query('shot-findings', (key) => this.#shotFindings(key), sameData);
    this.#chunkGroup = graph.query('chunk-group', (key) =>
      this.#gather(key, store.ids(splitKey(key)[0]), (file, id) =>
        this.#chunkText(keyOf(file, id)),
      ),
    );
    this.#entryGroup = graph.query('entry-group', (key) => {
      const [file] = splitKey(key);
      const ids = entries.list(file).map((ref) => ref.id);
      return this.#gather(key, ids, (one, id) => {
        const entry = keyOf(one, id);
        const text = this.#entryText(entry);
        return this.isShot(id) ? [...text, ...this.#shot(entry)] : text;
      });
    });
    this.#file = graph.query('file-findings', (file) => fileFindings(store, names, file), sameData);
    this.#findings = graph.query('findings', (file) => this.#allFindings(file));
  }

  isShot(id: EntryId): boolean {
    return id.startsWith('shots/') && !id.includes('\u0001');
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

  /** Findings that `file` gives rise to, wherever they stand, in the order of its text. */
  findings(file: FileId): readonly Finding[] {
    return this.#findings(file);
  }

  shotFindings(file: FileId, shot: EntryId): readonly Finding[] {
    return this.#shot(keyOf(file, shot));
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
    const name = id.slice('shots/'.length);
    return readBench(this.#reader(file), {
      name,
      group: 'shots',
      file,
      entry: id,
      fields: lowered.value as Shot,
    });
  }

  #shotFindings(key: string): readonly Finding[] {
    const [file, id] = splitKey(key);
    // An entry that is being typed or broken shows what is wrong with its text and no more.
    if (this.textFindings(file, id).some((finding) => finding.severity === 'error')) return [];
    const bench = this.#bench(key);
    const figures = this.#figures(key);
    return bench && figures ? runShotRules({ bench, figures }) : [];
  }

  #gather(
    key: string,
    ids: readonly EntryId[],
    of: (file: FileId, id: EntryId) => readonly Finding[],
  ): readonly Finding[] {
    const [file, group] = splitKey(key);
    const first = Number(group) * GROUP_SIZE;
    return ids.slice(first, first + GROUP_SIZE).flatMap((id) => of(file, id));
  }

  #allFindings(file: FileId): readonly Finding[] {
    const groups = (count: number, of: Query<readonly Finding[]>) =>
      Array.from({ length: Math.ceil(count / GROUP_SIZE) }, (_, index) =>
        of(keyOf(file, String(index))),
      ).flat();
    return [
      ...this.#file(file),
      ...groups(this.#store.ids(file).length, this.#chunkGroup),
      ...groups(this.entries.list(file).length, this.#entryGroup),
    ];
  }
}
