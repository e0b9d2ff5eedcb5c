/**
 * One defect of the bench at a time, planted into a plan that has nothing wrong: what moves, what
 * carries the rig, what was measured, what is before the lens. The rule that is meant for it speaks, on
 * the line of the defect, with numbers that are worked out here by hand.
 */
import { describe, expect, it } from 'vitest';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { each, laws } from '../support/each.ts';
import { changed, coreWith, findingsOf, PLAN } from '../support/plans.ts';

interface Defect {
  readonly rule: string;
  readonly says: string;
  readonly change: Readonly<Record<string, string | null>>;
  /** What stands on the line that the finding is on. */
  readonly line: string;
  readonly severity: string;
  /** To about three digits. */
  readonly numbers?: Readonly<Record<string, number>>;
}

const POLARISER = '\n    polariser: { kind: polariser, loss: 1.5 stops }';
const REHEARSED = { 'preflight/once/move-rehearsed': 'open' };

const DEFECTS: readonly Defect[] = [
  {
    rule: 'motion-blur',
    says: 'a slide too quick for its shutter',
    change: { ...REHEARSED, 'shots/frost/move': '{ kind: slide, speed: 5 mm/s }' },
    line: 'move: { kind: slide, speed: 5 mm/s }',
    severity: 'warning',
    // 5 mm/s · 0.6 · 0.02 s over pixels of 36 mm / 1920.
    numbers: { smearPx: (5 * 0.6 * 0.02 * 1920) / 36 },
  },
  {
    rule: 'motion-blur',
    says: 'a pan: its speed at the subject is angle times distance',
    change: { ...REHEARSED, 'shots/frost/move': '{ kind: pan, speed: 0.6 deg/s }' },
    line: 'move: { kind: pan, speed: 0.6 deg/s }',
    severity: 'warning',
  },
  {
    rule: 'crosses-too-fast',
    says: 'a slide across 60 mm in 5 s, too short for its shutter to smear',
    change: {
      ...REHEARSED,
      'shots/frost/move': '{ kind: slide, speed: 12 mm/s }',
      'shots/frost/shutter': '1/1000 s',
      'shots/frost/iso': 'auto',
      'kit/bodies/body-a/iso/usable-to': '25600',
    },
    line: 'move: { kind: slide, speed: 12 mm/s }',
    severity: 'note',
    numbers: { crossingS: 5 },
  },
  {
    rule: 'vibration-seen',
    says: 'a column that shakes by 60 µm',
    change: {
      'kit/stands':
        '\n    post: { kind: column, footprint: 0.5 m, payload: 8 kg, vibration: 60 um }',
      'rigs/bench/support': '{ stand: post, foot: 70 mm }',
    },
    line: 'support: { stand: post, foot: 70 mm }',
    severity: 'note',
    // 0.06 mm · 0.6 over pixels of 36 mm / 1920.
    numbers: { jitterPx: (0.06 * 0.6 * 1920) / 36 },
  },
  {
    rule: 'uneven-light',
    says: 'a small lamp 100 mm before a frame of 60 mm',
    change: {
      'lights/panel/emitting-size': '20 x 20 mm',
      'shots/frost/relight': '{ panel: { at: { distance: 100 mm } } }',
      'shots/frost/iso': 'auto',
      'kit/bodies/body-a/iso/lowest': '25',
    },
    line: 'light: [panel]',
    severity: 'warning',
  },
  {
    rule: 'focus-drifts',
    says: 'a minute along a film 4° off: 2 mm/s · 60 s · sin 4°',
    change: {
      ...REHEARSED,
      'shots/skin/move': '{ kind: slide, speed: 2 mm/s, along: upright, duration: 60 s }',
      'shots/skin/shutter': '1/200 s',
      'shots/skin/iso': 'auto',
    },
    line: 'move: { kind: slide, speed: 2 mm/s, along: upright, duration: 60 s }',
    severity: 'warning',
    numbers: { travelMm: 120 * Math.sin((4 * Math.PI) / 180) },
  },
  {
    rule: 'focus-drifts',
    says: 'a push goes all its way along the axis',
    change: {
      ...REHEARSED,
      'shots/skin/move': '{ kind: push-in, speed: 0.5 mm/s, duration: 20 s }',
    },
    line: 'move: { kind: push-in, speed: 0.5 mm/s, duration: 20 s }',
    severity: 'warning',
    numbers: { travelMm: 10 },
  },
  {
    rule: 'measured-differs',
    says: 'a field a third smaller than the rig should show',
    change: { 'rigs/bench/measured': '{ ring: closest, field: 24 mm }' },
    line: 'measured: { ring: closest, field: 24 mm }',
    severity: 'warning',
    numbers: { measuredFieldMm: 24, computedFieldMm: 36 },
  },
  {
    rule: 'measured-differs',
    says: 'a rig that weighs half again as much as its parts',
    change: { 'rigs/bench/measured': '{ mass: 2.2 kg }' },
    line: 'measured: { mass: 2.2 kg }',
    severity: 'warning',
    numbers: { measuredMassKg: 2.2, computedMassKg: 1.46 },
  },
  {
    rule: 'measured-differs',
    says: 'an effective f-number without what the magnification costs',
    change: { 'shots/frost/measured': '{ effective-f-number: 8 }', 'shots/frost/iso': 'auto' },
    line: 'measured: { effective-f-number: 8 }',
    severity: 'warning',
    // N·(1 + m) with m 36/60 of a lens alone whose pupils are alike (Ray, Applied Photographic Optics).
    numbers: { measuredEffectiveFNumber: 8, computedEffectiveFNumber: 12.8 },
  },
  {
    rule: 'polariser-idle',
    says: 'a polariser on a film that nearly faces the lens',
    change: {
      'kit/filters': POLARISER,
      'shots/skin/filters': '[polariser]',
      'shots/skin/iso': 'auto',
    },
    line: 'filters: [polariser]',
    severity: 'note',
  },
  {
    rule: 'polariser-takes-the-colour',
    says: 'a film seen at Brewster’s angle of water, 53°',
    change: {
      'kit/filters': POLARISER,
      'shots/skin/filters': '[polariser]',
      'shots/skin/iso': 'auto',
      'shots/skin/tilt': '53 deg',
    },
    line: 'filters: [polariser]',
    severity: 'warning',
  },
  {
    rule: 'polariser-takes-the-colour',
    says: 'a polariser on the rig, crossed with the light: on the shot that uses it so',
    change: {
      'kit/filters': POLARISER,
      'rigs/far/filters': '[polariser]',
      'shots/skin/iso': 'auto',
      'lights/strip/polarised': 'crossed',
    },
    line: 'rig: far',
    severity: 'warning',
  },
  {
    rule: 'head-overloaded',
    says: 'a head for a kilogram under 1.46 kg',
    change: {
      'kit/heads': '\n    small-head: { payload: 1 kg, mass: 0.3 kg }',
      'rigs/bench/support': '{ head: small-head }',
    },
    line: 'support: { head: small-head }',
    severity: 'error',
    numbers: { massKg: 1.46, payloadKg: 1 },
  },
  {
    rule: 'stand-overloaded',
    says: 'the head counts to what the stand carries',
    change: {
      'kit/heads': '\n    good-head: { payload: 6 kg, mass: 0.9 kg }',
      'kit/stands': '\n    tripod: { kind: tripod, payload: 2 kg }',
      'rigs/bench/support': '{ head: good-head, stand: tripod }',
    },
    line: 'support: { head: good-head, stand: tripod }',
    severity: 'error',
  },
  {
    rule: 'rig-pitches',
    says: 'body at half its flange, lens at half its length: (0.76·22 + 0.7·104)/1.46',
    change: { 'rigs/bench/support': '{ foot: 10 mm }' },
    line: 'support: { foot: 10 mm }',
    severity: 'note',
    numbers: { centreOfGravityMm: (0.76 * 22 + 0.7 * 104) / 1.46, footMm: 10 },
  },
  {
    rule: 'boom-may-tip',
    says: 'a boom without a counterweight',
    change: {
      'kit/stands':
        '\n    boom: { kind: boom, payload: 5 kg, footprint: 0.8 m, reach: 1.2 m, mass: 2 kg }',
      'rigs/bench/support': '{ stand: boom }',
    },
    line: 'support: { stand: boom }',
    severity: 'error',
  },
  {
    rule: 'overhead-load',
    says: 'a rig over the subject',
    change: {
      'rigs/bench/support': '{ overhead: yes }',
      'preflight/once/overhead-tethered': 'open',
    },
    line: 'support: { overhead: yes }',
    severity: 'note',
  },
  {
    rule: 'mains-near-liquid',
    says: 'a mains lamp on a film',
    change: {
      'lights/strip/supply': 'mains',
      'preflight/once/mains-clear-of-liquid': 'open',
    },
    line: 'light: [strip]',
    severity: 'note',
  },
  {
    rule: 'hot-lamp-near-subject',
    says: 'a bulb 300 mm from the plate',
    change: {
      'shots/frost/light': '[bulb]',
      'shots/frost/iso': 'auto',
      'lights/bulb/at': '{ distance: 300 mm, elevation: 40 deg }',
      'lights/bulb/reading': null,
      'lights/bulb/illuminance': '2000 lx',
    },
    line: 'light: [bulb]',
    severity: 'note',
  },
];

laws(
  DEFECTS,
  ({ rule, says }) => `${rule}: ${says}`,
  ({ rule, change, line, severity, numbers }, law) => {
    const text = changed(EXAMPLE_PLAN, change);
    const found = findingsOf(text).filter((finding) => finding.rule === rule);

    law('is found once, on its line', () => {
      expect(found.map(({ range }) => text.split('\n')[range.start.line]?.trim())).toEqual([line]);
      expect(found[0]?.severity).toBe(severity);
    });

    law('is not there without it', () => {
      expect(findingsOf(EXAMPLE_PLAN).filter((finding) => finding.rule === rule)).toEqual([]);
    });

    for (const [name, value] of Object.entries(numbers ?? {}))
      law('has its numbers', () => expect(found[0]?.numbers?.[name]).toBeCloseTo(value, 2), name);
  },
);

describe('cautions', () => {
  it('leave the last word to local rules and a qualified person', () => {
    each(
      DEFECTS.filter(({ rule }) =>
        ['overhead-load', 'mains-near-liquid', 'hot-lamp-near-subject', 'boom-may-tip'].includes(
          rule,
        ),
      ),
      ({ rule, change }) => {
        const found = findingsOf(changed(EXAMPLE_PLAN, change)).find((one) => one.rule === rule);
        expect(`${found?.what} ${found?.why}`).toMatch(/local rules.*qualified person/i);
      },
      ({ rule, says }) => `${rule}: ${says}`,
    );
  });
});

describe('a lamp that pulses beside one that does not', () => {
  it('is the one that the finding points at', () => {
    const text = changed(EXAMPLE_PLAN, {
      'shots/frost/light': '[panel, bulb]',
      'shots/frost/shutter': '1/80 s',
    });
    const found = coreWith(text)
      .findings(PLAN)
      .find(({ rule }) => rule === 'lamp-flicker')!;
    expect(found.what).toMatch(/^bulb pulses/);
    const lines = text.split('\n');
    const [panel, bulb] = ['  panel:', '  bulb:'].map((line) => lines.indexOf(line));
    const inPanel = found.related.filter(
      ({ range: { start } }) => start.line > panel! && start.line < bulb!,
    );
    expect(found.related.length).toBeGreaterThan(0);
    expect(inPanel).toEqual([]);
  });
});

describe('a lamp’s bands', () => {
  it('are its frequency times the readout of the sensor', () => {
    // Lamps on 50 Hz mains pulse 100 times a second (common practice); the body reads out in 18 ms.
    const figures = coreWith(
      changed(EXAMPLE_PLAN, { 'shots/frost/light': '[bulb]', 'shots/frost/shutter': '1/80 s' }),
    ).figures(PLAN);
    expect(figures.get('frost')!.bandsInFrame).toBeCloseTo(1.8, 9);
    expect(figures.get('skin')!.bandsInFrame).toBe(0);
  });

  // Lines of a frame are read before those of the next: at 100 fps that takes 10 ms at most.
  it('are not counted with a readout that is longer than a frame of the mode', () => {
    const at = (rate: string) => {
      const fast = changed(EXAMPLE_PLAN, {
        'kit/bodies/body-a/recording-modes/full-25/rate': rate,
        'shots/frost/light': '[bulb]',
        'shots/frost/shutter': '1/640 s',
      });
      return coreWith(fast).figures(PLAN).get('frost')!;
    };
    expect(at('50 fps').bandsInFrame).toBeCloseTo(1.8, 9);
    expect(at('100 fps').bandsInFrame).toBeNull();
    expect(at('100 fps').notKnown.bandsInFrame).toBe(
      "the body's `readout` is longer than a frame of this recording mode",
    );
  });
});
