/** The sheet beside the text: what of it is new to the client, and where what it shows stands. */
import type { CancellationToken, Location, WorkspaceEdit } from 'vscode-languageserver';
import type { Core } from '../../shared/api/facade.ts';
import type { ShotSheet } from '../../shared/api/sheet.ts';
import type { FileId } from '../../shared/plan/place.ts';
import { markOf } from '../../shared/report/mark.ts';
import { sheetHead, shotHtml } from '../../shared/report/sheet/html.ts';
import { LIVE_STYLE, SHEET_STYLE } from '../../shared/report/sheet/style.ts';
import { Say } from '../../shared/say/say.ts';
import { languageInForce } from '../../shared/words/message.ts';
import type { Session } from '../session.ts';
import { inSlices } from '../slices.ts';
import type { Documents } from '../workspace/documents.ts';
import { workspaceEdit } from './workspace-edit.ts';

interface AboutText {
  readonly textDocument: { readonly uri: string };
}

export interface SheetParams extends AboutText {
  /** Mark by shot of what the client shows. */
  readonly known?: Readonly<Record<string, string>>;
}

/** A key of a shot, or a cut of the edit. */
export interface PlaceParams extends AboutText {
  readonly shot?: string;
  readonly key?: string;
  readonly cut?: string;
}

/** Answer to `lamella/sheet`. */
export interface LiveSheet {
  readonly title: string;
  /** Once, with the first answer; likewise what follows. */
  readonly style?: string;
  /** The language of its words, by BCP 47: 'en'. */
  readonly language?: string;
  /** What the drawings refer to. */
  readonly patterns?: string;
  readonly head: string;
  readonly shots: readonly LiveShot[];
}

interface LiveShot {
  readonly name: string;
  readonly mark: string;
  /** Left out where the client has it, by its mark. */
  readonly html?: string;
}

interface Made {
  readonly index: number;
  readonly mark: string;
  readonly html: string;
}

const made = new WeakMap<ShotSheet, Made>();

/** null: it was cancelled. */
export async function liveSheet(
  { core, settings, standBack }: Pick<Session, 'core' | 'settings' | 'standBack'>,
  file: FileId,
  known: Readonly<Record<string, string>> | undefined,
  token: CancellationToken,
): Promise<LiveSheet | null> {
  const making = core.startSheet(file);
  const sheet = (await inSlices((until) => making.work(until), token, standBack))?.answer;
  if (!sheet) return null;
  const options = { say: new Say(() => settings.lengths), live: true };
  const { patterns, head } = sheetHead(sheet, options);
  const shots: LiveShot[] = [];
  const pages = inSlices(
    (until) => {
      for (let index = shots.length; index < sheet.shots.length; index = shots.length) {
        const shot = sheet.shots[index]!;
        const { mark, html } = htmlOf(shot, index, options);
        shots.push({ name: shot.name, mark, ...(known?.[shot.name] !== mark && { html }) });
        if (until()) return null;
      }
      return shots;
    },
    token,
    standBack,
  );
  if ((await pages) === null) return null;
  return {
    title: sheet.title,
    ...(!known && { style: SHEET_STYLE + LIVE_STYLE, language: languageInForce(), patterns }),
    head,
    shots,
  };
}

function htmlOf(shot: ShotSheet, index: number, options: Parameters<typeof shotHtml>[2]): Made {
  const before = made.get(shot);
  if (before?.index === index) return before;
  const html = shotHtml(shot, index, options);
  const now = { index, html, mark: markOf(html) };
  made.set(shot, now);
  return now;
}

/** A value that was chosen in a drawing. */
export interface SetParams extends AboutText {
  readonly shot: string;
  readonly key: string;
  readonly value: string;
}

/** null: nothing to change. */
export function setInSheet(
  { core, client, documents }: Pick<Session, 'core' | 'client' | 'documents'>,
  file: FileId,
  { shot, key, value }: Omit<SetParams, 'textDocument'>,
): WorkspaceEdit | null {
  const edits = core.setInShot(file, String(shot), String(key), String(value));
  return edits.length > 0 ? workspaceEdit(edits, client, documents) : null;
}

/** A check that was ticked, or opened again. */
export interface TickParams extends AboutText {
  /** Left out or null: a check of the day. */
  readonly shot?: string | null;
  readonly check: string;
  /** The date of today, "2027-03-02", as the client has it; left out or null: open again. */
  readonly done?: string | null;
  readonly by?: string;
}

/** null: nothing to change. */
export function tickInSheet(
  { core, client, documents }: Pick<Session, 'core' | 'client' | 'documents'>,
  file: FileId,
  { shot = null, check, done = null, by = '' }: Omit<TickParams, 'textDocument'>,
): WorkspaceEdit | null {
  const edits = core.tickCheck(file, {
    shot: shot === null ? null : String(shot),
    check: String(check),
    done: done === null ? null : String(done),
    by: String(by),
  });
  return edits.length > 0 ? workspaceEdit(edits, client, documents) : null;
}

export function placeInSheet(
  core: Core,
  documents: Documents,
  file: FileId,
  { shot = '', key = '', cut }: Omit<PlaceParams, 'textDocument'>,
): Location | null {
  const place =
    cut === undefined
      ? core.placeInShot(file, String(shot), String(key))
      : core.placeOfCut(file, String(cut));
  return place && { uri: documents.uri(place.file), range: place.range };
}
