import { describe, expect, it } from 'vitest';
import { asName, nearest } from '../../shared/plan/nearest.ts';
import { editDistance } from '../../shared/quantity/edit-distance.ts';

describe('the nearest word', () => {
  it.each([
    ['apreture', ['aperture', 'about'], 'aperture'],
    ['White_Balance', ['white-balance'], 'white-balance'],
    ['color', ['colour', 'close-up'], 'colour'],
    ['rgi', ['rig', 'ring'], 'rig'],
    ['tripod', ['rig', 'ring'], undefined],
    ['x'.repeat(100_000), ['rig'], undefined],
  ])('%.20s among %j is %s', (word, candidates, found) => {
    expect(nearest(word, candidates)).toBe(found);
  });

  it('counts as Damerau did: "ca" and "abc" are three apart, exchanged neighbours one', () => {
    // The classic example that parts the restricted distance (3) from the unrestricted (2).
    expect(editDistance('ca', 'abc')).toBe(3);
    expect(editDistance('abdc', 'abcd')).toBe(1);
    expect(editDistance('kitten', 'sitting')).toBe(3);
  });
});

describe('a name made of a text', () => {
  it.each([
    ['Far Off', 'far-off'],
    ['2nd Lens', 'nd-lens'],
    ['Blende_ü', 'blende-u'],
    ['---', undefined],
    ['', undefined],
  ])('%s is %s', (text, name) => {
    expect(asName(text)).toBe(name);
  });
});
