/** What the stills of a stack need of a card: by their size, or by their pixels within stated ends. */
import { describe, expect, it } from 'vitest';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { changed, coreWith, findingsOf, PLAN } from '../support/plans.ts';

const stacked = (more: Readonly<Record<string, string | null>> = {}): string =>
  changed(EXAMPLE_PLAN, {
    'shots/frost/iso': 'auto',
    'shots/frost/record': null,
    'shots/frost/stack': '{ with: rail, frames: 40, settle: 2 s }',
    'preflight/once/stack-ends-checked': 'open',
    ...more,
  });
const SIZED = { 'kit/bodies/body-a/stills': '{ size: 28 MB }' };

const figures = (text: string) => coreWith(text).figures(PLAN).get('frost')!;
const sums = (text: string) => coreWith(text).recording(PLAN)[0]!;

/** As many as the sensor of the plan has. */
const PIXELS = 6048 * 4024;

describe('stills of a given size', () => {
  it('need that size for every frame', () => {
    // By hand: 40 frames of 28 MB are 1.12 GB.
    expect(figures(stacked(SIZED))).toMatchObject({ frameBytes: 28e6, recordedBytes: 1.12e9 });
  });

  it('are summed up over the plan, with the time of the stack', () => {
    // skin: 20 s at 30 Mb/s. The stack: 40 times 2 s and 1/50 s.
    const found = sums(stacked(SIZED));
    expect(found.recordedBytes).toBe(1.12e9 + 20 * 3.75e6);
    expect(found.recordedS).toBeCloseTo(20 + 40 * 2.02, 9);
  });
});

describe('stills of unknown size', () => {
  it('are sized by their pixels, between stated ends', () => {
    const found = figures(stacked());
    expect(found.recordedBytes).toBeCloseTo(40 * 1.2 * PIXELS, 0);
    expect(found.bounds?.recordedBytes).toEqual([40 * 0.3 * PIXELS, 40 * 2 * PIXELS]);
    // TIFF/EP (ISO 12234-2), from memory: samples of more than 8 bits, uncompressed, take 2 bytes.
    expect(found.bounds?.frameBytes).toEqual([0.3 * PIXELS, (PIXELS * 16) / 8]);
  });

  it('follow the stills that the body takes', () => {
    const small = stacked({ 'kit/bodies/body-a/stills': '{ resolution: 3000 x 2000 }' });
    expect(figures(small).frameBytes).toBeCloseTo(1.2 * 6e6, 3);
  });

  it('need the pixels, or the size', () => {
    const { recordedBytes, notKnown } = figures(stacked({ 'kit/bodies/body-a/pixels': null }));
    expect(recordedBytes).toBeNull();
    expect(notKnown.recordedBytes).toContain('`size` of the stills of body-a');
  });

  it('count in the plan with what they need at least', () => {
    const found = sums(stacked());
    expect(found.recordedBytes).toBeNull();
    expect(found.leastRecordedBytes).toBeCloseTo(40 * 0.3 * PIXELS + 20 * 3.75e6, 0);
  });
});

describe('the card', () => {
  const cards = (text: string) => findingsOf(text).filter(({ rule }) => rule === 'card-too-small');

  it('is too small for what the stills need at least, and the finding says so', () => {
    // 40 times 0.3 bytes for each of 24.3 million pixels: 292 MB.
    const [found] = cards(stacked({ 'kit/bodies/body-a/card': '256 MB' }));
    expect(found?.why).toContain('Stills of unknown size are counted with 0.3 bytes a pixel.');
  });

  it('is quiet where the smallest stills fit', () => {
    expect(cards(stacked({ 'kit/bodies/body-a/card': '512 MB' }))).toEqual([]);
    expect(cards(stacked({ ...SIZED, 'kit/bodies/body-a/card': '2 GB' }))).toEqual([]);
    expect(cards(stacked({ ...SIZED, 'kit/bodies/body-a/card': '1 GB' }))).toHaveLength(1);
  });
});
