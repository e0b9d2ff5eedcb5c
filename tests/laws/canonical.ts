/** Everything that a core says of a file, as text that can be compared. */

import type { Core } from '../../shared/api/facade.ts';
import type { Position } from '../../shared/api/located.ts';
import type { FileId } from '../../shared/plan/place.ts';

/** Figures, the edit, what is recorded, findings, outline and state; numbers as they are. */
export function canonical(core: Core, file: FileId): string {
  const findings = core.findings(file).map((finding) => JSON.stringify(finding));
  return JSON.stringify(
    {
      figures: [...core.figures(file)],
      edit: core.editFigures(file),
      day: core.dayFigures(file),
      recording: core.recording(file),
      findings: findings.sort(),
      symbols: core.symbols(file),
      state: core.state(file),
    },
    null,
    1,
  );
}

/** Where an offset of a text stands. */
export function positionAt(text: string, offset: number): Position {
  const before = text.slice(0, offset).split(/\r\n|\r|\n/);
  return { line: before.length - 1, character: before.at(-1)!.length };
}
