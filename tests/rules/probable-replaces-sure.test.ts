/**
 * One cause gives one finding. Where that one is only probable and replaces another that is sure, the
 * shot fails in any case. Common practice: a mirror tilted far out of the depth of field is soft.
 */
import { describe, expect, it } from 'vitest';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { changed, findingsOf } from '../support/plans.ts';

const TILTED = new Set(['lens-reflected', 'depth-short', 'source-too-small']);

/** Of the film's shot, without the lens's pupil ratio: whether any tilt works isn't sure. */
const foundWith = (change: Readonly<Record<string, string | null>>) =>
  findingsOf(
    changed(EXAMPLE_PLAN, {
      'kit/lenses/long-200/pupil-ratio': null,
      'shots/skin/aperture': 'f/5',
      'shots/skin/tilt': '12 deg',
      ...change,
    }),
  ).filter(({ rule }) => TILTED.has(rule));

const ACCEPTED = '{ because: it is meant }';

describe('a probable finding that replaces others', () => {
  it('is as severe as the sure one among them', () => {
    expect(foundWith({})).toMatchObject([
      {
        rule: 'lens-reflected',
        severity: 'warning',
        what: expect.stringMatching(/^Probably: no tilt works: /),
      },
    ]);
  });

  it('is one lower where those are accepted', () => {
    const allow = `{ depth-short: ${ACCEPTED}, source-too-small: ${ACCEPTED} }`;
    const [first] = foundWith({ 'shots/skin/allow': allow });
    expect(first).toMatchObject({ rule: 'lens-reflected', severity: 'note' });
  });
});
