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
export const documentSelector = (): DocumentSelector => {
  const folders = workspace.workspaceFolders ?? [];
  const schemes = new Set([...USUAL_SCHEMES, ...folders.map((folder) => folder.uri.scheme)]);
  return [...schemes].map((scheme) => ({ language: LANGUAGE, scheme }));
};
