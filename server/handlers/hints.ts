import type { InlayHint, Range } from 'vscode-languageserver';
import type { Core } from '../../shared/api/facade.ts';
import type { FileId } from '../../shared/plan/place.ts';
import type { Settings } from '../settings.ts';

export const hints = (core: Core, settings: Settings, file: FileId, range: Range): InlayHint[] =>
  core
    .hints(file, range)
    .filter(({ kind }) => !settings.hintsLeftOut.has(kind))
    .map(({ position, label, tooltip }) => ({
      position,
      label,
      paddingLeft: true,
      ...(tooltip !== undefined && { tooltip }),
    }));
