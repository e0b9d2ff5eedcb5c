/** A glossy subject is lit, and shows its lights; where in the frame is not calculated, which is said quietly. */
import { describe, expect, it } from 'vitest';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { changed, coreWith, findingsOf, PLAN } from '../support/plans.ts';

const glossy = changed(EXAMPLE_PLAN, { 'subjects/frost-plate/finish': 'gloss' });

function hoverAt(text: string, lineWith: string, word: string): string {
  const lines = text.split('\n');
  const line = lines.findIndex((it) => it.includes(lineWith));
  const character = lines[line]!.indexOf(word) + 1;
  return coreWith(text).hover(PLAN, { line, character })?.markdown ?? '';
}

describe('a glossy subject', () => {
  it('says in its figures that it has no mirror image of the frame', () => {
    const reasonsOf = (text: string) => coreWith(text).figures(PLAN).get('frost')!.notKnown;
    for (const figure of ['leastTiltDeg', 'tiltWindowDeg', 'blackShare', 'strayRatio'])
      expect(reasonsOf(glossy)[figure], figure).toBe(
        'a glossy subject has no mirror image of the whole frame',
      );
    expect(reasonsOf(EXAMPLE_PLAN).leastTiltDeg).toBe('the subject is not a flat mirror');
    const { reflectance, highlightStops } = coreWith(glossy).figures(PLAN).get('frost')!;
    expect(reflectance).toBe(0.04);
    expect(highlightStops).toBeTypeOf('number');
    expect(reasonsOf(EXAMPLE_PLAN).highlightStops).toBe('the subject is not glossy');
    expect(reasonsOf(glossy).lifeS).toBe('the subject is not a film');
  });

  it('says so at its finish and where a shot names it', () => {
    expect(hoverAt(glossy, 'finish: gloss', 'gloss')).toMatch(/not (?:judged|checked|calculated)/);
    expect(hoverAt(glossy, 'finish: gloss', 'finish')).toMatch(/not (?:judged|checked|calculated)/);
    expect(hoverAt(glossy, 'subject: frost-plate', 'frost-plate')).toMatch(
      /not (?:judged|checked|calculated)/,
    );
    expect(hoverAt(EXAMPLE_PLAN, 'subject: frost-plate', 'frost-plate')).not.toMatch(
      /not (?:judged|checked|calculated)/,
    );
  });

  it('says so in the drawing of the day, and in no finding', () => {
    expect(JSON.stringify(coreWith(glossy).sheet(PLAN))).toMatch(
      /not (?:judged|checked|calculated)/,
    );
    expect(JSON.stringify(coreWith(EXAMPLE_PLAN).sheet(PLAN))).not.toMatch(
      /not (?:judged|checked|calculated)/,
    );
    const said = (text: string) => findingsOf(text).map(({ rule, what }) => `${rule}: ${what}`);
    expect(said(glossy)).toEqual(said(EXAMPLE_PLAN));
  });
});
