/**
 * Filters and close-up lenses before the lens take room. What a filter does must be what the same lens does
 * in a barrel that is longer by it: where the image is made doesn't change, where the rim is does.
 */
import { describe, expect, it } from 'vitest';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { changed, coreWith, findingsOf, PLAN } from '../support/plans.ts';

type Changes = Readonly<Record<string, string | null>>;

const figures = (changes: Changes, shot = 'skin') =>
  coreWith(changed(EXAMPLE_PLAN, changes)).figures(PLAN).get(shot)!;

const FILTER: Changes = {
  'kit/filters': '\n    deep: { kind: clear, loss: 0 stops, length: 30 mm }',
  'rigs/far/filters': '[deep]',
};
const BARREL: Changes = { 'kit/lenses/long-200/length': '195 mm' };

describe('a filter 30 mm long', () => {
  it('takes 30 mm of working distance, and turns the least tilt up', () => {
    const bare = figures({});
    const filtered = figures(FILTER);
    const room = (it: typeof bare) => it.workingDistanceMm as number;
    expect(room(filtered)).toBeCloseTo(room(bare) - 30, 9);
    expect(filtered.subjectToSensorMm).toBe(bare.subjectToSensorMm);
    expect(filtered.leastTiltDeg as number).toBeGreaterThan(bare.leastTiltDeg as number);
  });

  it('is the same as a barrel that is longer by it', () => {
    const near = { 'lights/strip/at': '{ distance: 300 mm, elevation: 20 deg }' };
    for (const shot of ['skin', 'frost']) {
      const rig: Changes = shot === 'frost' ? { 'rigs/bench/filters': '[deep]' } : {};
      const longer: Changes =
        shot === 'frost' ? { 'kit/lenses/macro-100/length': '150 mm' } : { ...BARREL };
      const filtered = figures({ ...FILTER, ...rig, ...near }, shot);
      const barrel = figures({ ...longer, ...near }, shot);
      const { notKnown, ...known } = filtered;
      const weighed = [
        'massKg',
        'centreOfGravityMm',
        'footMm',
        'momentAtFootNewtonMetres',
        'momentAtMountNewtonMetres',
      ];
      for (const [key, value] of Object.entries(known)) {
        if (weighed.includes(key)) continue;
        if (typeof value === 'number' && typeof barrel[key] === 'number')
          expect(value, key).toBeCloseTo(barrel[key], 9);
        else expect(value, key).toEqual(barrel[key]);
      }
      expect(notKnown).toEqual(barrel.notKnown);
    }
  });

  it('of the shot counts in place of the rig’s, and one after the other', () => {
    const two =
      '\n    deep: { kind: clear, length: 30 mm }\n    thin: { kind: clear, length: 4 mm }';
    const room = (own: string) =>
      figures({ 'kit/filters': two, 'rigs/far/filters': '[deep]', 'shots/skin/filters': own })
        .workingDistanceMm as number;
    expect(room('[]') - room('[thin]')).toBeCloseTo(4, 9);
    expect(room('[]') - room('[thin, deep]')).toBeCloseTo(34, 9);
  });

  it('leaves no room where there was little', () => {
    const rooms = (changes: Changes) =>
      findingsOf(changed(EXAMPLE_PLAN, changes)).filter(({ rule }) => rule === 'no-room');
    const close = { 'shots/frost/field': '36 mm' };
    expect(rooms(close)).toEqual([]);
    const bare = figures(close, 'frost').workingDistanceMm as number;
    const length = `${Math.round(bare - 10)} mm`;
    const [found] = rooms({
      ...close,
      'kit/filters': `\n    hood: { kind: clear, length: ${length} }`,
      'rigs/bench/filters': '[hood]',
    });
    expect(found?.numbers?.workingDistanceMm as number).toBeCloseTo(10, 0);
  });

  it('stands in the drawing of the rig', () => {
    const page = coreWith(changed(EXAMPLE_PLAN, FILTER)).sheet(PLAN)!;
    const said = JSON.stringify(page);
    expect(said).toContain('deep');
    expect(said).toMatch(/data-part\W+deep/);
  });

  it('that is not in the kit silences the room and nothing else', () => {
    const shot = figures({ 'rigs/far/filters': '[lost]' });
    expect(shot.workingDistanceMm).toBeNull();
    expect(shot.leastTiltDeg).toBeNull();
    expect(shot.magnification).toBe(figures({}).magnification);
    expect(shot.effectiveFNumber).toBe(figures({}).effectiveFNumber);
    expect(shot.depthMm).toEqual(figures({}).depthMm);
  });
});

describe('a close-up lens with a ring of its own', () => {
  const with2 = (more: string) => ({
    'kit/close-up-lenses': `\n    plus-2: { power: 2 dpt, loss: 0 stops${more} }`,
    'rigs/bench/parts': '[body-a, macro-100, plus-2]',
  });

  it('takes its length of working distance, and changes no image', () => {
    const flat = figures(with2(''), 'frost');
    const long = figures(with2(', length: 12 mm'), 'frost');
    expect(long.workingDistanceMm as number).toBeCloseTo(
      (flat.workingDistanceMm as number) - 12,
      9,
    );
    for (const key of ['magnification', 'effectiveFNumber', 'subjectToSensorMm', 'depthMm'])
      expect(long[key], key).toEqual(flat[key]);
  });
});
