/** A plan as it is compared, and what a comparison says: plain data. */
import type { FigureBounds } from '../figures/bounds-json.ts';
import type { EditJson } from '../figures/edit-json.ts';
import type { ShotFiguresJson } from '../figures/json.ts';
import type { Reasons } from '../figures/reasons.ts';
import type { LocatedFinding } from './located.ts';
import type { Comment } from './sheet.ts';

/** Path ("take.duration") to text; names of other entries between marks, so that renames are seen. */
export type FieldTexts = ReadonlyMap<string, string>;

export interface ComparedPlan {
  /** Entries and keys of the plan and of all that it uses, by section: 'kit/lenses', 'shots', ''. */
  readonly sections: ReadonlyMap<string, ReadonlyMap<string, FieldTexts>>;
  readonly shots: ReadonlyMap<string, ComparedShot>;
  /** The edit; null where there are no cuts. */
  readonly edit: EditJson | null;
  /** Of no single shot. */
  readonly findings: readonly PlanFinding[];
}

export interface ComparedShot {
  readonly figures: ShotFiguresJson;
  /** How sure the figures are; left out: nobody knows of any width. */
  readonly sure?: {
    /** The inputs that are not known exactly, in one text: where it is the same, so are the bounds. */
    readonly inputs: string;
    /** Worked out as far as somebody asks; undefined: the figure has no width. */
    readonly bounds: (figure: string) => FigureBounds | undefined;
  };
  readonly findings: readonly PlanFinding[];
  readonly review: readonly Comment[];
}

export type ComparedFinding = Pick<LocatedFinding, 'rule' | 'severity' | 'what'>;

/** With what it is known by: its place, and what its rule found there. Never what is said of it. */
export interface PlanFinding extends ComparedFinding {
  /** Entry and path, a step each. */
  readonly place: readonly string[];
  readonly facts: unknown;
}

export interface Comparison {
  /** What changed outside the shots. */
  readonly entries: readonly EntryChange[];
  /** Shots of which anything changed, in themselves or by what they use. */
  readonly shots: readonly ShotChange[];
  /** Shots of either plan of which nothing did. */
  readonly sameShots: number;
  /** What follows in the edit: `totalFrames`, `cuts.opening.startFrame`. */
  readonly edit: readonly FigureChange[];
  readonly findings: FindingsChange;
}

type ChangeState = 'new' | 'gone' | 'changed';

export interface EntryChange {
  /** 'lights/wall', 'deliver' */
  readonly entry: string;
  readonly state: ChangeState;
  /** What it was called before. */
  readonly before?: string;
  readonly fields: readonly FieldChange[];
}

/** null: not written. */
export interface FieldChange {
  readonly path: string;
  readonly before: string | null;
  readonly after: string | null;
}

export interface ShotChange {
  readonly shot: string;
  readonly state: ChangeState;
  readonly before?: string;
  readonly fields: readonly FieldChange[];
  readonly figures: readonly FigureChange[];
  readonly findings: FindingsChange;
}

export interface FigureChange {
  /** As in `figures`: 'depthMm.needed'. */
  readonly figure: string;
  readonly before: unknown;
  readonly after: unknown;
  /** Why `before` or `after` is null, where it is. */
  readonly notKnown: Reasons;
  /** Between which values it lay and lies; null: it had or has no width. Left out: neither. */
  readonly bounds?: { readonly before: FigureBounds | null; readonly after: FigureBounds | null };
  /** The value after lies inside the bounds before. */
  readonly insideBounds?: true;
  /** What became of how sure it is. */
  readonly width?: 'narrower' | 'wider';
}

export interface FindingsChange {
  readonly gone: readonly ComparedFinding[];
  readonly new: readonly ComparedFinding[];
  /** Still found, with other facts or at another place. */
  readonly changed: readonly {
    readonly before: ComparedFinding;
    readonly after: ComparedFinding;
  }[];
}
