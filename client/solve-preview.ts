/**
 * How a shot is solved, before it is: the plan beside the plan as it would be, and a list in which
 * each change is ticked or not. What remains and what it costs follow the ticks.
 */
import {
  commands,
  Disposable,
  EventEmitter,
  l10n,
  type QuickPickItem,
  TabInputTextDiff,
  type TextDocument,
  type TextDocumentContentProvider,
  Uri,
  window,
  workspace,
} from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import type { SolveAnswer, SolvingChange } from '../server/handlers/solve.ts';
import type { SolvedPartly } from '../server/handlers/solve-partly.ts';

/** An answer that has changes. */
type Solving = SolveAnswer & { readonly changes: readonly SolvingChange[] };

interface ChangeItem extends QuickPickItem {
  readonly change: SolvingChange;
}

/** Results that fit the one line for them. */
const MOST_FOLLOWS = 3;
const SETTLED_MS = 50;

export class SolvePreview implements TextDocumentContentProvider {
  static readonly scheme = 'lamella-solved';
  readonly #texts = new Map<string, string>();
  readonly #changed = new EventEmitter<Uri>();
  readonly onDidChange = this.#changed.event;

  provideTextDocumentContent(uri: Uri): string {
    return this.#texts.get(uri.path) ?? '';
  }

  /** The changes that were ticked and accepted; undefined: none are made, or the plan was edited. */
  async choose(
    client: BaseLanguageClient,
    plan: TextDocument,
    shot: string,
    solving: Solving,
  ): Promise<readonly SolvingChange[] | undefined> {
    const ask = (changes: readonly SolvingChange[]) =>
      client.sendRequest<SolvedPartly | null>('lamella/solvePartly', {
        textDocument: { uri: client.code2ProtocolConverter.asUri(plan.uri) },
        shot,
        version: solving.version,
        edits: changes.flatMap(({ edits }) => edits),
      });
    const all = await ask(solving.changes);
    if (!all) {
      sayChanged();
      return undefined;
    }
    // Of the plan's name, so that the editor colours it as one.
    const solved = Uri.from({ scheme: SolvePreview.scheme, path: plan.uri.path });
    this.#show(solved, all.text);
    await this.#open(plan, solved, shot, solving);
    try {
      return await this.#ticked(plan, shot, solving, all, async (changes) => {
        const partly = await ask(changes);
        if (partly) this.#show(solved, partly.text);
        return partly;
      });
    } finally {
      await closeDiffWith(solved);
      this.#texts.delete(solved.path);
    }
  }

  #show(uri: Uri, text: string): void {
    this.#texts.set(uri.path, text);
    this.#changed.fire(uri);
  }

  async #open(plan: TextDocument, solved: Uri, shot: string, { changes }: Solving): Promise<void> {
    const lines = changes.flatMap(({ edits }) => edits.map(({ range }) => range.start.line));
    const at = plan.lineAt(Math.min(...lines, plan.lineCount - 1)).range;
    const title = l10n.t('{0} as it is and solved', shot);
    const options = { preview: true, preserveFocus: true, selection: at };
    await commands.executeCommand('vscode.diff', plan.uri, solved, title, options);
  }

  #ticked(
    plan: TextDocument,
    shot: string,
    { changes }: Solving,
    all: SolvedPartly,
    look: (changes: readonly SolvingChange[]) => Promise<SolvedPartly | null>,
  ): Promise<readonly SolvingChange[] | undefined> {
    const list = window.createQuickPick<ChangeItem>();
    list.canSelectMany = true;
    // The diff may be scrolled meanwhile.
    list.ignoreFocusOut = true;
    list.matchOnDescription = true;
    let ticked: readonly SolvingChange[] = changes;
    let turn = 0;
    let soon: ReturnType<typeof setTimeout> | undefined;
    // In the order of the changes, whatever was ticked first.
    const tickedIn = () =>
      changes.filter((change) => list.selectedItems.some((item) => item.change === change));
    const tell = (partly: SolvedPartly): void => {
      list.title = titleOf(shot, changes.length, ticked.length, partly);
      list.placeholder = costOf(partly);
      const items = changes.map((change) => itemOf(change, ticked.includes(change), partly));
      list.items = items;
      list.selectedItems = items.filter(({ change }) => ticked.includes(change));
    };
    const retick = async (): Promise<void> => {
      const own = ++turn;
      list.busy = true;
      const partly = await look(ticked);
      if (own !== turn) return;
      list.busy = false;
      if (partly) tell(partly);
      else list.hide();
    };
    tell(all);
    return new Promise((resolve) => {
      const close = (chosen: readonly SolvingChange[] | undefined): void => {
        turn++;
        clearTimeout(soon);
        resolve(chosen);
        watching.dispose();
      };
      const watching = Disposable.from(
        list,
        list.onDidChangeSelection(() => {
          clearTimeout(soon);
          // New items are heard of as a list without ticks, before theirs are set.
          soon = setTimeout(() => {
            const now = tickedIn();
            if (now.length === ticked.length && now.every((each) => ticked.includes(each))) return;
            ticked = now;
            void retick();
          }, SETTLED_MS);
        }),
        list.onDidAccept(() => close(tickedIn())),
        list.onDidHide(() => close(undefined)),
        workspace.onDidChangeTextDocument(({ document, contentChanges }) => {
          if (document !== plan || contentChanges.length === 0) return;
          sayChanged();
          close(undefined);
        }),
      );
      list.show();
    });
  }
}

export const sayChanged = (): void =>
  void window.showWarningMessage(l10n.t('The plan was changed meanwhile. Solve the shot again.'));

const titleOf = (shot: string, of: number, ticked: number, { left }: SolvedPartly): string => {
  const changes = l10n.t('Solve {0}: {1} of {2} changes', shot, ticked, of);
  const remaining =
    left.length === 0
      ? l10n.t('no errors or warnings left')
      : left.length === 1
        ? l10n.t('1 finding left')
        : l10n.t('{0} findings left', left.length);
  return `${changes}, ${remaining}`;
};

const costOf = ({ follows }: SolvedPartly): string =>
  follows.length === 0 ? l10n.t('Nothing changes.') : follows.slice(0, MOST_FOLLOWS).join(' · ');

/** Ticked: what returns without it. Not ticked: what of that is found now. */
const itemOf = (change: SolvingChange, isTicked: boolean, { left }: SolvedPartly): ChangeItem => {
  const { setting, from, to, because } = change;
  const found = left.filter(({ rule }) => because.some((one) => one.rule === rule));
  const why = (isTicked ? because : found).map(({ what }) => what).join(' ');
  const lead = isTicked ? l10n.t('Without it: {0}', why) : l10n.t('Left: {0}', why);
  return {
    label: setting,
    description: `${from} \u2192 ${to}`,
    ...(why !== '' && { detail: lead }),
    picked: isTicked,
    change,
  };
};

const closeDiffWith = async (solved: Uri): Promise<void> => {
  const tabs = window.tabGroups.all.flatMap((group) => group.tabs);
  const shown = tabs.filter(
    ({ input }) =>
      input instanceof TabInputTextDiff && input.modified.toString() === solved.toString(),
  );
  await window.tabGroups.close(shown);
};
