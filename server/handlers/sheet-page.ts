/** The sheet as one page of HTML with nothing from outside: to be filled in, saved or printed. */
import type { CancellationToken } from 'vscode-languageserver';
import type { PageFrame } from '../../shared/api/frame.ts';
import type { Sheet } from '../../shared/api/sheet.ts';
import type { FileId } from '../../shared/plan/place.ts';
import { sheetPage } from '../../shared/report/sheet/html.ts';
import { pageStyle } from '../../shared/report/sheet/style.ts';
import { Say } from '../../shared/say/say.ts';
import { FRAME_WIDTH, hashOf } from '../page-parts.ts';
import type { Session } from '../session.ts';
import { inSlices } from '../slices.ts';
import { shotFrame } from './frame.ts';

export interface SheetPageParams {
  readonly textDocument: { readonly uri: string };
  /** What makes the page one to fill in: the client has it beside its own. */
  readonly script: string;
  /** It asks the browser to print it when it is opened. */
  readonly prints?: boolean;
}

/** Answer to `lamella/sheetPage`; null: it was cancelled. */
export async function sheetPageOf(
  { core, settings, standBack }: Pick<Session, 'core' | 'settings' | 'standBack'>,
  file: FileId,
  { script, prints = false }: Omit<SheetPageParams, 'textDocument'>,
  token: CancellationToken,
): Promise<string | null> {
  const making = core.startSheet(file, { isWrittenOn: true });
  const sheet = (await inSlices((until) => making.work(until), token, standBack))?.answer;
  if (!sheet) return null;
  const frames = new Map<string, PageFrame>();
  for (const { name: shot } of sheet.shots) {
    const params = { textDocument: { uri: file }, shot, width: FRAME_WIDTH };
    const frame = await shotFrame(core, file, params, token, standBack);
    if (token.isCancellationRequested) return null;
    if (frame) frames.set(shot, frame);
  }
  return pageWith(sheet, { say: new Say(() => settings.lengths), frames }, String(script), prints);
}

/** The page's policy allows its own style and script by their hashes, and no other. */
export async function pageWith(
  sheet: Sheet,
  options: Pick<Parameters<typeof sheetPage>[1], 'say' | 'frames'>,
  script: string,
  prints = false,
): Promise<string> {
  const fill = { script, scriptHash: await hashOf(script), prints };
  return sheetPage(sheet, { ...options, fill }, await hashOf(pageStyle(true)));
}
