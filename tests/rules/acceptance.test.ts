import { describe, expect, it } from 'vitest';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { changed, findingsOf } from '../support/plans.ts';

/** The depth of the shot is 0.52 mm short. */
const SHORT = changed(EXAMPLE_PLAN, { 'shots/frost/aperture': 'f/4', 'shots/frost/iso': '320' });

const loud = (text: string) =>
  findingsOf(text)
    .filter(({ severity }) => severity !== 'hint')
    .map(({ rule }) => rule)
    .filter((rule) => rule !== 'effective-aperture');

const allowing = (allow: string) => loud(changed(SHORT, { 'shots/frost/allow': allow }));

describe('an accepted finding', () => {
  it('is one without it', () => {
    expect(loud(SHORT)).toEqual(['depth-short']);
  });

  it.each([
    ['with a reason', '{ depth-short: { because: only the rim } }', []],
    ['within its bound', '{ depth-short: { because: only the rim, up-to: 0.6 mm } }', []],
    [
      'past its bound',
      '{ depth-short: { because: only the rim, up-to: 0.2 mm } }',
      ['depth-short'],
    ],
    [
      'bounded in another kind',
      '{ depth-short: { because: only the rim, up-to: 2 stops } }',
      ['depth-short'],
    ],
    [
      'of another rule',
      '{ exposure-off: { because: a night scene } }',
      ['allow-unused', 'depth-short'],
    ],
  ])('%s', (_, allow, expected) => {
    expect([...allowing(allow)].sort()).toEqual([...expected].sort());
  });

  it('needs a reason', () => {
    expect(allowing('{ depth-short: { up-to: 1 mm } }')).toEqual(['missing-key']);
  });

  it('of a rule that is not there is misspelt', () => {
    expect(allowing('{ dept-short: { because: x } }')).toEqual(['unknown-name']);
  });

  it('for the whole plan accepts it in every shot, and says when it accepts nothing', () => {
    const allow = 'allow: { depth-short: { because: only rims, up-to: 1 mm } }\n';
    expect(loud(`${SHORT}\n${allow}`)).toEqual([]);
    expect(loud(`${EXAMPLE_PLAN}\n${allow}`)).toEqual(['allow-unused']);
  });

  it('for the whole plan accepts what is said of the plan too, up to its bound', () => {
    const pitching = changed(EXAMPLE_PLAN, { 'rigs/bench/support': '{ foot: 10 mm }' });
    const pitch = (allow: string) =>
      findingsOf(`${pitching}\nallow: { ${allow} }\n`).filter(({ rule }) =>
        ['rig-pitches', 'allow-unused'].includes(rule),
      );
    expect(pitch('rig-pitches: { because: it is clamped at both ends }')).toEqual([]);
    expect(pitch('rig-pitches: { because: clamped, up-to: 400 mm }')).toEqual([]);
    expect(pitch('rig-pitches: { because: clamped, up-to: 1 mm }')).toMatchObject([
      { rule: 'rig-pitches', related: [{ words: 'accepted only up to this' }] },
    ]);
    expect(
      pitch('boom-may-tip: { because: held }')
        .map(({ rule }) => rule)
        .sort(),
    ).toEqual(['allow-unused', 'rig-pitches']);
  });

  it('says beside the finding which bound it passed', () => {
    const text = changed(SHORT, {
      'shots/frost/allow': '{ depth-short: { because: only the rim, up-to: 0.2 mm } }',
    });
    const [found] = findingsOf(text).filter(({ rule }) => rule === 'depth-short');
    expect(found?.related[0]?.words).toBe('accepted only up to this');
  });

  it('says where the bound is no measure of what is found, or what is found has none', () => {
    const bounded = (rule: string, bound: string, other: Record<string, string> = {}) => {
      const allow = `{ ${rule}: { because: only the rim, up-to: ${bound} } }`;
      const text = changed(SHORT, { 'shots/frost/allow': allow, ...other });
      const found = findingsOf(text).find((each) => each.rule === rule && each.shot === 'frost');
      return found?.related[0]?.words;
    };
    expect(bounded('depth-short', '0.6 kg')).toBe(
      'accepted only up to this, which is in the wrong unit',
    );
    expect(bounded('aperture-not-on-lens', '1 stop', { 'shots/frost/aperture': 'f/44' })).toBe(
      'accepted only up to this, but the finding has no size',
    );
  });
});

describe('severities', () => {
  it.each(['error', 'warning', 'note', 'hint'] as const)('set to %s', (severity) => {
    const text = `${SHORT}\nseverity: { depth-short: ${severity} }\n`;
    const [found] = findingsOf(text).filter(({ rule }) => rule === 'depth-short');
    expect(found?.severity).toBe(severity);
  });
});
