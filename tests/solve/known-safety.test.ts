/** Solution never gives up what is known to be safe for what nobody knows. */
import { describe, expect, it } from 'vitest';
import { terminalText } from '../../shared/report/document/terminal.ts';
import { solvedBlocks } from '../../shared/report/solve-text.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { changed, coreWith, PLAN } from '../support/plans.ts';

/** 180° at 25 fps on 50 Hz mains, and a smear of 2.2 pixels at 1/50 s. */
const SMEARED = {
  'shots/frost/shutter': '180 deg',
  'shots/frost/subject-speed': '3.4 mm/s',
  'shots/frost/iso': 'auto',
};

const solved = (change: Readonly<Record<string, string | null>>) =>
  coreWith(changed(EXAMPLE_PLAN, { ...SMEARED, ...change })).solve(PLAN, 'frost')!;

const shutterOf = (change: Readonly<Record<string, string | null>>): string | undefined =>
  solved(change).changes.find(({ setting }) => setting === 'shutter')?.to;

describe('a shot whose lamps may pulse, nobody knows how', () => {
  it('is moved off 1/50 s where it is known that they don’t', () => {
    expect(solved({}).outcome).toBe('solved');
    expect(shutterOf({})).not.toBe('1/100 s');
  });

  it('is kept to whole cycles of the mains', () => {
    const to = shutterOf({ 'lights/panel/modulation': null });
    expect(to).toBe('1/100 s');
  });

  it.each(['1/60 s', '1/80 s', '1/48 s'])('is not moved from %s to another unknown', (shutter) => {
    const { changes } = solved({
      'lights/panel/modulation': null,
      'shots/frost/shutter': shutter,
      'shots/frost/subject-speed': '6 mm/s',
    });
    for (const { setting, to } of changes)
      if (setting === 'shutter') expect(['1/50 s', '1/100 s']).toContain(to);
  });

  it('says what could not be judged before what was changed', () => {
    const blocks = solvedBlocks(solved({ 'lights/panel/modulation': null }));
    const lines = terminalText(blocks, false).split('\n');
    const unknown = lines.findIndex((line) => line.includes('modulation'));
    const changes = lines.findIndex((line) => line.includes('\u2192'));
    expect(unknown).toBeGreaterThan(-1);
    expect(changes).toBeGreaterThan(unknown);
  });
});

describe('a film', () => {
  it('is not solved by a tilt at which nothing lights it', () => {
    const core = coreWith(changed(EXAMPLE_PLAN, { 'shots/skin/iso': '12800' })).solve(
      PLAN,
      'skin',
    )!;
    expect(core.changes.map(({ setting }) => setting)).not.toContain('tilt');
  });

  it('that shows no light is solved by one that it shows, exposed as that asks', () => {
    const text = changed(EXAMPLE_PLAN, { 'shots/skin/tilt': '-4 deg' });
    const found = coreWith(text).solve(PLAN, 'skin')!;
    expect(found.outcome).toBe('solved');
    expect(found.changes.map(({ setting }) => setting)).toContain('tilt');
  });
});
