/** What `lamella check` says of a folder, for a task of the editor: `lamella/check`. */
import type { CancellationToken } from 'vscode-languageserver';
import type { Core } from '../../shared/api/facade.ts';
import type { FileId } from '../../shared/plan/place.ts';
import { textReport } from '../../shared/report/text.ts';
import { message } from '../../shared/words/message.ts';
import { EFFORT_OF_FILE, fixesWithin } from '../../shared/workspace/most-tried.ts';
import { canonicalUri, isBelow } from '../canonical-uri.ts';
import { COULD_NOT_RUN, FOUND, NOTHING_FOUND } from '../exit-status.ts';
import type { Host } from '../host.ts';
import type { Session } from '../session.ts';
import { MOST_FILES } from '../workspace/plan-files.ts';

export interface CheckFolderParams {
  readonly folder: string;
}

export interface CheckedFolder {
  /** The report in the terminal's colours; each line ends with a line feed. */
  readonly text: string;
  /** As the command line exits: 0, 1 where there is an error, 2 where a plan can't be read. */
  readonly status: number;
}

/** Plans as they are saved; null: cancelled. */
export async function checkFolder(
  session: Session,
  host: Host,
  { folder: uri }: CheckFolderParams,
  token: CancellationToken,
): Promise<CheckedFolder | null> {
  const { createCore, roots, settings } = session;
  const folder = canonicalUri(uri).replace(/\/$/, '');
  const listed = await session.allPlans();
  const core = createCore({
    rootOf: (each) => roots.of(each),
    otherRoots: (each) => roots.beside(each),
    get lengths() {
      return settings.lengths;
    },
  });
  const give = async (file: FileId): Promise<boolean> => {
    const text = await host.read(file, roots.of(file));
    if (text.ok) core.give(file, text.text);
    else core.refuse(file, text.why);
    return text.ok;
  };
  const nameOf = (file: FileId): string =>
    isBelow(folder, file)
      ? file
          .slice(folder.length + 1)
          .split('/')
          .map(decoded)
          .join('/')
      : file;
  const read: FileId[] = [];
  const unread: FileId[] = [];
  for (const file of listed.filter((each) => isBelow(folder, each)).sort()) {
    if (token.isCancellationRequested) return null;
    ((await give(file)) ? read : unread).push(file);
  }
  for (const file of read)
    for (let wanted = core.wanted(file); wanted.length > 0; wanted = core.wanted(file))
      for (const each of wanted) await give(each);
  const files = read.map((file) => ({ ...reported(core, file), name: nameOf(file), nameOf }));
  const problems = [
    ...unread.map((file) => message`${nameOf(file)} can't be read.`),
    ...(listed.length >= MOST_FILES ? [message`Only ${MOST_FILES} plans were searched.`] : []),
    ...(files.length === 0 ? [message`There are no plans in the folder.`] : []),
  ];
  const hasErrors = files.some(({ findings }) =>
    findings.some(({ finding }) => finding.severity === 'error'),
  );
  return {
    text: [
      files.length > 0 ? textReport(files, true) : '',
      ...problems.map((one) => `${one}\n`),
    ].join(''),
    status: problems.length > 0 ? COULD_NOT_RUN : hasErrors ? FOUND : NOTHING_FOUND,
  };
}

const reported = (core: Core, file: FileId) => {
  const found = core.findings(file);
  const fixes = fixesWithin(core, found, EFFORT_OF_FILE);
  return {
    findings: found.map((finding, index) => ({ finding, fixes: fixes[index] ?? [] })),
    line: (index: number) => core.line(file, index),
    state: core.state(file),
  };
};

const decoded = (step: string): string => {
  try {
    return decodeURIComponent(step);
  } catch {
    return step;
  }
};
