/** Wherever a marked aperture is named as a way out, the lens can be set to it. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MARKED_APERTURES } from '../../shared/optics/apertures.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { changed, coreWith, PLAN } from '../support/plans.ts';

/** What names a mark to set, in hovers, findings, titles of fixes and on the sheet. */
const NAMED =
  /f\/([\d.]+) is nearest on the lens|(?:nearest on the lens|nearest marked f-number) is f\/([\d.]+?)\.?(?=\s|"|$)|(?:Stop down|Open|Open up) to f\/([\d.]+)|keep most at f\/([\d.]+)|f\/([\d.]+) marked/g;

function marksNamed(text: string): number[] {
  const core = coreWith(text);
  const lines = text.split('\n');
  const line = lines.findIndex(
    (it) => it.trimStart().startsWith('aperture: f/') && !it.includes(' to '),
  );
  const character = lines[line]!.indexOf('f/') + 1;
  const said = [
    core.hover(PLAN, { line, character })?.markdown ?? '',
    JSON.stringify(core.sheet(PLAN)),
    ...core
      .findings(PLAN)
      .flatMap((finding) => [
        finding.what,
        finding.why ?? '',
        ...core.fixesOf(finding).map(({ title }) => title),
      ]),
  ];
  return said.flatMap((one) =>
    [...one.matchAll(NAMED)].map((match) =>
      Number(match.slice(1).find((mark) => mark !== undefined)),
    ),
  );
}

describe('a marked aperture that is named', () => {
  it('is one that the lens has', () => {
    let named = 0;
    fc.assert(
      fc.property(
        fc.constantFrom('f/2.8 to 8', 'f/4 to 16', 'f/5.6 to 22', 'f/2.8 to 32'),
        fc.constantFrom(36, 45, 60, 120),
        fc.constantFrom(0.2, 1.5, 6, 25),
        fc.nat(8),
        (range, field, depth, step) => {
          const [from, to] = range.slice(2).split(' to ').map(Number) as [number, number];
          const onLens = MARKED_APERTURES.filter((mark) => mark >= from && mark <= to);
          const set = onLens[Math.min(step * 2, onLens.length - 1)]!;
          const text = changed(EXAMPLE_PLAN, {
            'kit/lenses/macro-100/aperture': range,
            'shots/skin': null,
            'shots/frost/field': `${field} mm`,
            'subjects/frost-plate/depth': `${depth} mm`,
            'shots/frost/aperture': `f/${set}`,
          });
          const marks = marksNamed(text);
          named += marks.length;
          for (const mark of marks) expect(onLens, `f/${mark}`).toContain(mark);
        },
      ),
      { numRuns: 20 },
    );
    expect(named).toBeGreaterThan(8);
  });
});
