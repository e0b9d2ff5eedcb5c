/** "What if" on a shot: its figures with one field or another put in place, in the typed plan. */

import { figuresOf } from '../../figures/compute.ts';
import { readBench } from '../../figures/read-bench.ts';
import type { PlanReader } from '../../figures/reader.ts';
import { idOf, nameOf } from '../../plan/entry-id.ts';
import type { Field } from '../../plan/field.ts';
import { SHAPES } from '../../plan/generated/shapes.ts';
import type { Shot } from '../../plan/generated/types.ts';
import type { EntryId, FileId } from '../../plan/place.ts';
import type { ShotView } from '../../rules/shot-rule.ts';
import type { Say } from '../../say/say.ts';
import type { Context } from '../../workspace/context.ts';

type Value<K extends keyof Shot> = Shot[K] extends Field<infer V> ? V : never;

export class TrialShot {
  readonly say: Say;
  readonly reader: PlanReader;
  readonly #file: FileId;
  readonly entry: EntryId;
  readonly fields: Shot;
  #now: ShotView | undefined;

  constructor(reader: PlanReader, say: Say, file: FileId, entry: EntryId, fields: Shot) {
    this.reader = reader;
    this.say = say;
    this.#file = file;
    this.entry = entry;
    this.fields = fields;
  }

  static ofShot({ analysis, say }: Context, file: FileId, entry: EntryId): TrialShot {
    const lowered = analysis.entries.lowered(file, entry);
    const fields = lowered?.def === 'shot' ? (lowered.value as Shot) : noFields(file, entry);
    return new TrialShot(analysis.reader(file), say, file, entry, fields);
  }

  /** A shot of which nothing is decided yet. */
  static blank({ analysis, say }: Context, file: FileId): TrialShot {
    const entry = idOf('shots', '');
    return new TrialShot(analysis.reader(file), say, file, entry, noFields(file, entry));
  }

  /** The shot as it stands. */
  get now(): ShotView {
    if (!this.#now) {
      const bench = readBench(this.reader, {
        name: nameOf('shots', this.entry),
        group: 'shots',
        file: this.#file,
        entry: this.entry,
        fields: this.fields,
      });
      this.#now = { bench, figures: figuresOf(bench) };
    }
    return this.#now;
  }

  /** The shot with another value of one field. */
  with<K extends keyof Shot>(key: K, value: Value<K>): TrialShot {
    const at = this.fields[key].at;
    const fields = { ...this.fields, [key]: { state: 'known', value, at } };
    return new TrialShot(this.reader, this.say, this.#file, this.entry, fields);
  }

  /** The shot without a field. */
  without(key: keyof Shot): TrialShot {
    const at = this.fields[key].at;
    const fields = { ...this.fields, [key]: { state: 'missing', at } };
    return new TrialShot(this.reader, this.say, this.#file, this.entry, fields);
  }
}

const noFields = (file: FileId, entry: EntryId): Shot =>
  Object.fromEntries(
    Object.keys(SHAPES.shot.keys).map((key) => [
      key,
      { state: 'missing', at: { file, entry, path: [key] } },
    ]),
  ) as unknown as Shot;
