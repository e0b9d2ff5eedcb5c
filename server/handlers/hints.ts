import type { InlayHint, Range } from 'vscode-languageserver';
import type { Core } from '../../shared/api/facade.ts';
import type { FileId } from '../../shared/plan/place.ts';

export const hints = (core: Core, file: FileId, range: Range): InlayHint[] =>
  core.hints(file, range).map(({ position, label, tooltip }) => ({
    position,
    label,
    paddingLeft: true,
    ...(tooltip !== undefined && { tooltip }),
  }));
