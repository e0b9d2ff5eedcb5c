import { ConfigurationTarget, l10n, window, workspace } from 'vscode';

const LONGEST = 40;

/** Whose initials go with the checks that are ticked: a setting, asked for once where it is empty. */
export class Initials {
  #isAsked = false;

  /** '': nobody is to be named. */
  async get(): Promise<string> {
    const settings = workspace.getConfiguration('lamella');
    const set = settings.get('initials', '');
    if (set !== '' || this.#isAsked) return set;
    this.#isAsked = true;
    const given = await window.showInputBox({
      title: l10n.t('Initials for checks'),
      prompt: l10n.t('They are written beside the checks that you tick. Empty: only the date.'),
      validateInput: (text) =>
        text.length > LONGEST ? l10n.t('Use at most {0} characters.', LONGEST) : undefined,
    });
    const initials = given?.trim() ?? '';
    if (initials !== '') await settings.update('initials', initials, ConfigurationTarget.Global);
    return initials;
  }
}
