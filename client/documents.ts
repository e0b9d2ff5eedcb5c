import { workspace } from 'vscode';
import type { DocumentSelector } from 'vscode-languageclient';

/** The language's id in the editor; package.json declares it. */
export const LANGUAGE = 'shootplan';

/** Where plans live besides the workspace's own folders, which may be virtual. */
const USUAL_SCHEMES = ['file', 'untitled', 'vscode-remote', 'vscode-vfs'];

/**
 * The plans to look at: by scheme, since an earlier revision shown in a comparison (`git:`) has
 * the language too, and its findings would stand in the Problems list a second time.
 */
export const planSchemes = (): readonly string[] => {
  const folders = workspace.workspaceFolders ?? [];
  return [...new Set([...USUAL_SCHEMES, ...folders.map((folder) => folder.uri.scheme)])];
};

export const documentSelector = (): DocumentSelector =>
  planSchemes().map((scheme) => ({ language: LANGUAGE, scheme }));
