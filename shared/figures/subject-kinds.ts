/**
 * What a kind of subject is by nature: all that calculations, rules and drawings ask of it. A kind
 * that the schema has and this table has not does not compile.
 */

import type { Field } from '../plan/field.ts';
import { ifKnown } from '../plan/field.ts';
import type { Subject } from '../plan/generated/types.ts';

type SubjectKind = Subject['kind'] extends Field<infer Kind> ? Kind : never;

interface Nature {
  /** It is wet: mains stay away from it, and its solution is made ready. */
  readonly isLiquid: boolean;
  /** A skin of liquid so thin that it shows interference colours, and bursts. */
  readonly isFilm: boolean;
  /** Whether it shows what is before it: by nature, or where its finish says so. */
  readonly mirrors: 'always' | 'by-finish';
  /** How it reaches toward the lens: not at all, as a ball, or as deep as it is said to be. */
  readonly shape: 'flat' | 'ball' | 'relief';
  /** Light goes into it, so that what it reflects is polarised by Fresnel's law. */
  readonly isClear: boolean;
  /** Lit, it looks as its finish says: nothing is assumed of it. */
  readonly asksFinish: boolean;
}

const NATURES: Readonly<Record<SubjectKind, Nature>> = {
  film: {
    isLiquid: true,
    isFilm: true,
    mirrors: 'always',
    shape: 'flat',
    isClear: true,
    asksFinish: false,
  },
  bubble: {
    isLiquid: true,
    isFilm: true,
    mirrors: 'always',
    shape: 'ball',
    isClear: true,
    asksFinish: false,
  },
  surface: {
    isLiquid: true,
    isFilm: false,
    mirrors: 'by-finish',
    shape: 'flat',
    isClear: true,
    asksFinish: true,
  },
  solid: {
    isLiquid: false,
    isFilm: false,
    mirrors: 'by-finish',
    shape: 'relief',
    isClear: false,
    asksFinish: false,
  },
};

/** Undefined where the kind is not known. */
export const natureOf = (
  subject: { readonly fields: Pick<Subject, 'kind'> } | undefined,
): Nature | undefined => {
  const kind = subject && ifKnown(subject.fields.kind);
  return kind && NATURES[kind];
};
