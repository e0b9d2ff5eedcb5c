/** Whole plans with one thing wrong in their text, through the core: one finding, on its place. */
import { describe, expect, it } from 'vitest';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { laws } from '../support/each.ts';
import { applied, changed, coreWith, findingsOf, PLAN } from '../support/plans.ts';
import { BROKEN, SHOTS, SOUND, unmarked } from './support/broken-plans.ts';

const sound = coreWith(SOUND);
const soundFigures = sound.figures(PLAN);

/** What is said of a shot, wherever it stands. */
const saidOf = (core: typeof sound, shot: string) =>
  core
    .findings(PLAN)
    .filter((finding) => finding.shot === shot)
    .map(({ rule, severity, what, why }) => ({ rule, severity, what, why }));

it('the sound plan has no error', () => {
  expect(sound.findings(PLAN).filter(({ severity }) => severity === 'error')).toEqual([]);
  expect([...soundFigures.keys()]).toEqual(SHOTS);
});

laws(
  BROKEN,
  ({ name }) => name,
  (broken, law) => {
    const { text, range } = unmarked(broken);
    const core = coreWith(text);
    const { rule, severity = 'error' } = broken;
    const found = core.findings(PLAN);
    const told = found.filter((each) => each.severity === severity);
    const errors = found.filter((each) => each.severity === 'error');

    law('is a finding of its rule on its place, and nothing else is an error', () => {
      expect(told[0]).toMatchObject({ rule, range });
      expect(errors.length).toBe(broken.errors ?? (severity === 'error' ? 1 : 0));
      // Names of its own making stay inside.
      for (const { what } of told) expect(what).not.toContain('\u0001');
    });

    law('leaves the other shots as they were', () => {
      const figures = core.figures(PLAN);
      for (const shot of broken.kept) expect(figures.get(shot)).toEqual(soundFigures.get(shot));
      for (const shot of broken.kept.filter((name) => name !== 'second')) {
        expect(saidOf(core, shot)).toEqual(saidOf(sound, shot));
      }
    });

    law('is gone once the text is mended', () => {
      core.give(PLAN, SOUND);
      expect(core.findings(PLAN)).toEqual(sound.findings(PLAN));
      expect(core.figures(PLAN)).toEqual(soundFigures);
    });
  },
);

describe('line ends and marks of an encoding', () => {
  it.each([
    ['CRLF', SOUND.replaceAll('\n', '\r\n')],
    ['a byte order mark', `\ufeff${SOUND}`],
    ['no line break at the end', SOUND.trimEnd()],
    ['blank lines at the end', `${SOUND}\n\n`],
    ['spaces at the ends of lines', SOUND.replaceAll('\n', '  \n')],
  ])('%s changes nothing', (_, text) => {
    const core = coreWith(text);
    expect(core.figures(PLAN)).toEqual(soundFigures);
    for (const shot of SHOTS) expect(saidOf(core, shot)).toEqual(saidOf(sound, shot));
    const places = (all: typeof sound) =>
      all.findings(PLAN).map(({ rule, range }) => [rule, range]);
    expect(places(core)).toEqual(places(sound));
  });

  it.each([
    ['nothing', ''],
    ['blank lines', ' \n\n'],
    ['a byte order mark alone', '\ufeff'],
    ['a comment', '# later\n'],
  ])('%s is no plan yet, said at its beginning', (_, text) => {
    const findings = coreWith(text).findings(PLAN);
    const start = { line: 0, character: 0 };
    expect(findings.map(({ rule, range }) => [rule, range.start])).toEqual([
      ['missing-key', start],
    ]);
  });

  it.each([
    ['prose', 'hello\n', 'syntax'],
    ['a list', '- a\n', 'syntax'],
    ['brackets', '[]\n', 'syntax'],
    ['NUL', '\0', 'syntax'],
    ['a newer version of the language', 'shootplan: 2\n', 'wrong-value'],
  ])('%s is an error', (_, text, rule) => {
    const errors = coreWith(text)
      .findings(PLAN)
      .filter(({ severity }) => severity === 'error');
    expect(errors.map((finding) => finding.rule)).toContain(rule);
  });
});

it('what stands behind an unclosed quote in braces is unread, not left out', () => {
  const broken = BROKEN.find(({ name }) => name.includes('that may be left out'))!;
  const figures = coreWith(unmarked(broken).text).figures(PLAN).get('first');
  // Without `up` the light would stand on the lens axis, which nobody wrote.
  expect(figures?.lightClearanceMm).toBeNull();
  expect(soundFigures.get('first')?.lightClearanceMm).not.toBeNull();
});

describe('what is left out of braces and brackets', () => {
  const lights = (at: string, light: string) =>
    changed(EXAMPLE_PLAN, { 'lights/panel/at': at, 'shots/frost/light': light });

  it('a colon: said where it is missing, and what stands there is not taken for zero', () => {
    const text = lights('{ distance: 400 mm, elevation 40 deg }', '[panel]');
    const core = coreWith(text);
    const found = core.findings(PLAN).filter(({ severity }) => severity === 'error');
    expect(found.map(({ rule, what }) => [rule, what])).toEqual([
      ['unknown-key', '`elevation` needs a colon after it.'],
    ]);
    const [fix] = core.fixesOf(found[0]!);
    expect(applied(text, fix!.edits)).toBe(
      lights('{ distance: 400 mm, elevation: 40 deg }', '[panel]'),
    );
  });

  it('a closing quote in a list: the list is not known, and never taken for an empty one', () => {
    const core = coreWith(lights('{ distance: 400 mm, elevation: 40 deg }', '["panel]'));
    const { exposureErrorStops, notKnown } = core.figures(PLAN).get('frost')!;
    expect(exposureErrorStops).toBeNull();
    expect(notKnown.flickerResidual).toBe('it depends on an invalid entry');
  });

  it('a merge key is named as one, whatever it merges', () => {
    const text = changed(EXAMPLE_PLAN, { 'lights/panel/kind': 'led\n    <<: { kind: led }' });
    expect(findingsOf(text).map(({ rule }) => rule)).toContain('outside-the-profile');
    expect(findingsOf(text).map(({ rule }) => rule)).not.toContain('unknown-key');
  });
});

describe('a name that nothing may be called', () => {
  const text = changed(EXAMPLE_PLAN, { 'shots/frost/subject': 'Frost_Plate' }).replace(
    '  frost-plate:',
    '  Frost_Plate:',
  );

  it('is said where it is given and where it is used, and both can be mended', () => {
    const core = coreWith(text);
    const errors = core.findings(PLAN).filter(({ severity }) => severity === 'error');
    expect(errors.map(({ what }) => what)).toEqual([
      'Frost_Plate is not a valid name.',
      'Frost_Plate is not a valid name.',
    ]);
    const [fix] = core.fixesOf(errors[0]!);
    const renamed = coreWith(applied(text, fix!.edits));
    const [left] = renamed.findings(PLAN).filter(({ severity }) => severity === 'error');
    const [other] = renamed.fixesOf(left!);
    const mended = applied(applied(text, fix!.edits), other!.edits);
    expect(mended).toBe(changed(EXAMPLE_PLAN, { 'shots/frost/subject': 'frost-plate' }));
  });
});

it('a line without text is never what can’t be read', () => {
  for (const text of [
    '\r\n<<: *a---\n\r\n  tubes:\n #{kit:\n" a\n   b"<<: *a% # c\n\n\r\n---\n"":\nshots:\n[]  }# c\n',
    '    field: x\n\r\n #|\n      text\n,: }# c\n{ a: b }|1,5{}---\n  entry:\n} c:\n',
  ]) {
    const lengths = text.split(/\r\n|\r|\n/).map(({ length }) => length);
    const core = coreWith(text);
    for (const { range, what } of core.findings(PLAN)) {
      expect(what).not.toContain('“”');
      for (const { line, character } of [range.start, range.end])
        expect(character).toBeLessThanOrEqual(lengths[line]!);
    }
  }
});
