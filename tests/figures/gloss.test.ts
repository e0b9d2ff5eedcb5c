/** A glossy subject is lit, and shows its lights: how bright, and where in the frame. */
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

  it('says where in the frame its flat face shows the lamp', () => {
    expect(hoverAt(glossy, 'finish: gloss', 'finish')).toMatch(/calculated for its flat face/);
    const hover = hoverAt(glossy, 'subject: frost-plate', 'frost-plate');
    expect(hover).toContain('flat face shows it: above the frame');
    expect(hover).toContain('Relief may show it anywhere.');
    expect(hoverAt(EXAMPLE_PLAN, 'subject: frost-plate', 'frost-plate')).not.toMatch(/flat face/);
    const flat = changed(glossy, { 'subjects/frost-plate/depth': '0 mm' });
    expect(hoverAt(flat, 'subject: frost-plate', 'frost-plate')).not.toMatch(/Relief/);
  });

  it('says what it needs for that', () => {
    const without = changed(glossy, { 'subjects/frost-plate/depth': null });
    expect(coreWith(without).figures(PLAN).get('frost')!.notKnown.highlightShare).toBe(
      'needs `depth` of frost-plate',
    );
    const bowed = changed(glossy, { 'subjects/frost-plate/sag': '0.5 mm' });
    expect(coreWith(bowed).figures(PLAN).get('frost')!.notKnown.highlightShare).toBe(
      'the face of frost-plate is not flat',
    );
  });

  it('says so in the drawing of the day, and in no finding', () => {
    expect(JSON.stringify(coreWith(glossy).sheet(PLAN))).toContain(
      'Its flat face shows `panel` above the frame.',
    );
    const said = (text: string) => findingsOf(text).map(({ rule, what }) => `${rule}: ${what}`);
    expect(said(glossy)).toEqual(said(EXAMPLE_PLAN));
  });
});
