/** Files that are renamed or moved: plans that name them, open or not, get the new paths. */
import type { FileOperationRegistrationOptions, WorkspaceEdit } from 'vscode-languageserver';
import type { FileId } from '../../shared/plan/place.ts';
import { message } from '../../shared/words/message.ts';
import { canonicalUri, isBelow } from '../canonical-uri.ts';
import type { Host } from '../host.ts';
import type { Session } from '../session.ts';
import { MOST_FILES } from '../workspace/plan-files.ts';
import { workspaceEdit } from './workspace-edit.ts';

interface MovedFile {
  readonly oldUri: string;
  readonly newUri: string;
}

/** Plans, what a plan lists as clips, and folders that may hold either. */
export const MOVED: FileOperationRegistrationOptions = {
  filters: [
    { pattern: { glob: '**/*.shootplan.yaml', matches: 'file' } },
    {
      pattern: {
        glob: '**/*.{mp4,m4v,mov,mkv,webm,avi,mxf,mts,m2ts,m2t,ts}',
        matches: 'file',
        options: { ignoreCase: true },
      },
    },
    { pattern: { glob: '**/*', matches: 'folder' } },
  ],
};

/** Before they move: edits of the texts at their old addresses; null: no plan names them. */
export async function editsForMoved(
  session: Session,
  host: Host,
  files: readonly MovedFile[],
): Promise<WorkspaceEdit | null> {
  const { core, client, createCore, documents, roots } = session;
  const to = movesOf(files);
  const open = documents.files.filter((file) => !documents.unread(file));
  const edits = open.flatMap((file) => core.moved(file, to));
  const others = await session.allPlans();
  if (others.length >= MOST_FILES)
    session.tell(message`Only ${MOST_FILES} plans were searched. Check \`use\` in the others.`);
  for (const file of others) {
    if (documents.has(file)) continue;
    const text = await host.read(file, roots.of(file));
    // What can't be read names nothing that anybody could follow either.
    if (!text.ok || documents.has(file)) continue;
    const alone = createCore({
      rootOf: (each) => roots.of(each),
      otherRoots: (each) => roots.beside(each),
    });
    alone.give(file, text.text);
    edits.push(...alone.moved(file, to));
  }
  return edits.length > 0 ? workspaceEdit(edits, client, documents) : null;
}

/** Where a file is then; itself where it stays. */
function movesOf(files: readonly MovedFile[]): (file: FileId) => FileId {
  const moves = files.map(({ oldUri, newUri }) => ({
    from: canonicalUri(oldUri).replace(/\/$/, ''),
    to: canonicalUri(newUri).replace(/\/$/, ''),
  }));
  return (file) => {
    // The innermost: a folder and a file in it may move at once.
    const [move] = moves
      .filter(({ from }) => from === file || isBelow(from, file))
      .sort((a, b) => b.from.length - a.from.length);
    return move ? move.to + file.slice(move.from.length) : file;
  };
}
