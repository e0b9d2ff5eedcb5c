/** The edit of the active plan as a file for an editing program, or a shot list for a spreadsheet. */
import { l10n, window, workspace } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import type { TimelineFile } from '../shared/api/timeline.ts';
import { LANGUAGE } from './documents.ts';

const PLAN_SUFFIX = /\.shootplan\.ya?ml$/;

export const exportTimeline = async (client: BaseLanguageClient): Promise<void> => {
  const document = window.activeTextEditor?.document;
  if (document?.languageId !== LANGUAGE) {
    void window.showInformationMessage(l10n.t('Open a shoot plan first.'));
    return;
  }
  const { uri } = document;
  const named = uri.path.replace(PLAN_SUFFIX, '');
  const target = await window.showSaveDialog({
    defaultUri: uri.with({ path: `${named}.otio` }),
    filters: {
      OpenTimelineIO: ['otio'],
      FCPXML: ['fcpxml'],
      'CMX 3600 EDL': ['edl'],
      [l10n.t('Shot list')]: ['csv'],
    },
    title: l10n.t('Export the Edit'),
  });
  if (!target) return;
  const settings = workspace.getConfiguration('lamella', uri);
  const made = await client.sendRequest<TimelineFile | null>('lamella/timeline', {
    textDocument: { uri: client.code2ProtocolConverter.asUri(uri) },
    format: /\.([a-z]+)$/i.exec(target.path)?.[1]?.toLowerCase() ?? 'otio',
    target: client.code2ProtocolConverter.asUri(target),
    media: settings.get<string>('media', ''),
    startTimecode: settings.get<string>('startTimecode', ''),
  });
  if (!made) return;
  if (!made.ok) {
    void window.showWarningMessage(l10n.t('Nothing to export: {0}.', made.why));
    return;
  }
  await workspace.fs.writeFile(target, new TextEncoder().encode(made.text));
  const where = l10n.t('Exported to {0}', workspace.asRelativePath(target));
  if (made.notes.length === 0) void window.showInformationMessage(where);
  else void window.showWarningMessage([`${where}.`, ...made.notes].join(' '));
};
