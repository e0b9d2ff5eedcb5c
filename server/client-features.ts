/** What the client on the other end can do, read once from what it said of itself. */
import { DiagnosticTag, type InitializeParams, MarkupKind } from 'vscode-languageserver';
import type { Host } from './host.ts';

interface CompletionFeatures {
  readonly snippets: boolean;
  readonly markdown: boolean;
  readonly preselect: boolean;
  readonly labelDetails: boolean;
  /** It can be told that new lines are indented already. */
  readonly insertModes: boolean;
  /** It opens the list again where an item says so. */
  readonly asksAgain: boolean;
}

export interface ClientFeatures {
  /** It asks for findings; else they are sent to it. Never both. */
  readonly pullsDiagnostics: boolean;
  readonly refreshesDiagnostics: boolean;
  readonly relatedDocuments: boolean;
  readonly relatedInformation: boolean;
  readonly tagsUnused: boolean;
  /** Where the page of a rule is, as an address with `{rule}` in it; null: codes lead nowhere. */
  readonly rulePage: string | null;
  readonly refreshesHints: boolean;
  readonly refreshesLenses: boolean;
  readonly refreshesTokens: boolean;
  readonly registersWatchers: boolean;
  readonly registersSettings: boolean;
  readonly answersSettings: boolean;
  readonly workspaceFolders: boolean;
  /** It asks before it renames files, and says when it has. */
  readonly renamesFiles: boolean;
  readonly hierarchicalSymbols: boolean;
  readonly codeActions: boolean;
  readonly preferredActions: boolean;
  readonly versionedEdits: boolean;
  readonly preparesRename: boolean;
  readonly markdown: boolean;
  /** What it makes of what may be written at a caret. */
  readonly completion: CompletionFeatures;
  /** It has a command that shows how a shot is solved before it applies it. */
  readonly showsSolving: boolean;
  /** It has a command that shows the sheet of a plan at a shot. */
  readonly showsSheets: boolean;
  /** It shows pictures that stand in a hover's Markdown. */
  readonly showsImages: boolean;
  /** It asked for `lamella/state`. */
  readonly wantsState: boolean;
}

export function clientFeatures(
  params: InitializeParams,
  host: Pick<Host, 'rulePage'>,
): ClientFeatures {
  // Some clients write null for what they don't have.
  const textDocument = params.capabilities.textDocument ?? {};
  const workspace = params.capabilities.workspace ?? {};
  const { diagnostic, publishDiagnostics, codeAction } = textDocument;
  const { rulePage } = optionsOf(params);
  const showsPages =
    publishDiagnostics?.codeDescriptionSupport === true ||
    diagnostic?.codeDescriptionSupport === true;
  const tags = [
    ...(publishDiagnostics?.tagSupport?.valueSet ?? []),
    ...(diagnostic?.tagSupport?.valueSet ?? []),
  ];
  return {
    pullsDiagnostics: Boolean(diagnostic),
    rulePage: showsPages
      ? typeof rulePage === 'string'
        ? rulePage
        : (host.rulePage ?? null)
      : null,
    refreshesDiagnostics: workspace.diagnostics?.refreshSupport === true,
    relatedDocuments: diagnostic?.relatedDocumentSupport === true,
    relatedInformation:
      publishDiagnostics?.relatedInformation === true || diagnostic?.relatedInformation === true,
    tagsUnused: tags.includes(DiagnosticTag.Unnecessary),
    refreshesHints: workspace.inlayHint?.refreshSupport === true,
    refreshesLenses: workspace.codeLens?.refreshSupport === true,
    refreshesTokens: workspace.semanticTokens?.refreshSupport === true,
    registersWatchers: workspace.didChangeWatchedFiles?.dynamicRegistration === true,
    registersSettings: workspace.didChangeConfiguration?.dynamicRegistration === true,
    answersSettings: workspace.configuration === true,
    workspaceFolders: workspace.workspaceFolders === true,
    renamesFiles: workspace.fileOperations?.willRename === true,
    hierarchicalSymbols: textDocument.documentSymbol?.hierarchicalDocumentSymbolSupport === true,
    codeActions: codeAction?.codeActionLiteralSupport !== undefined,
    preferredActions: codeAction?.isPreferredSupport === true,
    versionedEdits: workspace.workspaceEdit?.documentChanges === true,
    preparesRename: textDocument.rename?.prepareSupport === true,
    completion: completionFeatures(params),
    markdown: (textDocument.hover?.contentFormat ?? []).includes(MarkupKind.Markdown),
    showsSolving: optionsOf(params).solving === true,
    showsSheets: optionsOf(params).sheets === true,
    showsImages: optionsOf(params).images === true,
    wantsState: optionsOf(params).state === true,
  };
}

function completionFeatures(params: InitializeParams): CompletionFeatures {
  const item = params.capabilities.textDocument?.completion?.completionItem ?? {};
  return {
    snippets: item.snippetSupport === true,
    markdown: (item.documentationFormat ?? []).includes(MarkupKind.Markdown),
    preselect: item.preselectSupport === true,
    labelDetails: item.labelDetailsSupport === true,
    insertModes: item.insertTextModeSupport !== undefined,
    asksAgain: optionsOf(params).asksAgain === true,
  };
}

/** What the client sent along for this server; anything else counts as nothing sent. */
interface InitializationOptions {
  /** 'mm' or 'inches': the unit that lengths are shown in. */
  readonly lengths?: unknown;
  /** true: the client runs `editor.action.triggerSuggest` behind an item that asks for it. */
  readonly asksAgain?: unknown;
  /** true: the client answers `lamella/planFiles`. */
  readonly listsPlans?: unknown;
  /** true: name the command `lamella.solveShot` in code actions. */
  readonly solving?: unknown;
  /** 'tidy' or 'keep': what formatting does to columns that were aligned by hand. */
  readonly align?: unknown;
  /** The address of a rule's page, with `{rule}` in place of its name. */
  readonly rulePage?: unknown;
  /** false: no lenses over shots; `lenses` is an older name. */
  readonly codeLens?: unknown;
  readonly lenses?: unknown;
  /** Parts of the lenses, and kinds of hints, that are shown: yes or no by name. */
  readonly codeLenses?: unknown;
  readonly hints?: unknown;
  /** true: lenses name the command `lamella.openSheet`. */
  readonly sheets?: unknown;
  /** true: hovers may have pictures, as `data:` addresses in their Markdown. */
  readonly images?: unknown;
  /** true: send `lamella/state` after each check. */
  readonly state?: unknown;
  /** Message to text, as shared/words/messages.json has them, in the language that `locale` names. */
  readonly translation?: unknown;
}

export const optionsOf = ({ initializationOptions }: InitializeParams): InitializationOptions =>
  typeof initializationOptions === 'object' && initializationOptions !== null
    ? initializationOptions
    : {};
