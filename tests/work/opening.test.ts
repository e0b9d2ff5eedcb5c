/**
 * What opening a plan works out and what it leaves until somebody looks, counted call by call. What
 * is left out here is asked for below each time, so that none of these counts can be 0 by mistake.
 */
import { readFileSync } from 'node:fs';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import type { Core } from '../../shared/api/facade.ts';
import { unevenStops } from '../../shared/exposure/unevenness.ts';
import { filmColour } from '../../shared/film/colour.ts';
import { imageOfOutline } from '../../shared/mirror/bubble-image.ts';
import { contrastOverDepth } from '../../shared/optics/defocus-contrast.ts';
import { waysToReach } from '../../shared/optics/kit-search.ts';
import { ringFor } from '../../shared/optics/reach.ts';
import { relatedTo } from '../../shared/rules/shot-rule.ts';
import { Analysis } from '../../shared/workspace/analysis.ts';
import { Store } from '../../shared/workspace/store.ts';
import { lineOf, planOf, TOO_BRIGHT, WELL_EXPOSED } from '../bench/plan-of.ts';
import { coreWith, PLAN, ROOT } from '../support/plans.ts';

vi.mock('../../shared/exposure/unevenness.ts', { spy: true });
vi.mock('../../shared/film/colour.ts', { spy: true });
vi.mock('../../shared/mirror/bubble-image.ts', { spy: true });
vi.mock('../../shared/optics/defocus-contrast.ts', { spy: true });
vi.mock('../../shared/optics/kit-search.ts', { spy: true });
vi.mock('../../shared/optics/reach.ts', { spy: true });
vi.mock('../../shared/rules/shot-rule.ts', { spy: true });

const KIT = 'workshop-kit.shootplan.yaml';
const sample = (name: string): string =>
  readFileSync(new URL(`../../samples/${name}`, import.meta.url), 'utf8');

function opened(name: string): Core {
  const core = coreWith(sample(name), { [KIT]: sample(KIT) });
  core.findings(PLAN);
  return core;
}

beforeEach(() => {
  vi.clearAllMocks();
});

describe('opening a plan', () => {
  it('looks once how even the light is over shots that frame alike', () => {
    // A subject wider than the frames, so that another frame shows more or less of it.
    const text = planOf(20).replace('size: 200 x 150 mm', 'size: 600 x 400 mm');
    coreWith(text).findings(PLAN);
    expect(unevenStops).toHaveBeenCalledOnce();
    const other = text.replace('field: 420 mm', 'field: 400 mm');
    coreWith(other).findings(PLAN);
    // A light of its own for the second text, and two frames in it.
    expect(unevenStops).toHaveBeenCalledTimes(3);
  });

  it('gathers the causes of a finding once, at however many ends it is tried', () => {
    const bright = planOf(20).replaceAll(`iso: ${WELL_EXPOSED}`, `iso: ${TOO_BRIGHT}`);
    const found = coreWith(bright)
      .findings(PLAN)
      .filter(({ rule }) => rule === 'exposure-off');
    expect(found).toHaveLength(20);
    expect(relatedTo).toHaveBeenCalledTimes(20);
  });

  it('computes no film colour', () => {
    const core = opened('tide-panes.shootplan.yaml');
    expect(filmColour).not.toHaveBeenCalled();
    core.figures(PLAN);
    expect(filmColour).toHaveBeenCalled();
  });

  it('looks for no image in a bubble', () => {
    const core = opened('lantern.shootplan.yaml');
    expect(imageOfOutline).not.toHaveBeenCalled();
    core.figures(PLAN);
    expect(imageOfOutline).toHaveBeenCalled();
  });

  it('draws no contrast over depth', () => {
    const core = opened('tide-panes.shootplan.yaml');
    expect(contrastOverDepth).not.toHaveBeenCalled();
    const text = sample('tide-panes.shootplan.yaml').split('\n');
    const line = text.findIndex((each) => /^ {4}aperture: /.test(each));
    core.hover(PLAN, { line, character: 15 });
    expect(contrastOverDepth).toHaveBeenCalled();
  });

  it('searches the kit for no shot that its rig serves', () => {
    const text = planOf(20);
    coreWith(text).findings(PLAN);
    expect(waysToReach).not.toHaveBeenCalled();
    const core = coreWith(text.replace('field: 420 mm', 'field: 40 mm'));
    for (const finding of core.findings(PLAN)) core.fixesOf(finding);
    expect(waysToReach).toHaveBeenCalled();
  });

  it('solves a rig for one field once, however many shots ask for it', () => {
    coreWith(planOf(20)).findings(PLAN);
    const few = vi.mocked(ringFor).mock.calls.length;
    vi.clearAllMocks();
    coreWith(planOf(200)).findings(PLAN);
    const many = vi.mocked(ringFor).mock.calls.length;
    expect(few).toBeGreaterThan(0);
    expect(many).toBe(few);
  });

  it('works out each shot once, and an edit elsewhere none again', () => {
    const shots = 200;
    const text = planOf(shots);
    const store = new Store();
    const analysis = new Analysis(store, { rootOf: () => ROOT });
    store.give(PLAN, text);
    analysis.findings(PLAN);
    const count = (name: string) => store.graph.computed.get(name) ?? 0;
    expect([count('bench'), count('figures'), count('shot')]).toEqual([shots, shots, shots]);
    store.graph.computed.clear();
    const line = lineOf(text, 5, 'iso');
    const end = { line, character: text.split('\n')[line]!.length };
    store.edit(PLAN, { start: { line, character: 9 }, end }, '800');
    analysis.findings(PLAN);
    expect([count('bench'), count('figures'), count('shot')]).toEqual([1, 1, 1]);
    // Few are held; of the others only what was found is kept.
    store.graph.computed.clear();
    for (const shot of analysis.shots(PLAN)) analysis.figures(PLAN, shot);
    expect(count('figures')).toBeGreaterThan(shots / 2);
  });
});
