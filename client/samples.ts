/** Open a Sample: one of the plans that come with the extension, copied to where it may be changed. */
import { FileSystemError, l10n, Uri, window, workspace } from 'vscode';
import { freeName } from './free-name.ts';

interface Sample {
  readonly name: string;
  readonly about: string;
  /** Files that it uses. */
  readonly uses?: readonly string[];
}

const SUFFIX = '.shootplan.yaml';

const SAMPLES = (): readonly Sample[] => [
  { name: 'first-draft', about: l10n.t('salt and sugar crystals, with mistakes to fix') },
  { name: 'slick', about: l10n.t('oil on water') },
  { name: 'lantern', about: l10n.t('a soap bubble'), uses: ['workshop-kit'] },
  { name: 'tide-panes', about: l10n.t('a soap film in a frame'), uses: ['workshop-kit'] },
  { name: 'first-drop', about: l10n.t('a drop, filmed fast') },
  { name: 'salt-garden', about: l10n.t('crystals that grow, and a day of shots') },
  { name: 'alum-tray', about: l10n.t('crystals as a time-lapse') },
  { name: 'watch-movement', about: l10n.t('a watch movement, with a focus stack and an edit') },
  { name: 'moth-wings', about: l10n.t('moth wings, with a lens that was measured') },
  {
    name: 'from-sheets',
    about: l10n.t('wax, a film and a bubble, with kit as data sheets give it'),
  },
];

export const openSample = async (extension: Uri): Promise<void> => {
  const chosen = await window.showQuickPick(
    SAMPLES().map((sample) => ({ label: sample.name, description: sample.about, sample })),
    { title: l10n.t('Open a sample'), matchOnDescription: true },
  );
  const folder = chosen && (await chosenFolder());
  if (!folder) return;
  const { name, uses = [] } = chosen.sample;
  const read = (each: string) =>
    workspace.fs.readFile(Uri.joinPath(extension, `samples/${each}${SUFFIX}`));
  try {
    for (const each of uses) {
      const to = Uri.joinPath(folder, each + SUFFIX);
      if (!(await exists(to))) await workspace.fs.writeFile(to, await read(each));
    }
    const plan = Uri.joinPath(
      folder,
      await freeName(name, SUFFIX, (each) => exists(Uri.joinPath(folder, each))),
    );
    await workspace.fs.writeFile(plan, await read(name));
    await window.showTextDocument(await workspace.openTextDocument(plan));
  } catch (cause) {
    const why = cause instanceof Error ? cause.message : String(cause);
    void window.showErrorMessage(l10n.t("The sample can't be copied to this folder: {0}", why));
  }
};

/** The folder that is open, or one that is asked for; undefined: called off. */
const chosenFolder = async (): Promise<Uri | undefined> => {
  const other = { label: l10n.t('Another folder…'), uri: undefined };
  const open = (workspace.workspaceFolders ?? []).map(({ name, uri }) => ({ label: name, uri }));
  const chosen =
    open.length === 0
      ? other
      : await window.showQuickPick([...open, other], { title: l10n.t('Copy the sample to') });
  if (!chosen || chosen.uri) return chosen?.uri;
  const folders = await window.showOpenDialog({
    canSelectFolders: true,
    canSelectFiles: false,
    openLabel: l10n.t('Copy the Sample Here'),
  });
  return folders?.[0];
};

export const exists = async (uri: Uri): Promise<boolean> => {
  try {
    await workspace.fs.stat(uri);
    return true;
  } catch (cause) {
    if (cause instanceof FileSystemError && cause.code === 'FileNotFound') return false;
    throw cause;
  }
};
