import { describe, expect, it } from 'vitest';
import type { LocatedPlace, Position } from '../../shared/api/located.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { applied, coreWith, PLAN, ROOT } from '../support/plans.ts';

const KIT = 'kit.shootplan.yaml';

/** The plan with its kit, rigs, lights and subjects moved to a file that it uses. */
const split = (() => {
  const shots = EXAMPLE_PLAN.indexOf('\nshots:');
  const kit = EXAMPLE_PLAN.indexOf('\nkit:');
  return {
    kit: `shootplan: 1\n${EXAMPLE_PLAN.slice(kit, shots)}`,
    plan: `${EXAMPLE_PLAN.slice(0, kit)}\nuse: [${KIT}]\n${EXAMPLE_PLAN.slice(shots)}`,
  };
})();

/** The position of the first `word` on the first line that holds `line`. */
function positionOf(text: string, line: string, word: string): Position {
  const lines = text.split('\n');
  const index = lines.findIndex((one) => one.includes(line));
  expect(index, line).toBeGreaterThanOrEqual(0);
  return { line: index, character: lines[index]!.indexOf(word, lines[index]!.indexOf(line)) + 1 };
}

const texts: Readonly<Record<string, string>> = {
  [PLAN]: split.plan,
  [`${ROOT}/${KIT}`]: split.kit,
};

const textAt = ({ file, range }: LocatedPlace, from = texts): string =>
  from[file]!.split('\n')[range.start.line]!.slice(range.start.character, range.end.character);

const core = () => coreWith(split.plan, { [KIT]: split.kit });

describe('definition', () => {
  it.each([
    ['a rig of a shot', PLAN, 'rig: bench', 'bench', 'bench'],
    ['a subject', PLAN, 'subject: soap', 'soap', 'soap'],
    ['a light in a list', PLAN, 'light: [strip]', 'strip', 'strip'],
    ['a recording setting of the shot’s body', PLAN, 'record: full-25', 'full-25', 'full-25'],
    ['a part of a rig', `${ROOT}/${KIT}`, 'parts: [body-a, twice, tube-36', 'tube-36', 'tube-36'],
  ])('%s', (_, file, line, word, name) => {
    const found = core().definition(file, positionOf(texts[file]!, line, word));
    expect(found?.file).toBe(`${ROOT}/${KIT}`);
    expect(found && textAt(found)).toBe(name);
  });

  it('is nowhere for a value that names nothing', () => {
    expect(core().definition(PLAN, positionOf(split.plan, 'aperture: f/8', 'f/8'))).toBeNull();
  });
});

describe('references', () => {
  it('stand wherever the name does, definition first, and each leads back to it', () => {
    const held = core();
    const found = held.references(
      `${ROOT}/${KIT}`,
      positionOf(split.kit, '    tube-36:', 'tube-36'),
    );
    expect(found.map((place) => textAt(place))).toEqual(['tube-36', 'tube-36', 'tube-36']);
    for (const { file, range } of found)
      expect(held.definition(file, range.start)).toEqual(found[0]);
  });

  it('agree with definitions at every value of both files', () => {
    const held = core();
    for (const [file, text] of Object.entries(texts))
      text.split('\n').forEach((line, index) => {
        for (const match of line.matchAll(/[a-z][a-z0-9-]+/g)) {
          const at = { line: index, character: match.index };
          const defined = held.definition(file, at);
          if (!defined) continue;
          const here = held
            .references(file, at)
            .some((place) => place.file === file && place.range.start.line === index);
          expect(here, `${file}:${index + 1} ${match[0]}`).toBe(true);
        }
      });
  });
});

describe('rename', () => {
  it.each([
    ['a rig, from the shot', PLAN, 'rig: bench', 'bench'],
    ['a body, from the kit', `${ROOT}/${KIT}`, '    body-a:', 'body-a'],
    ['a recording setting', PLAN, 'record: full-25', 'full-25'],
    ['a shot', PLAN, '  frost:', 'frost'],
  ])('%s: everything checks as before', (_, file, line, word) => {
    const held = core();
    const before = held.findings(PLAN).map(({ rule, severity }) => `${rule} ${severity}`);
    const renaming = held.rename(file, positionOf(texts[file]!, line, word), 'another-name');
    if (!renaming.ok) throw new Error(renaming.why);
    const of = (name: string) => renaming.edits.filter((edit) => edit.file === name);
    const plan = applied(split.plan, of(PLAN));
    const kit = applied(split.kit, of(`${ROOT}/${KIT}`));
    expect(plan + kit).not.toContain(`: ${word}\n`);
    const after = coreWith(plan, { [KIT]: kit }).findings(PLAN);
    expect(after.map(({ rule, severity }) => `${rule} ${severity}`)).toEqual(before);
  });

  it('refuses what is no name, and a name that is taken', () => {
    const held = core();
    const at = positionOf(split.plan, 'rig: bench', 'bench');
    expect(held.rename(PLAN, at, 'No Name')).toMatchObject({ ok: false });
    expect(held.rename(PLAN, at, 'far')).toMatchObject({ ok: false });
    const tube = positionOf(split.kit, '    tube-36:', 'tube-36');
    expect(held.rename(`${ROOT}/${KIT}`, tube, 'macro-100')).toMatchObject({ ok: false });
  });

  it('offers only what has a name of its own', () => {
    const held = core();
    expect(held.renamable(PLAN, positionOf(split.plan, 'rig: bench', 'bench'))?.name).toBe('bench');
    expect(held.renamable(PLAN, positionOf(split.plan, 'aperture: f/8', 'f/8'))).toBeNull();
    expect(held.renamable(PLAN, positionOf(split.plan, 'aperture: f/8', 'aperture'))).toBeNull();
  });
});

describe('selection', () => {
  it('grows from the value to its section, each holding the one before', () => {
    const at = positionOf(split.plan, 'light: [strip]', 'strip');
    const ranges = core().selection(PLAN, at);
    const spans = ranges.map(
      ({ start, end }) =>
        [start.line * 1000 + start.character, end.line * 1000 + end.character] as const,
    );
    expect(ranges.length).toBeGreaterThanOrEqual(4);
    for (let index = 1; index < spans.length; index++) {
      expect(spans[index]![0]).toBeLessThanOrEqual(spans[index - 1]![0]);
      expect(spans[index]![1]).toBeGreaterThanOrEqual(spans[index - 1]![1]);
    }
  });
});

describe('findEntries', () => {
  it('finds entries of every file by letters of their names', () => {
    const found = core().findEntries('tb3');
    expect(found.map(({ name, noun }) => [name, noun])).toEqual([['tube-36', 'tube']]);
  });
});
