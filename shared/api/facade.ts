/**
 * What hosts (the language server, the command line, a browser) see of the core. The core reads
 * no files: it is given texts, answers with what it can say of them, and names the files that it
 * still wants; what a host can't provide it refuses, with the reason.
 */

import type { CoveredCut } from '../clips/coverage.ts';
import type { ClipReading } from '../clips/facts.ts';
import type { DayJson } from '../figures/day-json.ts';
import type { EditJson } from '../figures/edit-json.ts';
import type { ShotFiguresJson } from '../figures/json.ts';
import type { BodyRecordingJson } from '../figures/recording-json.ts';
import type { FormatLines } from '../format/format.ts';
import type { FormatOptions } from '../format/rows.ts';
import type { LookAsk } from '../looked-at/looked.ts';
import type { FileId } from '../plan/place.ts';
import type { LengthUnit } from '../say/say.ts';
import type { HintKind, LensKind } from './beside-text.ts';
import type { DroppedClips } from './clips.ts';
import type { ComparedPlan } from './compared.ts';
import type { About, Completions } from './completions.ts';
import type { DrawnFrame, FrameInMaking } from './frame.ts';
import type {
  ColourSwatch,
  LocatedEdit,
  LocatedFinding,
  LocatedFix,
  LocatedPlace,
  Position,
  Range,
} from './located.ts';
import type { Making } from './making.ts';
import type { KnownOfLens, MeasureAdvice } from './measure.ts';
import type { NameToken } from './name-tokens.ts';
import type { FileLink, FoundEntry, Renaming } from './navigation.ts';
import type { Sheet, ShownAt, Tick } from './sheet.ts';
import type { SolvedShot } from './solved.ts';
import type { TimelineFile, TimelineFormat, TimelineOptions } from './timeline.ts';

/** Why a file that is wanted can't be had. */
export type Refusal = 'not-found' | 'outside-workspace' | 'too-large' | 'not-text' | 'unreadable';

/** A clip that the plan lists; its path is relative to the plan or to the folder of the media. */
interface PlanClip {
  readonly shot: string;
  readonly path: string;
  /** null: not judged yet. */
  readonly verdict: 'keep' | 'maybe' | 'reject' | null;
}

export interface Hover {
  /** Markdown; everything in it that comes from a plan is escaped. */
  readonly markdown: string;
  readonly range: Range;
  /** The shot whose frame shows what is told. */
  readonly frameOf?: string;
  /** Small drawings of it, for clients that show pictures. */
  readonly pictures?: readonly HoverPicture[];
}

export interface HoverPicture {
  /** A whole SVG document, ASCII alone. */
  readonly svg: string;
  /** Plain text that says the same. */
  readonly alt: string;
}

export interface InlayHint {
  readonly kind: HintKind;
  readonly position: Position;
  readonly label: string;
  readonly tooltip?: string;
}

/** Where the state of a shot is told, over its name. */
export interface ShotLens {
  readonly shot: string;
  readonly range: Range;
}

export interface OutlineSymbol {
  readonly name: string;
  readonly detail: string;
  readonly kind: 'section' | 'entry' | 'field';
  readonly range: Range;
  readonly selection: Range;
  readonly children: readonly OutlineSymbol[];
}

export interface OfferedFix extends LocatedFix {
  readonly finding: LocatedFinding;
}

export interface PlanState {
  /**
   * Shots without an error, a warning, a missing check, or an unknown depth of field or exposure, of all
   * shots. None where a text that the plan needs is unread.
   */
  readonly ready: number;
  readonly shots: number;
  /** Errors that stand in the plan's own file; left out: none. */
  readonly errors?: number;
  /** Planned takes that aren't kept yet; left out: the plan lists no clips. */
  readonly takesToGo?: number;
  /** Shots of the plan's day, and how many have all their takes; left out: no day with a date. */
  readonly day?: { readonly date: string; readonly shots: number; readonly kept: number };
}

/** Texts in, findings and fixes out. */
export interface Checker {
  /** Gives or replaces a file's whole text. */
  give(file: FileId, text: string): void;
  /** Says that a wanted file can't be had. */
  refuse(file: FileId, why: Refusal): void;
  /** Files that `file` uses, directly or not, and that have been neither given nor refused. */
  wanted(file: FileId): readonly FileId[];
  /**
   * All findings that stand in `file`, by position: its own, and those that the given files that
   * use it cause there, each once.
   */
  findings(file: FileId): readonly LocatedFinding[];
  fixesOf(finding: LocatedFinding): readonly LocatedFix[];
  /**
   * What trying fixes has cost so far; it only grows. In characters read anew, values read and shots
   * calculated, so that the same plan costs the same anywhere.
   */
  effort(): number;
  /** Whether offered fixes without a price, made at once, bring no finding but hints. */
  areFree(fixes: readonly OfferedFix[]): boolean;
  state(file: FileId): PlanState;
  /** The text of line `index` (from 0) without its break; '' past the end. */
  line(file: FileId, index: number): string;
}

export interface Core extends Checker {
  /** Applies one edit to a given file; positions are clamped to the text. */
  edit(file: FileId, range: Range, newText: string): void;
  /** Says that `rootOf` would answer otherwise now. */
  rootsChanged(): void;
  /** Forgets a file. */
  close(file: FileId): void;
  /** All files that `file` uses, directly or not, itself first. */
  reaches(file: FileId): readonly FileId[];
  /** Fixes of the findings that touch `range`. */
  fixesIn(file: FileId, range: Range): readonly OfferedFix[];
  /** The least change that clears a shot, or why there is none; null: no shot that can be read. */
  solve(file: FileId, shot: string): SolvedShot | null;
  /** The same in slices. */
  startSolving(file: FileId, shot: string): Making<SolvedShot | null>;
  /** Of each lens that shots of the plan use, or of that one: what to measure of it next. */
  measure(file: FileId, lens?: string): readonly MeasureAdvice[];
  /** One thing that is known of a lens, as its name and its value in words. */
  measuredWords(known: KnownOfLens): readonly [label: string, words: string];
  hover(file: FileId, position: Position): Hover | null;
  /** What may be written at `position`; what each is for and would do is told by `explain`. */
  completions(file: FileId, position: Position): Completions;
  /** Markdown on something that was offered; null where there is no more to say. */
  explain(file: FileId, about: About): string | null;
  /** A shot of the first subject, rig and light of a file, as block YAML; null: one is lacking. */
  newShot(file: FileId, fieldMm?: number): string | null;
  hints(file: FileId, range: Range): readonly InlayHint[];
  /** Where lenses stand, without their words: cheap in plans of any length. */
  lenses(file: FileId): readonly ShotLens[];
  /**
   * The state of a shot in a few words, those kinds left out; '' where that leaves nothing to say.
   * null: there is no such shot.
   */
  lensWords(file: FileId, shot: string, without?: ReadonlySet<LensKind>): string | null;
  /** Swatches of film thicknesses, where they stand. */
  colours(file: FileId): readonly ColourSwatch[];
  symbols(file: FileId): readonly OutlineSymbol[];
  definition(file: FileId, position: Position): LocatedPlace | null;
  /** Every place where the name under `position` stands in the given files, its definition first. */
  references(file: FileId, position: Position): readonly LocatedPlace[];
  renamable(
    file: FileId,
    position: Position,
  ): { readonly range: Range; readonly name: string } | null;
  rename(file: FileId, position: Position, newName: string): Renaming;
  /** Paths of used plans and of clips, where they lead to a file of the workspace. */
  links(file: FileId): readonly FileLink[];
  /**
   * Edits of a plan so that its paths still lead where they led, once files have moved.
   * @param to where each file is then; a file that stays is itself
   */
  moved(file: FileId, to: (file: FileId) => FileId): readonly LocatedEdit[];
  /**
   * Edits that list files, by their URIs, as clips of the shot whose `clips` are at `position`;
   * none elsewhere.
   */
  dropClips(file: FileId, position: Position, clips: readonly FileId[]): DroppedClips;
  /** Names where they are defined and used, in the order of the text; `lines`: both counted. */
  names(file: FileId, lines?: FormatLines): readonly NameToken[];
  /** Edits that lay the file, or some of its lines, out; what is read stays the same. */
  format(file: FileId, options: FormatOptions, lines?: FormatLines): readonly LocatedEdit[];
  /** Edits that indent the line at `position`, which was just begun. */
  formatNewLine(file: FileId, position: Position): readonly LocatedEdit[];
  /** What a growing selection takes in, innermost first. */
  selection(file: FileId, position: Position): readonly Range[];
  /** Entries of all given files by a part of their name. */
  findEntries(query: string): readonly FoundEntry[];
  /** Figures of every shot of a plan, by the shot's name, in the order of the text. */
  figures(file: FileId): ReadonlyMap<string, ShotFiguresJson>;
  /** What a plan's takes come to on each body. */
  recording(file: FileId): readonly BodyRecordingJson[];
  /** The clips that a plan lists, in the order of its text. */
  clips(file: FileId): readonly PlanClip[];
  /**
   * What clips that a host has read are, against what their shots ask, at their place in the plan.
   * @param readings by path; a clip that has none was not looked at
   */
  checkClips(file: FileId, readings: ReadonlyMap<string, ClipReading>): readonly LocatedFinding[];
  /** What to look for in the pictures of a shot's clips; null: there is no such shot. */
  lookAsk(file: FileId, shot: string): LookAsk | null;
  /** The cuts of the edit that use clips which were read, and what those lack at their ends. */
  cutCoverage(file: FileId, readings: ReadonlyMap<string, ClipReading>): readonly CoveredCut[];
  /** The same of a clip that the plan needn't list; null: there is no such shot. */
  testClip(
    file: FileId,
    shot: string,
    path: string,
    reading: ClipReading,
  ): readonly LocatedFinding[] | null;
  /** What a plan's edit comes to; null where it has no cuts. */
  editFigures(file: FileId): EditJson | null;
  /** The hours of a plan's day; null where it has none that can be read. */
  dayFigures(file: FileId): DayJson | null;
  /** The edit as a file for an editing program or a spreadsheet. */
  timeline(file: FileId, format: TimelineFormat, options?: TimelineOptions): TimelineFile;
  /** A plan and all that it uses, as report/compare takes it. */
  compared(file: FileId): ComparedPlan;
  /** The same in slices. */
  startComparing(file: FileId): Making<ComparedPlan>;
  /**
   * The sheet of a plan; its text and drawings are made by report/sheet. What is filled in by hand is
   * left out where it is only read.
   */
  sheet(file: FileId, use?: { readonly isWrittenOn: boolean }): Sheet;
  /** The same in slices. */
  startSheet(file: FileId, use?: { readonly isWrittenOn: boolean }): Making<Sheet>;
  /**
   * A shot's frame, traced from the plan; null: no shot that can be read.
   * @param width in pixels, a whole number from 1; the height follows from what is recorded
   */
  frame(file: FileId, shot: string, width: number): DrawnFrame | null;
  /** The same in slices: the figures are those of now, whatever is edited meanwhile. */
  startFrame(file: FileId, shot: string, width: number): FrameInMaking | null;
  /** Where a key of a shot stands, or the shot's name where the key isn't written. */
  placeInShot(file: FileId, shot: string, key: string): LocatedPlace | null;
  /**
   * The edits that set a key of a shot to what was chosen in its sheet; none where no drawing sets
   * that key, the text is no value of it, or there is no such shot.
   */
  setInShot(file: FileId, shot: string, key: string, text: string): readonly LocatedEdit[];
  /** The edits that tick a check or open it again; none where the plan has no such check. */
  tickCheck(file: FileId, tick: Tick): readonly LocatedEdit[];
  /** Where a cut of the edit stands. */
  placeOfCut(file: FileId, cut: string): LocatedPlace | null;
  /** The shot that stands at a position. */
  shotAt(file: FileId, position: Position): string | null;
  /** What of the live sheet belongs to the line of a position. */
  shownAt(file: FileId, position: Position): ShownAt;
  /**
   * Works ahead on `file`, entry by entry, until `until` answers true; what was done is kept.
   * True once nothing is left, and `findings` answers at once.
   */
  prepare(file: FileId, until: () => boolean): boolean;
  /** The whole text of a given file; undefined: it was not given. */
  text(file: FileId): string | undefined;
}

export interface CoreOptions {
  /** The workspace folder that a file may use others from, as a URI. */
  rootOf(file: FileId): FileId;
  /** Further folders that `file` may use others from; left out: none. */
  otherRoots?(file: FileId): readonly FileId[];
  /** Plan files that there are to use, as far as the host knows. */
  planFiles?(): readonly FileId[];
  /** Read at each use. */
  readonly lengths?: LengthUnit;
}
