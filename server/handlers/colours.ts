import type { ColorInformation } from 'vscode-languageserver';
import type { Core } from '../../shared/api/facade.ts';
import type { FileId } from '../../shared/plan/place.ts';

/** Swatches of film thicknesses. A film's colour follows from its thickness, so none is offered. */
export const colours = (core: Core, file: FileId): ColorInformation[] =>
  core
    .colours(file)
    .map(({ range, red, green, blue }) => ({ range, color: { red, green, blue, alpha: 1 } }));
