/** Ways out that are searched for: no further than it takes, and as wide open as it may stay. */
import { expect, it } from 'vitest';
import { fixAll } from '../../server/handlers/fix-all.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { applied, changed, coreWith, PLAN } from '../support/plans.ts';

const found = (text: string, rule: string) =>
  coreWith(text)
    .findings(PLAN)
    .filter((finding) => finding.rule === rule);

function wayOut(text: string, rule: string): { readonly title: string; readonly text: string } {
  const core = coreWith(text);
  const finding = core.findings(PLAN).find((one) => one.rule === rule);
  const [fix] = finding ? core.fixesOf(finding) : [];
  return { title: fix?.title ?? '', text: fix ? applied(text, fix.edits) : '' };
}

const lightAt = (up: number): string =>
  changed(EXAMPLE_PLAN, { 'lights/strip/at': `{ distance: 300 mm, elevation: ${up} deg }` });

it('moves a light out of the picture by as little as clears it', () => {
  const { title, text } = wayOut(lightAt(3), 'no-room');
  const up = Number(/^Move strip for this shot to elevation (\d+)°, azimuth 0°$/.exec(title)?.[1]);
  expect(found(text, 'no-room')).toEqual([]);
  expect(found(text, 'source-too-small')).toEqual([]);
  // Its lower edge, 60 mm down its face, is 300·sin up − 60·cos up above the axis (trigonometry): on
  // it at 11.3°. The cone between the frame and the pupil is there at most 13.5 mm high, half the frame.
  expect(up).toBeGreaterThan(11.3);
  expect(300 * Math.sin(((up - 1) * Math.PI) / 180) - 60).toBeLessThan(13.5);
  expect(found(lightAt(up - 1), 'no-room')).toHaveLength(1);
});

it('moves a light that stands below further down', () => {
  const text = changed(lightAt(-3), { 'shots/skin/tilt': '-4 deg' });
  expect(wayOut(text, 'no-room').title).toMatch(
    /^Move strip for this shot to elevation \u2212\d+°, azimuth 0°$/,
  );
});

it('stops down to the widest mark that holds the depth at the least tilt', () => {
  const at = (aperture: string) => changed(EXAMPLE_PLAN, { 'shots/skin/aperture': aperture });
  const { title, text } = wayOut(at('f/2.8'), 'lens-reflected');
  expect(title).toMatch(/^Stop down to f\/[\d.]+( and tilt [\d.]+°)?(, probably enough)?$/);
  expect(found(text, 'lens-reflected')).toEqual([]);
  const mark = /f\/([\d.]+)/.exec(title)?.[1] ?? '';
  const marks = ['2.8', '3.2', '3.5', '4', '4.5', '5', '5.6', '6.3', '7.1', '8', '9', '10', '11'];
  const wider = marks[marks.indexOf(mark) - 1];
  expect(found(at(`f/${wider}`), 'lens-reflected')[0]?.what).toMatch(/^No tilt/);
});

it('writes a single stop as one', () => {
  // Twice the sensitivity is one stop more (ISO 12232: speed and exposure are inversely proportional).
  const core = coreWith(changed(EXAMPLE_PLAN, { 'shots/frost/iso': '2500' }));
  const [bright] = core.findings(PLAN).filter(({ rule }) => rule === 'exposure-off');
  const dim = core.fixesOf(bright!).find(({ title }) => title.startsWith('Reduce'));
  expect(dim?.title).toBe('Reduce panel by 1 stop (dimmer, scrim or ND)');
  expect(dim?.edits.map(({ text }) => text).join()).toMatch(/dimmed: 1 stop$/);
});

it('names as its price that nobody knows it where the shot has no magnification', () => {
  // 1/2000 s stops what moves; whole cycles of 240 Hz would blur it eight times as much.
  const text = (field: string) =>
    changed(EXAMPLE_PLAN, {
      'lights/panel/modulation': '240 Hz',
      'shots/frost/shutter': '1/2000 s',
      'shots/frost/iso': 'auto',
      'shots/frost/field': field,
      'shots/frost/white-balance': 'auto',
    });
  const priceOf = (plan: string, rule: string) => {
    const core = coreWith(plan);
    const finding = core.findings(PLAN).find((one) => one.rule === rule)!;
    return core.fixesOf(finding)[0]?.sideEffects ?? '';
  };
  const unknown = /no magnification yet, so other effects are unknown$/;
  expect(priceOf(text('6 mm'), 'lamp-flicker')).toMatch(unknown);
  expect(priceOf(text('60 mm'), 'lamp-flicker')).not.toMatch(unknown);
  // Where the frame is doesn't matter to the colour, and another field brings the magnification.
  expect(priceOf(text('6 mm'), 'white-balance-adrift')).not.toMatch(unknown);
  expect(priceOf(text('6 mm'), 'field-out-of-reach')).not.toMatch(unknown);
  expect(fixAll(coreWith(text('6 mm')), PLAN).map((edit) => edit.text)).not.toContain('1/240 s');
});
